import { tsvParseRows } from "d3";
import { isGood, readNumber } from "../../../../shared/units/readNumber.ts";
import { settledText } from "../../../../shared/units/settled.ts";
import { counted } from "../../../ui/count.ts";
import { yesOrNo } from "../import/cells.ts";
import { roleOf, strangeUnit, unitIn } from "../import/headers.ts";
import { type Draft, type DraftRow, withNewRows } from "../record/draft.ts";
import { mostRows } from "../record/kinds.ts";
import { cellNumber, openNumber } from "../record/numbers.ts";
import { optionOf } from "../record/options.ts";
import { carriedOf } from "../record/readDraft.ts";
import type { ColumnSpec, KindSpec } from "../record/spec.ts";
import type { Place } from "./cellKeys.ts";

/** Cells as a spreadsheet copies them, row by row. */
export type Block = readonly (readonly string[])[];

/** What a pasted column fills: a column of the test, or the open holes of one kind. */
export type Target = ColumnSpec | { readonly hole: number };

/** Where a pasted column goes, and the unit of its bare numbers. */
interface Filling {
  readonly target: Target | null;
  /** the column's own unless its heading says another */
  readonly unit?: string;
}

export interface Pasted {
  readonly draft: Draft;
  /** keys of the rows that were filled */
  readonly keys: readonly number[];
  /** what was pasted and what of it found no place, in words */
  readonly words: string;
}

const isCheck = (target: Target | null): boolean =>
  target !== null && "key" in target && target.need === "check";

/** @returns a text as a block of cells; null where it is a single cell, which is pasted as any text is */
export function blockOf(text: string): Block | null {
  const rows: string[][] = tsvParseRows(text.replace(/(\r\n|\r|\n)+$/, "")).map((row) =>
    row.map((cell) => cell.trim()),
  );
  return rows.length > 1 || (rows[0]?.length ?? 0) > 1 ? rows : null;
}

/** A cell's text as the form keeps it: a bare number with the unit that is meant, a check as yes or nothing. */
function textFor(spec: KindSpec, { target, unit }: Filling, own: string | undefined, cell: string): string {
  if (target === null || "hole" in target) return cell;
  if (target.options) return optionOf(target.options, cell) ?? cell;
  const number = cellNumber(spec.kind, target, unit ?? own);
  if (number === null) return yesOrNo(cell) ?? "";
  if (cell === "" || isGood(readNumber({ ...number, limits: undefined }, cell)) || unit === undefined)
    return settledText(number, cell);
  return `${cell} ${unit}`;
}

function reads(spec: KindSpec, target: Target | undefined, cell: string): boolean {
  if (target === undefined || cell === "") return false;
  if ("key" in target && target.options) return optionOf(target.options, cell) !== null;
  const number = "hole" in target ? openNumber(null) : cellNumber(spec.kind, target, undefined);
  return number === null
    ? yesOrNo(cell) !== null
    : isGood(readNumber({ ...number, limits: undefined }, cell));
}

/** The first row is a heading where nothing in it can be read and something below it can. */
function hasHeading(spec: KindSpec, block: Block, targets: readonly Target[]): boolean {
  const [first, second] = block;
  return (
    second !== undefined &&
    !first.some((cell, i) => reads(spec, targets[i], cell)) &&
    second.some((cell, i) => reads(spec, targets[i], cell))
  );
}

/** What a heading's cells name, with the unit in each; a unit that is none of the quantity's is left to be refused. */
function byHeading(spec: KindSpec, heading: readonly string[], all: readonly Target[]): Filling[] {
  return heading.map((name) => {
    const role = roleOf(name, spec.kind);
    const column = all.find((target): target is ColumnSpec => "key" in target && target.key === role);
    if (!column?.dimension) return { target: column ?? null };
    const unit = unitIn(name, column.dimension) ?? strangeUnit(name, column.dimension) ?? undefined;
    return { target: column, unit };
  });
}

function fill(row: DraftRow, target: Target, text: string): DraftRow {
  if ("key" in target) return { ...row, cells: { ...row.cells, [target.key]: text } };
  return { ...row, open: row.open.map((old, i) => (i === target.hole ? text : old)) };
}

/** How the block lies over the table: by its heading where that names columns, else from the cell on. */
function layOut(spec: KindSpec, block: Block, targets: readonly Target[], all: readonly Target[]) {
  const width = Math.max(...block.map((row) => row.length));
  const inOrder = Array.from({ length: width }, (_, i): Filling => ({ target: targets[i] ?? null }));
  if (!hasHeading(spec, block, targets)) return { rows: block, fillings: inOrder, heading: null };
  const named = byHeading(spec, block[0], all);
  const isNamed = named.some(({ target }) => target !== null);
  return { rows: block.slice(1), fillings: isNamed ? named : inOrder, heading: block[0] };
}

interface LeftOut {
  /** headings of columns that have no place in the table */
  readonly lost: readonly string[];
  /** what stood in a check and is neither yes nor no */
  readonly unclear: readonly string[];
  /** rows beyond what a test takes */
  readonly cut: number;
}

function wordsOf(rows: number, { lost, unclear, cut }: LeftOut, most: number): string {
  const words = [`${counted(rows, "row")} pasted.`];
  if (lost.length > 0) words.push(`Left out, without a place in the table: ${lost.join(", ")}.`);
  if (unclear.length > 0) words.push(`Neither yes nor no, not ticked: ${[...new Set(unclear)].join(", ")}.`);
  if (cut > 0) words.push(`A test takes ${most} rows at most; the last ${cut} were left out.`);
  return words.join(" ");
}

/**
 * Lays a block of cells over a draft's rows; rows that it lacks are added.
 *
 * @param at - the cell that the block's first one goes to
 * @param shown - the table's columns as they stand on the screen
 * @param all - every column that the test has, for a heading that names them
 */
export function pasteBlock(
  spec: KindSpec,
  draft: Draft,
  block: Block,
  at: Place,
  shown: readonly Target[],
  all: readonly Target[],
): Pasted {
  const { rows, fillings, heading } = layOut(spec, block, shown.slice(at.column), all);
  const most = mostRows(spec.kind);
  const taken = rows.slice(0, Math.max(0, most - at.row));
  const lacking = Math.max(0, at.row + taken.length - draft.rows.length);
  const next = withNewRows(draft, carriedOf(spec), lacking);
  const filled = next.rows.map((row, i) => {
    const cells = taken[i - at.row];
    if (!cells) return row;
    return fillings.reduce((to, filling, k) => {
      const { target } = filling;
      if (target === null || cells[k] === undefined) return to;
      const own = "key" in target ? draft.units[target.key] : undefined;
      return fill(to, target, textFor(spec, filling, own, cells[k]));
    }, row);
  });
  const lost = fillings.flatMap(({ target }, i) =>
    target === null && rows.some((row) => row[i]) ? [heading?.[i] || `column ${i + 1}`] : [],
  );
  const unclear = fillings.flatMap(({ target }, i) =>
    isCheck(target) ? taken.map((row) => row[i] ?? "").filter((cell) => cell && yesOrNo(cell) === null) : [],
  );
  return {
    draft: { ...next, rows: filled },
    keys: filled.slice(at.row, at.row + taken.length).map(({ key }) => key),
    words: wordsOf(taken.length, { lost, unclear, cut: rows.length - taken.length }, most),
  };
}
