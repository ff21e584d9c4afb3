import type { TestKind } from "../../../../shared/model/tests/index.ts";
import type { FieldTexts } from "./spec.ts";

/** One row as typed. `key` stays with the row while others come and go. */
export interface DraftRow {
  readonly key: number;
  /** text by column; "yes" in a check that is set */
  readonly cells: FieldTexts;
  /** open holes of each kind, as typed, in the plate's order */
  readonly open: readonly string[];
  /** why the row is set aside; null while it counts */
  readonly aside: string | null;
}

/** One kind of hole as typed. */
export interface DraftHole {
  readonly key: number;
  readonly diameter: string;
  readonly thickness: string;
  readonly count: string;
  readonly edge: string;
  readonly dischargeCoefficient: string;
}

/** A test as typed, nothing checked: what a form holds, what a CSV file says, what a stored test looks like in writing. */
export interface Draft {
  readonly kind: TestKind;
  readonly fields: FieldTexts;
  readonly holes: readonly DraftHole[];
  readonly rows: readonly DraftRow[];
  /** by column, the unit meant where none is typed, as its header says; the quantity's first unless chosen */
  readonly units: FieldTexts;
}

export const EMPTY_HOLE: Omit<DraftHole, "key"> = {
  diameter: "",
  thickness: "",
  count: "",
  edge: "sharp",
  dischargeCoefficient: "",
};

/** @returns a key that no row or hole of the list has */
export function freeKey(list: readonly { readonly key: number }[]): number {
  return list.reduce((most, { key }) => Math.max(most, key), -1) + 1;
}

/** @returns true where nothing was typed in a row; a check alone, or a circumstance filled in for the maker, is nothing */
export function isBlankRow(row: DraftRow, carried: ReadonlySet<string>): boolean {
  const typed = Object.entries(row.cells).some(
    ([column, text]) => text.trim() !== "" && text !== "yes" && !carried.has(column),
  );
  return !typed && row.aside === null && row.open.every((count) => count.trim() === "");
}

export function withField(draft: Draft, path: string, text: string): Draft {
  return { ...draft, fields: { ...draft.fields, [path]: text } };
}

export function withRow(draft: Draft, key: number, change: (row: DraftRow) => DraftRow): Draft {
  return { ...draft, rows: draft.rows.map((row) => (row.key === key ? change(row) : row)) };
}

export function withCell(draft: Draft, key: number, column: string, text: string): Draft {
  return withRow(draft, key, (row) => ({ ...row, cells: { ...row.cells, [column]: text } }));
}

export function withHole(draft: Draft, key: number, change: Partial<DraftHole>): Draft {
  return { ...draft, holes: draft.holes.map((hole) => (hole.key === key ? { ...hole, ...change } : hole)) };
}

/** Adds a kind of hole, like the last one but for its size. */
export function withNewHole(draft: Draft): Draft {
  const like = draft.holes.at(-1) ?? EMPTY_HOLE;
  const hole = { ...like, key: freeKey(draft.holes), diameter: "", dischargeCoefficient: "" };
  const rows = draft.rows.map((row) => ({ ...row, open: [...row.open, ""] }));
  return { ...draft, holes: [...draft.holes, hole], rows };
}

/**
 * Takes another plate; counts of open holes stay where it has as many kinds.
 *
 * @param id - of a plate of the book; empty for one that is described in the test
 */
export function withPlate(draft: Draft, holes: readonly DraftHole[], id = ""): Draft {
  const rows = draft.rows.map((row) => ({ ...row, open: holes.map((_, i) => row.open[i] ?? "") }));
  return { ...withField(draft, "plate", id), holes, rows };
}

export function withoutHole(draft: Draft, key: number): Draft {
  const at = draft.holes.findIndex((hole) => hole.key === key);
  const rows = draft.rows.map((row) => ({ ...row, open: row.open.filter((_, i) => i !== at) }));
  return { ...draft, holes: draft.holes.filter((hole) => hole.key !== key), rows };
}

/** Adds rows; the circumstances of the last one are filled in, its readings are not. */
export function withNewRows(draft: Draft, carried: ReadonlySet<string>, count: number): Draft {
  const last = draft.rows.at(-1);
  const cells = Object.fromEntries(
    Object.entries(last?.cells ?? {}).filter(([column]) => carried.has(column)),
  );
  const first = freeKey(draft.rows);
  const added = Array.from({ length: count }, (_, i): DraftRow => {
    return { key: first + i, cells, open: draft.holes.map(() => ""), aside: null };
  });
  return { ...draft, rows: [...draft.rows, ...added] };
}

/** Adds a row, as {@link withNewRows} does. */
export const withNewRow = (draft: Draft, carried: ReadonlySet<string>): Draft =>
  withNewRows(draft, carried, 1);

export function withoutRow(draft: Draft, key: number): Draft {
  return { ...draft, rows: draft.rows.filter((row) => row.key !== key) };
}

/** @returns whether something is a draft of such a test */
export function isDraftOf(kind: TestKind): (content: unknown) => content is Draft {
  return (content): content is Draft => {
    if (typeof content !== "object" || content === null) return false;
    const draft = content as Partial<Draft>;
    const lists = Array.isArray(draft.rows) && Array.isArray(draft.holes);
    return (
      draft.kind === kind && lists && typeof draft.fields === "object" && typeof draft.units === "object"
    );
  };
}
