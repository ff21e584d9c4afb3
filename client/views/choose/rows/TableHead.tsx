import type { Book } from "../../../../shared/book/book.ts";
import { formatFixed } from "../../../../shared/units/format.ts";
import { chargeText } from "../../../ui/chargeWords.ts";
import { SaveCsv } from "../../../ui/SaveCsv.tsx";
import type { ColumnSpec } from "../columns.ts";
import { combinationsCsv } from "./combinationsCsv.ts";
import type { Sorting } from "./useRows.ts";

export interface TableHeadProps {
  readonly book: Book;
  readonly job: string;
  /** from which minutes are counted [-]; null where the build is gone */
  readonly charge: number | null;
  readonly counts: { readonly admissible: number; readonly sets: number };
  /** rotors in a duct and open propellers were both tried */
  readonly bothKinds: boolean;
  /** of the search */
  readonly columns: readonly ColumnSpec[];
  readonly sorting: Sorting;
  readonly onSort: (sorting: Sorting) => void;
}

const FILTERS = [
  ["admissible", "those that work"],
  ["front", "those that no other betters"],
  ["all", "all"],
] as const;

const KINDS = [
  ["any", "of either kind"],
  ["ducted", "with a rotor in a duct"],
  ["open", "with an open propeller"],
] as const;

/** So many combinations are saved by the page, in the units shown; more are the server's to write, in SI. */
const MOST_SAVED = 20_000;

/** What is above the combinations: how many, which of them are shown, and all of those as a file. */
export function TableHead({
  bothKinds,
  book,
  counts,
  columns,
  sorting,
  onSort,
  total,
  job,
  charge,
}: TableHeadProps & { readonly total: number }) {
  const csv = `/api/v1/choose/${encodeURIComponent(job)}/sets.csv?sort=${sorting.sort}&order=${sorting.order}&only=${sorting.only}&kind=${sorting.kind}`;
  return (
    <div class="choose-table-head">
      <h2 class="choose-count">
        {formatFixed(total, 0)} of {formatFixed(counts.sets, 0)} combinations
      </h2>
      {charge !== null && <span class="quiet small">minutes from {chargeText(charge)}</span>}
      <label>
        <span class="quiet">show</span>{" "}
        <select
          aria-label="Combinations shown"
          value={sorting.only}
          onChange={(event) => onSort({ ...sorting, only: FILTERS[event.currentTarget.selectedIndex][0] })}
        >
          {FILTERS.map(([value, label]) => (
            <option key={value} value={value}>
              {label}
            </option>
          ))}
        </select>
      </label>
      {bothKinds && (
        <select
          aria-label="Ducted rotors or open propellers"
          value={sorting.kind}
          onChange={(event) => onSort({ ...sorting, kind: KINDS[event.currentTarget.selectedIndex][0] })}
        >
          {KINDS.map(([value, label]) => (
            <option key={value} value={value}>
              {label}
            </option>
          ))}
        </select>
      )}
      {total > MOST_SAVED ? (
        <a href={csv} download={`choosing-${job}.csv`} class="small">
          These as CSV, SI
        </a>
      ) : (
        <SaveCsv
          label="save these as CSV"
          name={`combinations ${job}.csv`}
          make={() => combinationsCsv(book, job, columns, sorting)}
        />
      )}
    </div>
  );
}
