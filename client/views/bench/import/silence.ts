import type { TestKind } from "../../../../shared/model/tests/index.ts";
import { KINDS } from "../record/kinds.ts";
import type { ColumnMapping } from "./mapping.ts";

/** @returns what is taken where the file has no column for it, in words; null where nothing is */
export function silenceOf(kind: TestKind, mapping: readonly ColumnMapping[]): string | null {
  const { columns, row } = KINDS[kind];
  const said = columns
    .filter(({ key }) => !mapping.some(({ role }) => role === key))
    .flatMap(({ label, need, fallback }) => {
      const name = label.toLowerCase();
      if (need === "nullable") return [`"${name}" is left empty`];
      if (need === "check") return [`"${name}" is no`];
      return fallback === undefined ? [] : [`"${name}" is ${fallback}`];
    });
  return said.length === 0 ? null : `Not in the file, so in every ${row} ${said.join(", ")}.`;
}
