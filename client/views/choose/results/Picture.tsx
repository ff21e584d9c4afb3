import type { Column, Combination } from "../answers.ts";
import { columnSpec, columnsOf, valueText } from "../columns.ts";
import type { Draft } from "../form/draft.ts";
import { Missed } from "../parts/Missed.tsx";
import { AxisPicker, CombinationPlot } from "../plot/CombinationPlot.tsx";
import { CombinationTable } from "../rows/CombinationTable.tsx";
import type { Sorting } from "../rows/useRows.ts";
import type { Shown } from "../state/shown.ts";
import { restText, sizedRotorText } from "../words/combination.ts";
import { inOrOut, wantedNames } from "../words/limits.ts";
import type { OfResults } from "./ofResults.ts";

export interface PictureProps extends OfResults {
  /** rotors in a duct and open propellers were both tried */
  readonly bothKinds: boolean;
  readonly sorting: Sorting;
  readonly onSort: (sorting: Sorting) => void;
  readonly onShow: (next: Shown) => void;
  /** another job is on its way; this is the picture before it */
  readonly stale: boolean;
  readonly onRelax: (change: (draft: Draft) => Draft) => void;
}

/** All the combinations, as points and as a table, and what keeps them out: first where none works. */
export function Picture(props: PictureProps) {
  const { book, base, job, known, shown, stale } = props;
  const { wants } = job.request;
  const missed = known.missed.data && (
    <Missed
      book={book}
      base={base}
      wants={wants}
      missed={known.missed.data}
      onRelax={props.onRelax}
      onLook={props.onLook}
    />
  );
  return (
    <section class="page-main choose-picture" aria-label="The combinations" aria-busy={stale}>
      {job.admissible === 0 && missed}
      <Plot {...props} />
      <CombinationTable
        key={job.id}
        book={book}
        base={base}
        wants={wants}
        job={job.id}
        charge={base?.charge ?? null}
        counts={job}
        bothKinds={props.bothKinds}
        columns={columnsOf(wants)}
        sorting={props.sorting}
        onSort={props.onSort}
        looked={known.looked?.index ?? null}
        pins={shown.pins}
        onLook={props.onLook}
        onPin={props.onPin}
        onOpen={props.onOpen}
      />
      {job.admissible > 0 && missed && (
        <details>
          <summary>What keeps combinations out</summary>
          {missed}
        </details>
      )}
    </section>
  );
}

/** @returns the axes of the points that are there, by the path that they came from */
function columnsIn(from: string | null): { x: Column; y: Column } {
  const query = new URLSearchParams(from?.split("?")[1]);
  return { x: columnSpec(query.get("x")).key, y: columnSpec(query.get("y")).key };
}

/** @returns what a point says of itself, a line each */
const linesOf = ({ book, base, job, shown }: PictureProps, combination: Combination): string[] => [
  sizedRotorText(book, combination),
  restText(book, combination),
  `${valueText(shown.y, combination.values[shown.y])}, ${valueText(shown.x, combination.values[shown.x])}`,
  inOrOut(combination.broken, wantedNames(job.request.wants, base)),
];

function Plot(props: PictureProps) {
  const { job, known, shown, onShow } = props;
  const { wants } = job.request;
  const columns = columnsOf(wants);
  return (
    <>
      <div class="choose-axes">
        <AxisPicker columns={columns} label="up" value={shown.y} onChange={(y) => onShow({ ...shown, y })} />
        <AxisPicker
          columns={columns}
          label="along"
          value={shown.x}
          onChange={(x) => onShow({ ...shown, x })}
        />
      </div>
      {known.points.data && (
        <CombinationPlot
          job={job.id}
          answer={known.points.data}
          drawn={columnsIn(known.points.from)}
          target={wants.targetMargin}
          looked={known.looked}
          pinned={known.pinned}
          describe={(combination) => linesOf(props, combination)}
          onLook={props.onLook}
          onPin={props.onPin}
        />
      )}
    </>
  );
}
