import { dimensionToChange } from "../../../shared/book/fitUp/advice.ts";
import { dimensionsOf, type FitStack, type StackLine } from "../../../shared/book/fitUp/fitStack.ts";
import { PART_SIZES } from "../../../shared/book/fitUp/partSizes.ts";
import { stackBoard } from "../../../shared/book/fitUp/workings.ts";
import { chancesOf } from "../../../shared/decide/fitUp/chance.ts";
import { percentText } from "../../../shared/decide/verdict/figures.ts";
import { unitOf } from "../../../shared/units/showing.ts";
import { ScrollTable } from "../../ui/ScrollTable.tsx";
import { FigureOf } from "../../ui/working/FigureOf.tsx";
import {
  BASIS_WORDS,
  chanceText,
  KIND_WORDS,
  leftText,
  rangeText,
  sizeFigure,
  sizeText,
  VERDICT_TONES,
  VERDICT_WORDS,
} from "./fitWords.ts";

export interface StackPanelProps {
  readonly fit: FitStack;
  /** the gap that the build counts on [m]; null where it has none */
  readonly gap: number | null;
  readonly onEdit: () => void;
  readonly onRemove: () => void;
}

const sourceText = ({ of, basis }: StackLine): string =>
  of === null
    ? BASIS_WORDS[basis]
    : `${PART_SIZES[of].words.split(":")[0].toLowerCase()}’s record, ${BASIS_WORDS[basis]}`;

function LineRow({ line, share }: { readonly line: StackLine; readonly share: number | null }) {
  const { name, sense, quantity, nominal, tolerance } = line;
  const size =
    nominal === null
      ? "–"
      : `${sense > 0 ? "" : "− "}${quantity > 1 ? `${quantity} × ` : ""}${sizeFigure(nominal)}`;
  return (
    <tr>
      <th scope="row">
        {name} <small>{sourceText(line)}</small>
      </th>
      <td class="number">{size}</td>
      <td class="number">{tolerance > 0 ? `± ${sizeFigure(tolerance)}` : ""}</td>
      <td class="number">{share === null || tolerance === 0 ? "" : percentText(share)}</td>
    </tr>
  );
}

/** "Make “Cover, inside height” 1.3 mm larger: 25.30 mm." */
function changeText(fit: FitStack): string | null {
  if (!fit.stack || fit.stack.worstCase[0] >= 0) return null;
  const change = dimensionToChange(fit);
  if (!change) return "None of its own sizes alone closes it: choose another part, or a tighter tolerance.";
  const { line, by, nominal } = change;
  return `To close at worst: make “${line.name}” ${sizeText(Math.abs(by))} ${by > 0 ? "larger" : "smaller"}, ${sizeText(nominal)}.`;
}

/** What the skirt's stack says of the gap that the figures count on. */
function gapText({ kind, stack }: FitStack, gap: number | null): string | null {
  if (kind !== "gap" || !stack || gap === null) return null;
  const [low, high] = stack.rss;
  const says = `The lip stands ${sizeText(stack.clearance)} over the surface by these sizes; the build's figures count on a gap of ${sizeText(gap)}`;
  return gap < low || gap > high ? `${says}, which these sizes hardly give. Measure it.` : `${says}.`;
}

function Figures({ fit }: { readonly fit: FitStack }) {
  const { name, stack, lines } = fit;
  const dimensions = stack && dimensionsOf(lines);
  if (!stack || !dimensions) return null;
  const { normal, uniform } = chancesOf(dimensions);
  const board = () => stackBoard(fit);
  const figure = (title: string, text: string) => (
    <FigureOf board={board} title={title}>
      {text}
    </FigureOf>
  );
  return (
    <p>
      Left: {figure(`left in ${name}`, leftText({ ...fit, stack }))}. Worst case{" "}
      {figure(`worst case of ${name}`, rangeText(stack.worstCase))}, root-sum-square{" "}
      {figure(`root-sum-square of ${name}`, rangeText(stack.rss))}. Chance of closing:{" "}
      {figure(`chance that ${name} closes`, chanceText(normal, uniform))}.
    </p>
  );
}

/** One stack in figures: every size with what it adds to the uncertainty, what is left, and what to change. */
export function StackPanel({ fit, gap, onEdit, onRemove }: StackPanelProps) {
  const { name, kind, lines, stack, problem } = fit;
  const said = [changeText(fit), gapText(fit, gap)].filter(Boolean);
  return (
    <section class="fit-stack" aria-label={name}>
      <h3>
        {name}
        <small class={stack ? VERDICT_TONES[stack.verdict] : "near"}>
          {stack ? VERDICT_WORDS[stack.verdict] : "a size is missing"}
        </small>
        {name !== KIND_WORDS[kind] && kind !== "other" && <small class="quiet">{KIND_WORDS[kind]}</small>}
      </h3>
      {problem && <p>{problem}</p>}
      <Figures fit={fit} />
      {said.map((text) => (
        <p key={text}>{text}</p>
      ))}
      <ScrollTable label={`Sizes of ${name}`}>
        <table class="fit-lines">
          <thead>
            <tr>
              <th scope="col">Size</th>
              <th scope="col" class="number">
                {unitOf("length")}
              </th>
              <th scope="col" class="number">
                Tolerance
              </th>
              <th scope="col" class="number">
                Of the uncertainty
              </th>
            </tr>
          </thead>
          <tbody>
            {lines.map((line, i) => (
              <LineRow key={i} line={line} share={stack?.contributions[i].share ?? null} />
            ))}
          </tbody>
        </table>
      </ScrollTable>
      <p>
        <button type="button" class="plain" onClick={onEdit}>
          change<span class="visually-hidden"> {name}</span>
        </button>{" "}
        <button type="button" class="plain" onClick={onRemove}>
          remove<span class="visually-hidden"> {name}</span>
        </button>
      </p>
    </section>
  );
}
