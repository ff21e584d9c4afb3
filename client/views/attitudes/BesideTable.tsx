import { useMemo } from "preact/hooks";
import type { Book } from "../../../shared/book/resolve.ts";
import { marginText } from "../../../shared/decide/verdict/figures.ts";
import type { VerdictState } from "../../../shared/decide/verdict/states.ts";
import { stateWords } from "../../../shared/decide/verdict/words.ts";
import type { StoredOf } from "../../../shared/model/record.ts";
import { href } from "../../app/router.ts";
import { overlayIds } from "../../state/build.ts";
import { ScrollTable } from "../../ui/ScrollTable.tsx";
import { StateMark } from "../../ui/verdict/StateMark.tsx";
import { gradeOf } from "../../ui/verdictWords.ts";
import { besideOf, type Margins } from "./beside.ts";

/** The builds that the address lays over this one, attitude by attitude. */
export function BesideTable({ book, build }: { book: Book; build: StoredOf<"builds"> }) {
  const ids = overlayIds.value.filter((id) => id !== build.id);
  const beside = useMemo(() => besideOf(book, build, ids), [book, build, ids.join(",")]);
  if (beside.columns.length < 2) return null;
  return (
    <section aria-label="Builds side by side">
      <h2>Side by side: margin parked, and driving</h2>
      <ScrollTable label="Margins of the builds">
        <table class="choose-grid">
          <thead>
            <tr>
              <th scope="col" class="choose-head">
                Attitude
              </th>
              {beside.columns.map(({ id, name, verdict }) => (
                <th key={id} scope="col" class="choose-head">
                  {id === build.id ? name : <a href={href("attitudes", id)}>{name}</a>}
                  {verdict && <StateMark state={verdict.state} words={stateWords(verdict)} />}
                </th>
              ))}
            </tr>
          </thead>
          <tbody>
            {beside.rows.map((row, i) => (
              <tr key={row}>
                <th scope="row">{row}</th>
                {beside.columns.map(({ id, margins, verdict }) => (
                  <Cell
                    key={id}
                    margins={margins[i]}
                    worst={i === beside.rows.length - 1}
                    target={build.data.targetMargin}
                    state={verdict?.state ?? null}
                  />
                ))}
              </tr>
            ))}
          </tbody>
        </table>
      </ScrollTable>
    </section>
  );
}

interface CellProps {
  readonly margins: Margins | null;
  readonly worst: boolean;
  readonly target: number;
  /** of that build's verdict */
  readonly state: VerdictState | null;
}

function Cell({ margins, worst, target, state }: CellProps) {
  if (!margins) return <td class="quiet">can't be answered for yet</td>;
  const { parked, driving, angle } = margins;
  return (
    <td>
      <span class={gradeOf(parked, target, state).grade}>{marginText(parked)}</span>
      <small class={`choose-word ${gradeOf(driving, target, state).grade}`}>
        {marginText(driving)} driving
      </small>
      {worst && <small class="choose-word quiet">at {angle.toFixed(0)}°</small>}
    </td>
  );
}
