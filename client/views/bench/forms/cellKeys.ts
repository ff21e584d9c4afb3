import { useRef } from "preact/hooks";

/** A cell by its places: the row's among the rows that are drawn, the column's among the row's cells. */
export interface Place {
  readonly row: number;
  readonly column: number;
}

const CELL = "[data-cell]";

/** @returns the place of the cell that an event came from; null where it came from something else in the table */
export function placeOf(target: EventTarget | null): Place | null {
  if (!isCell(target)) return null;
  const row = target.closest("tr");
  const rows = row?.parentElement ? [...row.parentElement.children] : [];
  return row ? { row: rows.indexOf(row), column: cellsOf(row).indexOf(target) } : null;
}

/** A text, a check, or a choice. */
type Cell = HTMLInputElement | HTMLSelectElement;

const isCell = (target: EventTarget | null): target is Cell =>
  (target instanceof HTMLInputElement || target instanceof HTMLSelectElement) && target.matches(CELL);

const cellsOf = (row: Element): Cell[] => [...row.querySelectorAll<Cell>(CELL)];

/** Focuses a cell and selects what stands in it, as a spreadsheet does. */
export function focusCell(body: HTMLElement | null, { row, column }: Place): boolean {
  const cell = body?.children[row] && cellsOf(body.children[row])[column];
  if (!cell) return false;
  cell.focus();
  if (cell instanceof HTMLInputElement && cell.type === "text") cell.select();
  return true;
}

/** Whether the text cursor can go no further in a direction, or all of the text is selected. */
function isAtEdge(cell: Cell, step: 1 | -1): boolean {
  if (!(cell instanceof HTMLInputElement) || cell.type !== "text") return true;
  const { selectionStart: from, selectionEnd: to, value } = cell;
  if (from === 0 && to === value.length) return true;
  return from === to && from === (step > 0 ? value.length : 0);
}

const isEmpty = (cell: Cell): boolean => cell.type !== "checkbox" && cell.value.trim() === "";

/** The next cell of a row that says nothing yet. */
function nextEmpty(body: Element, { row, column }: Place): number | null {
  const at = cellsOf(body.children[row]).findIndex((cell, i) => i > column && isEmpty(cell));
  return at < 0 ? null : at;
}

/** A soft keyboard has no tabulator: its Enter goes through the row. */
const hasTab = (): boolean => !window.matchMedia("(pointer: coarse)").matches;

interface CellKeys {
  readonly onKeyDown: (event: KeyboardEvent) => void;
  readonly onPointerDown: () => void;
}

/**
 * The keys of a table of cells, as in a spreadsheet: arrows go to the neighbour, left and right once the text cursor is
 * at its end; Enter goes to the next row, under the cell where the row was begun. On a touch screen Enter goes to the
 * row's next empty cell first.
 *
 * @param count - how many rows are drawn
 * @param onEnd - Enter in the last row, with the column to go on in
 */
export function useCellKeys(count: number, onEnd: (column: number) => void): CellKeys {
  const begun = useRef<Place | null>(null);
  const enter = (body: HTMLElement, at: Place) => {
    const empty = hasTab() ? null : nextEmpty(body, at);
    if (empty !== null) return focusCell(body, { row: at.row, column: empty });
    const column = !hasTab() ? 0 : begun.current?.row === at.row ? begun.current.column : at.column;
    begun.current = null;
    if (at.row === count - 1) return onEnd(column);
    return focusCell(body, { row: at.row + 1, column });
  };
  const onKeyDown = (event: KeyboardEvent) => {
    const at = placeOf(event.target);
    if (!at || event.ctrlKey || event.metaKey || event.altKey || event.isComposing) return;
    const body = event.currentTarget as HTMLElement;
    const cell = event.target as Cell;
    if (event.key === "Tab") {
      if (begun.current?.row !== at.row) begun.current = at;
      return;
    }
    if (event.key === "Enter") {
      event.preventDefault();
      if (event.shiftKey) focusCell(body, { row: at.row - 1, column: at.column });
      else enter(body, at);
      return;
    }
    if (event.shiftKey) return;
    const to = neighbour(event.key, at, cell);
    if (to && focusCell(body, to)) event.preventDefault();
  };
  return {
    onKeyDown,
    onPointerDown: () => {
      begun.current = null;
    },
  };
}

/** A choice keeps the arrows: they choose. */
function neighbour(key: string, { row, column }: Place, cell: Cell): Place | null {
  if (cell instanceof HTMLSelectElement) return null;
  switch (key) {
    case "ArrowDown":
      return { row: row + 1, column };
    case "ArrowUp":
      return { row: row - 1, column };
    case "ArrowRight":
      return isAtEdge(cell, 1) ? { row, column: column + 1 } : null;
    case "ArrowLeft":
      return isAtEdge(cell, -1) ? { row, column: column - 1 } : null;
    default:
      return null;
  }
}
