import type { TestKind } from "../../../../shared/model/tests/index.ts";
import type { DimensionName } from "../../../../shared/units/dimensions.ts";
import { KINDS } from "../record/kinds.ts";
import type { ColumnSpec } from "../record/spec.ts";

/** What a column of the file is: one of the test's own columns by its key, or one of these. */
export type Role = string;

export const OPEN: Role = "open";
export const SET_ASIDE: Role = "setAside";
/** which test a line belongs to, where a file holds several */
export const TEST: Role = "test";
export const IGNORE: Role = "ignore";

const LABELS: Readonly<Record<string, string>> = {
  [OPEN]: "open holes",
  [SET_ASIDE]: "set aside, why",
  [TEST]: "title of its test",
  [IGNORE]: "leave out",
};

/** @returns the test's own column that a role stands for; null where it is none */
export function columnOf(kind: TestKind, role: Role): ColumnSpec | null {
  return KINDS[kind].columns.find(({ key }) => key === role) ?? null;
}

/** @returns what a column of a file can be, by the kind of test that it becomes */
export function rolesOf(kind: TestKind): Role[] {
  const { columns, plate } = KINDS[kind];
  return [...columns.map(({ key }) => key), ...(plate ? [OPEN] : []), SET_ASIDE, TEST, IGNORE];
}

/** @returns a role as the screen and the messages call it */
export function roleLabel(kind: TestKind, role: Role): string {
  return LABELS[role] ?? columnOf(kind, role)?.label.toLowerCase() ?? role;
}

/** @returns a role's name in a list, where nothing else says what is meant */
export function roleInList(kind: TestKind, role: Role): string {
  return columnOf(kind, role)?.inList ?? roleLabel(kind, role);
}

/** @returns which quantity a role holds; null where it is none */
export function roleDimension(kind: TestKind, role: Role): DimensionName | null {
  return columnOf(kind, role)?.dimension ?? null;
}
