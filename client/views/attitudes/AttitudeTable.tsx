import type { AttitudeUncertainty } from "../../../shared/decide/uncertainty.ts";
import { marginText } from "../../../shared/decide/verdict/figures.ts";
import type { VerdictState } from "../../../shared/decide/verdict/states.ts";
import type { StoredOf } from "../../../shared/model/record.ts";
import { Sure } from "../../ui/Sure.tsx";
import { firstInWords, gradeOf } from "../../ui/verdictWords.ts";
import { MarginFigure } from "../../ui/working/WorkedFigure.tsx";
import { degrees, gapAtLimit, grams, needText } from "./attitudeWords.ts";
import { RemovalNote, RemovalQuestion, useRemover } from "./Removing.tsx";
import type { NamedStand, Rose } from "./rose.ts";
import type { Need, State } from "./stand.ts";

interface NeedProps {
  readonly need: Need;
  /** [°] */
  readonly angle: number;
  readonly driven: State;
  readonly target: number;
  /** of the build's verdict */
  readonly state: VerdictState | null;
  /** of the samples there */
  readonly sure: AttitudeUncertainty | null;
}

function NeedCell({ need, angle, driven, target, state, sure }: NeedProps) {
  const { grade, word } = gradeOf(need.margin, target, state);
  if (need.pull === 0) return <td class={grade}>none needed</td>;
  return (
    <td class={`${grade} attitude-need`}>
      <span class="margin">
        <MarginFigure angle={angle} state={driven} margin={need.margin} />
      </span>{" "}
      <span class="small">{word}</span>
      <small>
        {needText(need)}, {firstInWords(need.modes)} first
      </small>
      {sure && <Sure angle={sure.angle} state={driven} spread={sure[driven]} />}
      {need.gap !== null && <small>{gapAtLimit(need.gap)}</small>}
    </td>
  );
}

interface RowProps {
  readonly named: NamedStand;
  readonly target: number;
  readonly state: VerdictState | null;
  readonly onRemove: (() => void) | null;
}

function Row({ named: { title, stand, kind, sure }, target, state, onRemove }: RowProps) {
  const angle = kind === "worst" ? Math.round(stand.angle) : stand.angle;
  return (
    <tr>
      <th scope="row">
        {title} {degrees(angle)}
        {onRemove && (
          <button type="button" class="plain small" onClick={onRemove}>
            remove<span class="visually-hidden"> {title}</span>
          </button>
        )}
      </th>
      <NeedCell
        need={stand.parked}
        angle={stand.angle}
        driven="parked"
        target={target}
        state={state}
        sure={sure}
      />
      <NeedCell
        need={stand.driving}
        angle={stand.angle}
        driven="driving"
        target={target}
        state={state}
        sure={sure}
      />
    </tr>
  );
}

/** @returns the place of an attitude among the build's own; null where it is none of them */
const placeOf = ({ kind, key }: NamedStand): number | null =>
  kind === "own" ? Number(key.slice("own ".length)) : null;

export interface AttitudeTableProps {
  readonly rose: Rose;
  readonly build: StoredOf<"builds">;
  readonly state: VerdictState | null;
  /** how sure is still worked out; its lines have their place */
  readonly waits: boolean;
}

/** Each attitude: needed against made, parked and driving; the user's own can be taken out. */
export function AttitudeTable({ rose, build, state, waits }: AttitudeTableProps) {
  const remover = useRemover(build);
  const target = build.data.targetMargin;
  return (
    <>
      <table class={waits ? "holds attitude-table attitude-waits" : "holds attitude-table"}>
        <caption class="quiet small">
          {grams(rose.made)} made, {marginText(target)} of the need wanted. Under each margin: the pull needed
          and what lets go first{rose.pull.giving && ", and the gap there, as the running gear gives"}.
        </caption>
        <thead>
          <tr>
            <th scope="col">Attitude</th>
            <th scope="col">Parked</th>
            <th scope="col">Driving uphill</th>
          </tr>
        </thead>
        <tbody>
          {rose.named.map((named) => {
            const place = placeOf(named);
            const onRemove = place === null ? null : () => remover.ask(place);
            return <Row key={named.key} named={named} target={target} state={state} onRemove={onRemove} />;
          })}
        </tbody>
      </table>
      {remover.asked !== null && (
        <RemovalQuestion key={remover.asked} at={remover.asked} remover={remover} build={build.data} />
      )}
      <RemovalNote remover={remover} />
    </>
  );
}
