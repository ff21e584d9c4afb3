import { degreesText, marginText } from "../../../shared/decide/verdict/figures.ts";
import type { HeldAttitude } from "../../../shared/decide/verdict/findings.ts";
import type { VerdictState } from "../../../shared/decide/verdict/states.ts";
import { ScrollTable } from "../ScrollTable.tsx";
import { gradeOf } from "../verdictWords.ts";
import type { CrossingProps } from "./CrossingStrip.tsx";
import { jointText, jointTitle } from "./words.ts";

interface CellProps extends Pick<HeldAttitude, "parked" | "driving"> {
  readonly target: number;
  readonly state: VerdictState | null;
}

function Cell({ parked, driving, target, state }: CellProps) {
  const { grade, word } = gradeOf(driving, target, state);
  return (
    <td class={grade}>
      <span class="margin">{marginText(driving)}</span>
      <small>{word}</small>
      {parked !== driving && <small>parked {marginText(parked)}</small>}
    </td>
  );
}

/** Margins over each joint of the surface by attitude, driving, and parked where they differ; nothing where there is no joint. */
export function CrossingTable({ crossings, target, state }: CrossingProps) {
  const [first] = crossings;
  if (!first) return null;
  return (
    <>
      <h2>Over the joints</h2>
      <ScrollTable label="Margins over the joints of the surface">
        <table class="holds crossing-table">
          <caption class="quiet small">
            Margins while the lip stands over a joint of the surface, met in the way that pulls least.
          </caption>
          <thead>
            <tr>
              <th scope="col">Joint</th>
              {first.attitudes.map(({ name, angle }) => (
                <th key={name} scope="col">
                  {name.slice("the ".length)} {degreesText(angle)}
                </th>
              ))}
              <th scope="col">least</th>
            </tr>
          </thead>
          <tbody>
            {crossings.map((crossing) => (
              <tr key={crossing.joint.name}>
                <th scope="row">
                  {jointTitle(crossing)} <small class="quiet">{jointText(crossing)}</small>
                </th>
                {crossing.attitudes.map(({ name, parked, driving }) => (
                  <Cell key={name} parked={parked} driving={driving} target={target} state={state} />
                ))}
                <Cell
                  parked={crossing.worst.parked.margin}
                  driving={crossing.worst.driving.margin}
                  target={target}
                  state={state}
                />
              </tr>
            ))}
          </tbody>
        </table>
      </ScrollTable>
    </>
  );
}
