import { degreesText } from "../../../shared/decide/verdict/figures.ts";
import type { VerdictState } from "../../../shared/decide/verdict/states.ts";
import type { Prediction } from "../../../shared/physics/predict.ts";
import { ScrollTable } from "../ScrollTable.tsx";
import { gradeOf } from "../verdictWords.ts";
import { MarginFigure } from "../working/WorkedFigure.tsx";
import type { CrossingProps } from "./CrossingStrip.tsx";
import { jointText, jointTitle } from "./words.ts";

/** A margin and where it is met. */
type Margin = Pick<Prediction["worst"]["parked"], "angle" | "margin">;

interface CellProps {
  readonly parked: Margin;
  readonly driving: Margin;
  /** the joint that it stands over */
  readonly over: string;
  readonly target: number;
  readonly state: VerdictState | null;
}

function Cell({ parked, driving, over, target, state }: CellProps) {
  const { grade, word } = gradeOf(driving.margin, target, state);
  return (
    <td class={grade}>
      <span class="margin">
        <MarginFigure {...driving} state="driving" over={over} />
      </span>
      <small>{word}</small>
      {parked.margin !== driving.margin && (
        <small>
          parked <MarginFigure {...parked} state="parked" over={over} />
        </small>
      )}
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
                {crossing.attitudes.map(({ name, angle, parked, driving }) => (
                  <Cell
                    key={name}
                    parked={{ angle, margin: parked }}
                    driving={{ angle, margin: driving }}
                    over={crossing.joint.name}
                    target={target}
                    state={state}
                  />
                ))}
                <Cell
                  parked={crossing.worst.parked}
                  driving={crossing.worst.driving}
                  over={crossing.joint.name}
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
