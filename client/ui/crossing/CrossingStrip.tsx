import { degreesText } from "../../../shared/decide/verdict/figures.ts";
import type { Crossing } from "../../../shared/decide/verdict/findings.ts";
import type { VerdictState } from "../../../shared/decide/verdict/states.ts";
import { firstInWords, gradeOf } from "../verdictWords.ts";
import { MarginFigure } from "../working/WorkedFigure.tsx";
import { jointText, jointTitle } from "./words.ts";

export interface CrossingProps {
  /** the least margin first */
  readonly crossings: readonly Crossing[];
  readonly target: number;
  /** of the build's verdict */
  readonly state: VerdictState | null;
}

/** Each joint of the surface in a line: the least margin over it, parked and driving; nothing where there is none. */
export function CrossingStrip({ crossings, target, state }: CrossingProps) {
  if (crossings.length === 0) return null;
  return (
    <ul class="crossing-strip" aria-label="Margins over the joints of the surface">
      {crossings.map((crossing) => (
        <Line key={crossing.joint.name} crossing={crossing} target={target} state={state} />
      ))}
    </ul>
  );
}

function Line({
  crossing,
  target,
  state,
}: Omit<CrossingProps, "crossings"> & { readonly crossing: Crossing }) {
  const { parked, driving } = crossing.worst;
  const { grade, word } = gradeOf(driving.margin, target, state);
  return (
    <li>
      <span class="crossing-name">
        Over the joint: {jointTitle(crossing)} <small class="quiet">{jointText(crossing)}</small>
      </span>
      <span class={grade}>
        <span class="margin">
          <MarginFigure {...driving} state="driving" over={crossing.joint.name} />
        </span>{" "}
        <small>{word}</small>
      </span>
      {driving.margin !== null && (
        <small class="quiet">
          driving at {degreesText(driving.angle)}, {firstInWords(driving.governs)} first; parked{" "}
          <MarginFigure {...parked} state="parked" over={crossing.joint.name} />
        </small>
      )}
    </li>
  );
}
