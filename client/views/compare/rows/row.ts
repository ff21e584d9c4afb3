import type { BuildMark } from "../../../../shared/book/marks.ts";
import type { VerdictState } from "../../../../shared/decide/verdict/states.ts";
import type { Cell as Saved } from "../../../ui/table.ts";
import type { WorkingOf } from "../../../ui/working/FigureOf.tsx";
import type { Column } from "../useColumn.ts";

/** Words of a small line; a figure among them opens to its working. */
export type Piece = string | { readonly text: string; readonly working: WorkingOf };
/** A small line under a figure. */
export type Line = string | readonly Piece[];

/** @returns a line as it is read */
export const lineText = (line: Line): string =>
  typeof line === "string"
    ? line
    : line.map((piece) => (typeof piece === "string" ? piece : piece.text)).join("");

/** What one build has in a row, with the words that its own view says it in. */
export interface Cell {
  /** the figure or the name */
  readonly text: string;
  /** what two builds differ in, where that is more than the text */
  readonly compared?: string;
  /** small, under it */
  readonly also?: readonly Line[];
  /** colour of what it comes to; the words say it too */
  readonly tone?: string;
  /** of a verdict: drawn with its shape */
  readonly state?: VerdictState;
  readonly marks?: readonly BuildMark[];
  /** how the figure came about; absent: it has no working */
  readonly working?: WorkingOf;
  /** in the row's unit, for the file */
  readonly saved: Saved;
  /** further numbers for the file, by what they are */
  readonly more?: Readonly<Record<string, Saved>>;
}

export interface Row {
  readonly key: string;
  readonly title: string;
  /** of the saved figure; empty where it has none */
  readonly unit: string;
  /** by column; null: not worked out yet */
  readonly cells: readonly (Cell | null)[];
}

/** Rows under one heading. */
export interface RowGroup {
  readonly title: string;
  readonly rows: readonly Row[];
}

/** The worst angle is another one for each build: its row stands after all others [°]. */
export const BEYOND = 360;

/** Where a build has nothing in a row. */
export const NOTHING: Cell = { text: "–", saved: null };

/** @returns a cell that is its text and no more */
export const plain = (text: string, also: readonly string[] = []): Cell => ({ text, also, saved: text });

/** @returns one row, a cell by column */
export function row(
  key: string,
  title: string,
  unit: string,
  columns: readonly Column[],
  of: (column: Column) => Cell | null,
): Row {
  return { key, title, unit, cells: columns.map(of) };
}

/** Something that several builds may have, such as an attitude. */
interface Kept {
  readonly key: string;
  readonly title: string;
  /** rows stand by rising angle, those without one first [°] */
  readonly angle?: number;
}

/**
 * A row for each thing that any of the builds has.
 *
 * @param columns - of the builds
 * @param listed - the things of one build
 * @param cell - what a build with that thing has in its row; others have {@link NOTHING}
 * @param unit - of the saved figures
 */
export function rowsOfAll<T extends Kept>(
  columns: readonly Column[],
  listed: (column: Column) => readonly T[],
  cell: (of: T, column: Column) => Cell | null,
  unit: string,
): Row[] {
  const lists = columns.map(listed);
  const kept = new Map<string, Kept>(lists.flat().map((each) => [each.key, each]));
  const ordered = [...kept.values()].sort((a, b) => (a.angle ?? 0) - (b.angle ?? 0));
  return ordered.map(({ key, title }) => ({
    key,
    title,
    unit,
    cells: columns.map((column, i) => {
      const own = lists[i].find((each) => each.key === key);
      return own ? cell(own, column) : NOTHING;
    }),
  }));
}

const comparedIn = ({ text, compared = text }: Cell): string => compared;

/** @returns whether the builds differ in a row, as far as it is worked out */
export function differs({ cells }: Pick<Row, "cells">): boolean {
  return new Set(cells.flatMap((cell) => (cell ? [comparedIn(cell)] : []))).size > 1;
}

/** @returns whether a build differs from the first one in a row */
export const differsFromFirst = ({ cells }: Pick<Row, "cells">, at: number): boolean =>
  differs({ cells: [cells[0], cells[at]] });
