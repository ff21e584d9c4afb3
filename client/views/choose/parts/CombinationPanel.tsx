import { useMemo } from "preact/hooks";
import type { Book } from "../../../../shared/book/book.ts";
import { estimateOff } from "../../../../shared/book/estimateOff.ts";
import { solvable } from "../../../../shared/book/resolve.ts";
import { worstName } from "../../../../shared/decide/verdict/attitudeWords.ts";
import { sentenceOf, stateWords } from "../../../../shared/decide/verdict/words.ts";
import { keptReach } from "../../../../shared/decide/ways/kept.ts";
import type { ChooseRequest } from "../../../../shared/model/api/choose.ts";
import type { Build } from "../../../../shared/model/build.ts";
import { attitudeRows, solve } from "../../../state/outcome.ts";
import { verdictBeside } from "../../../state/verdict/found.ts";
import { chargeText } from "../../../ui/chargeWords.ts";
import { estimateSentence } from "../../../ui/estimateWords.ts";
import { keptLine } from "../../../ui/keptWords.ts";
import { StateMark } from "../../../ui/verdict/StateMark.tsx";
import { gradeOf } from "../../../ui/verdictWords.ts";
import { boardOf } from "../../../ui/working/board.ts";
import { MarginFigure } from "../../../ui/working/WorkedFigure.tsx";
import { letterAt } from "../../compare/letterAt.ts";
import type { Combination } from "../answers.ts";
import { buildFor } from "../openCombination.ts";
import { Marks } from "../rows/CombinationRow.tsx";
import { restText, sizedRotorText, trustText } from "../words/combination.ts";
import { brokenText, wantedNames } from "../words/limits.ts";
import { FactList } from "./FactList.tsx";

export interface CombinationPanelProps {
  readonly book: Book;
  /** gives vehicle, air, supply and surface; null where the book no longer has it */
  readonly base: Build | null;
  readonly wants: ChooseRequest["wants"];
  readonly combination: Combination;
  readonly pin: number;
  readonly canPin: boolean;
  readonly onPin: () => void;
  readonly onOpen: () => void;
}

/** The combination that is looked at, in full: what it is, what it does, how far to trust it, why it is out. */
export function CombinationPanel({
  book,
  base,
  wants,
  combination,
  pin,
  canPin,
  onPin,
  onOpen,
}: CombinationPanelProps) {
  const off = useMemo(() => estimateOff(book, combination.parts.rotor), [book, combination.parts.rotor]);
  const rotor =
    book.rotors.find(({ id }) => id === combination.parts.rotor)?.data.name ?? combination.parts.rotor;
  return (
    <section class="choose-combination" aria-label="The combination looked at">
      <h2>{pin >= 0 ? `The combination looked at, ${letterAt(pin)}` : "The combination looked at"}</h2>
      <p class="choose-combination-name">
        {sizedRotorText(book, combination)}
        <br />
        <span class="quiet">{restText(book, combination)}</span> <Marks combination={combination} />
      </p>
      <WhyNot combination={combination} wants={wants} base={base} />
      {base && <MarginTable book={book} base={base} combination={combination} target={wants.targetMargin} />}
      <FactList book={book} base={base} combination={combination} wants={wants} />
      {base && <KeptLine book={book} base={base} combination={combination} wants={wants} />}
      {base && <p class="small quiet">Minutes from {chargeText(base.charge)} to its end.</p>}
      <p class="small">{trustText(combination)}</p>
      {off && <p class="small quiet">{estimateSentence(rotor, off)}</p>}
      <p class="choose-buttons">
        <button type="button" class="primary" disabled={base === null} onClick={onOpen}>
          Open as a build
        </button>
        <button type="button" disabled={!canPin} onClick={onPin}>
          {pin >= 0 ? "Unpin" : "Pin"}
        </button>
      </p>
    </section>
  );
}

type WhyNotProps = Pick<CombinationPanelProps, "combination" | "wants" | "base">;

function WhyNot({ combination, wants, base }: WhyNotProps) {
  const [first, ...others] = combination.broken;
  if (!first)
    return (
      <p>
        In: it meets every limit
        {combination.onFront && ", and no other is better in margin, mass and minutes at once"}.
      </p>
    );
  const names = wantedNames(wants, base);
  return (
    <div class="choose-why">
      <h3>Why not?</h3>
      <p class="bad">Out: {brokenText(first, names)}.</p>
      {others.length > 0 && (
        <>
          <p class="small quiet">It also breaks:</p>
          <ul class="notes">
            {others.map((broken) => (
              <li key={broken.limit}>{brokenText(broken, names)}</li>
            ))}
          </ul>
        </>
      )}
    </div>
  );
}

/** What a controller that keeps the wanted margin would save of the charge. */
function KeptLine({
  book,
  base,
  combination,
  wants,
}: Pick<CombinationPanelProps, "book" | "combination" | "wants"> & { base: Build }) {
  const { attitudes, targetMargin: margin } = wants;
  const kept = useMemo(() => {
    const { resolved } = solve(book, buildFor(book, base, combination));
    const input = resolved && solvable(resolved);
    const holds = attitudes.map(({ angle, mode }) => ({ angle, mode, margin }));
    return input && keptReach(input, resolved.pack?.cell ?? null, holds);
  }, [book, base, combination, attitudes, margin]);
  return kept && <p class="small">{keptLine(kept, margin)}.</p>;
}

interface MarginTableProps {
  readonly book: Book;
  readonly base: Build;
  readonly combination: Combination;
  readonly target: number;
}

/** What it comes to as a build, and its margins on every attitude, as Match would show them. */
function MarginTable({ book, base, combination, target }: MarginTableProps) {
  const outcome = useMemo(() => solve(book, buildFor(book, base, combination)), [book, base, combination]);
  const verdict = useMemo(() => verdictBeside(book, outcome), [book, outcome]);
  const state = verdict?.state ?? null;
  const { prediction } = outcome;
  if (!prediction) return null;
  const { parked, driving } = prediction.worst;
  const rows = [
    ...attitudeRows(outcome).map((row) => ({ ...row, title: `${row.title} ${row.angle.toFixed(0)}°` })),
    {
      title: `Worst: ${worstName(parked.angle)} ${parked.angle.toFixed(0)}°`,
      angle: parked.angle,
      parked: parked.margin,
      driving: driving.margin,
    },
  ];
  const cell = (angle: number, driven: "parked" | "driving", margin: number | null) => (
    <td class={gradeOf(margin, target, state).grade}>
      {margin === null ? (
        "none needed"
      ) : (
        <MarginFigure angle={angle} state={driven} margin={margin} board={() => boardOf(book, outcome)} />
      )}
    </td>
  );
  return (
    <>
      {verdict && (
        <p>
          <StateMark state={verdict.state} words={stateWords(verdict)} /> {sentenceOf(verdict)}
        </p>
      )}
      <table class="choose-grid">
        <thead>
          <tr>
            <th scope="col" class="choose-head">
              Margin
            </th>
            <th scope="col" class="choose-head">
              Parked
            </th>
            <th scope="col" class="choose-head">
              Driving
            </th>
          </tr>
        </thead>
        <tbody>
          {rows.map((row) => (
            <tr key={row.title}>
              <th scope="row">{row.title}</th>
              {cell(row.angle, "parked", row.parked)}
              {cell(row.angle, "driving", row.driving)}
            </tr>
          ))}
        </tbody>
      </table>
    </>
  );
}
