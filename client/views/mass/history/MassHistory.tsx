import { useEffect, useMemo, useState } from "preact/hooks";
import type { Book } from "../../../../shared/book/resolve.ts";
import type { Build } from "../../../../shared/model/build.ts";
import type { Stored, StoredOf } from "../../../../shared/model/record.ts";
import { inUnit } from "../../../../shared/units/format.ts";
import { headed } from "../../../../shared/units/showing.ts";
import { PlotChart } from "../../../charts/PlotChart.tsx";
import { ApiError, api } from "../../../state/api.ts";
import { courseOf } from "./course.ts";
import { coursePlot, courseSentence, momentLines } from "./coursePlot.ts";

export interface MassHistoryProps {
  readonly book: Book;
  readonly build: StoredOf<"builds">;
}

/** What the build weighed and might weigh at each change: growth is seen before it falls. */
export function MassHistory({ book, build }: MassHistoryProps) {
  const [open, setOpen] = useState(false);
  if (build.revision < 2) return null;
  return (
    <details onToggle={(event) => setOpen(event.currentTarget.open)}>
      <summary>Mass and limits over time</summary>
      {open && <Course book={book} build={build} />}
    </details>
  );
}

function Course({ book, build: { id, revision, data } }: MassHistoryProps) {
  const [states, setStates] = useState<readonly Stored<Build>[]>([]);
  const [failure, setFailure] = useState<string | null>(null);
  useEffect(() => {
    let wanted = true;
    api.get<{ items: readonly Stored<Build>[] }>(`/builds/${encodeURIComponent(id)}/revisions`).then(
      ({ items }) => wanted && setStates(items),
      (error: unknown) => {
        if (!(error instanceof ApiError)) throw error;
        if (wanted) setFailure(error.message);
      },
    );
    return () => {
      wanted = false;
    };
  }, [id, revision]);
  const moments = useMemo(() => courseOf(book, states), [book, states]);
  if (failure) return <p class="field-error">{failure}</p>;
  if (moments.length < 2) return <p class="quiet">Reading what it said before…</p>;
  return (
    <>
      <p>{courseSentence(moments)}</p>
      <PlotChart
        plot={coursePlot(moments)}
        sentence={courseSentence(moments)}
        name={`mass over time ${data.name}`}
        height={(width) => Math.max(220, Math.min(300, 0.5 * width))}
        reading={{ label: "Changes", describe: (key) => momentLines(moments, key) }}
        table={() => ({
          columns: [
            "Changed",
            headed("Mass", "mass"),
            headed("Allowed at the wanted margin", "mass"),
            headed("Allowed at 1 ×", "mass"),
            "Margin, ×",
          ],
          rows: moments.map(({ at, mass, atTarget, atOne, margin }) => [
            at.slice(0, 16).replace("T", " "),
            inUnit(mass, "mass"),
            atTarget === null ? null : inUnit(atTarget, "mass"),
            atOne === null ? null : inUnit(atOne, "mass"),
            margin,
          ]),
        })}
      >
        <p class="quiet small">
          Each change of the build, worked out with the parts and tests of today; limits are those of the
          tightest attitude.
        </p>
      </PlotChart>
    </>
  );
}
