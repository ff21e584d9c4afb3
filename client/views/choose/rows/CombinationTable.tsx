import { useEffect, useLayoutEffect, useRef, useState } from "preact/hooks";
import type { Book } from "../../../../shared/book/book.ts";
import { formatFixed } from "../../../../shared/units/format.ts";
import { Problem } from "../../../ui/Problem.tsx";
import type { Column, Combination } from "../answers.ts";
import { cellText, columnSpec, headUnit } from "../columns.ts";
import type { FactProps } from "../parts/Fact.tsx";
import { restText, sizedRotorText } from "../words/combination.ts";
import { CombinationRow } from "./CombinationRow.tsx";
import { TableHead, type TableHeadProps } from "./TableHead.tsx";
import { type Sorting, useRows } from "./useRows.ts";
import { drawnRows, scrollToRow } from "./virtual.ts";

/** As the style sheet has it [px]. */
const ROW_HEIGHT = 78;
const VIEWPORT = 540;
const SHOWN: readonly Column[] = [
  "margin",
  "mass",
  "time",
  "keptTime",
  "windingTemperature",
  "height",
  "price",
];

/** @returns the columns that stand in the table, of those that the search has */
const shownOf = ({ columns }: Pick<CombinationTableProps, "columns">): Column[] =>
  SHOWN.filter((column) => columns.some(({ key }) => key === column));

export interface CombinationTableProps extends TableHeadProps, Pick<FactProps, "base" | "wants"> {
  readonly looked: number | null;
  readonly pins: readonly number[];
  readonly onLook: (index: number) => void;
  readonly onPin: (index: number) => void;
  readonly onOpen: (combination: Combination) => void;
}

/** The rows that are there and seen: scrolled to, looked at one after the other by arrow keys. */
function useScrolled({ job, sorting, onLook }: CombinationTableProps) {
  const { rows, need } = useRows(job, sorting);
  const box = useRef<HTMLDivElement>(null);
  const [scrollTop, setScrollTop] = useState(0);
  const [at, setAt] = useState<number | null>(null);
  const view = { total: rows.total, rowHeight: ROW_HEIGHT, viewport: VIEWPORT, scrollTop };
  const drawn = drawnRows(view);
  useEffect(() => need(drawn), [drawn.first, drawn.until, rows.key]);
  useLayoutEffect(() => {
    if (box.current) box.current.scrollTop = 0;
    setScrollTop(0);
    setAt(null);
  }, [rows.key]);
  const step = (event: KeyboardEvent) => {
    const by = { ArrowDown: 1, ArrowUp: -1 }[event.key];
    if (by === undefined || rows.total === 0) return;
    event.preventDefault();
    const next = Math.min(rows.total - 1, Math.max(0, (at ?? -1) + by));
    setAt(next);
    // A figure that is focused in the row before it is no button any more in a moment.
    box.current?.focus({ preventScroll: true });
    if (box.current) box.current.scrollTop = scrollToRow(view, next);
    const combination = rows.rows.get(next);
    if (combination) onLook(combination.index);
  };
  return { rows, drawn, at, box, step, setScrollTop };
}

/** Every combination, sorted by any column; as many rows as there are, drawn only where they are seen. */
export function CombinationTable(props: CombinationTableProps) {
  const { rows, drawn, at, box, step, setScrollTop } = useScrolled(props);
  const lookedAt = at === null ? undefined : rows.rows.get(at);
  const columns = shownOf(props);
  return (
    <section class="choose-table-part" aria-label="The combinations as a table">
      <TableHead {...props} total={rows.total} />
      {rows.problem && <Problem message={rows.problem.message} />}
      <p class="visually-hidden" role="status">
        {lookedAt &&
          `${formatFixed((at ?? 0) + 1, 0)} of ${formatFixed(rows.total, 0)}: ${rowWords(props.book, columns, lookedAt)}`}
      </p>
      {/* biome-ignore lint/a11y/useSemanticElements: a region that scrolls */}
      <div
        class="choose-scroll"
        ref={box}
        role="group"
        aria-label="Combinations; arrow keys look at one after the other"
        // biome-ignore lint/a11y/noNoninteractiveTabindex: the table is scrolled and read by keyboard
        tabIndex={0}
        onScroll={(event) => setScrollTop(event.currentTarget.scrollTop)}
        onKeyDown={step}
      >
        <table class="choose-table" aria-rowcount={rows.total + 1} aria-busy={rows.key === null}>
          <thead>
            <tr aria-rowindex={1}>
              <th scope="col" class="choose-column">
                Combination
              </th>
              {columns.map((column) => (
                <SortHead key={column} column={column} sorting={props.sorting} onSort={props.onSort} />
              ))}
              <th scope="col" class="choose-column">
                <span class="visually-hidden">Pin, open</span>
              </th>
            </tr>
          </thead>
          <DrawnRows {...props} shown={columns} drawn={drawn} combinations={rows.rows} />
        </table>
      </div>
    </section>
  );
}

interface DrawnRowsProps extends CombinationTableProps {
  readonly shown: readonly Column[];
  readonly drawn: ReturnType<typeof drawnRows>;
  /** those that were read, by their place */
  readonly combinations: ReadonlyMap<number, Combination>;
}

/** The rows that are seen, between the room of those that aren't. */
function DrawnRows({ drawn, combinations, looked, ...props }: DrawnRowsProps) {
  const width = props.shown.length + 2;
  const places = Array.from({ length: drawn.until - drawn.first }, (_, i) => drawn.first + i);
  return (
    <tbody>
      <Room height={drawn.above} width={width} />
      {places.map((place) => {
        const combination = combinations.get(place);
        return combination ? (
          <CombinationRow
            key={place}
            {...props}
            place={place}
            combination={combination}
            looked={looked === combination.index}
          />
        ) : (
          <tr key={place} class="choose-row" aria-rowindex={place + 2}>
            <td class="quiet" colSpan={width}>
              reading…
            </td>
          </tr>
        );
      })}
      <Room height={drawn.below} width={width} />
    </tbody>
  );
}

/** @returns a row as it is read aloud while arrow keys go through the table: the combination, whether it works, each figure */
function rowWords(book: Book, columns: readonly Column[], combination: Combination): string {
  const does = combination.broken.length === 0 ? "works" : "out";
  const figures = columns.map(
    (column) =>
      `${columnSpec(column).label}${headUnit(column)}: ${cellText(column, combination.values[column])}`,
  );
  return `${sizedRotorText(book, combination)}, ${restText(book, combination)}; ${does}; ${figures.join(", ")}`;
}

/** Rows that are not drawn leave their room. */
function Room({ height, width }: { readonly height: number; readonly width: number }) {
  if (height === 0) return null;
  return (
    <tr>
      <td class="choose-room" colSpan={width} ref={(cell) => void setHeight(cell, height)} />
    </tr>
  );
}

function setHeight(cell: HTMLTableCellElement | null, height: number): void {
  if (cell) cell.style.height = `${height}px`;
}

interface SortHeadProps {
  readonly column: Column;
  readonly sorting: Sorting;
  readonly onSort: (sorting: Sorting) => void;
}

function SortHead({ column, sorting, onSort }: SortHeadProps) {
  const { label, want } = columnSpec(column);
  const sorted = sorting.sort === column;
  const other = sorting.order === "most" ? "least" : "most";
  const next = { ...sorting, sort: column, order: sorted ? other : want };
  const direction = sorting.order === "most" ? "descending" : "ascending";
  return (
    <th scope="col" class="choose-column" aria-sort={sorted ? direction : undefined}>
      <button type="button" class="plain" onClick={() => onSort(next)}>
        {label}
        {headUnit(column)}
        {sorted && <span aria-hidden="true">{sorting.order === "most" ? " ↓" : " ↑"}</span>}
      </button>
    </th>
  );
}
