import type { TestKind } from "../../../../shared/model/tests/index.ts";
import type { DimensionName } from "../../../../shared/units/dimensions.ts";
import { toSI } from "../../../../shared/units/parse.ts";
import type { ColumnSpec } from "../record/spec.ts";
import { isGood, type Reading, readQuantity } from "../record/texts.ts";
import { readCell } from "./csv.ts";
import type { ColumnMapping } from "./mapping.ts";
import { columnOf, OPEN, roleLabel } from "./roles.ts";

const YES = /^(yes|y|true|1|x|ja)$/i;
const NO = /^(no|n|false|0|-|nein)$/i;

/** @returns why a number can't be what the column holds, in words; null where it can */
function wrongSign(si: number, { sign }: ColumnSpec): string | null {
  if (sign === "any") return null;
  if (sign === "positive") return si > 0 ? null : "must be more than 0";
  return si >= 0 ? null : "must not be below 0";
}

function readCheck(cell: string, label: string): Reading<string> {
  if (YES.test(cell)) return { value: "yes" };
  return NO.test(cell) ? { value: "" } : { message: `${label} "${cell}" is neither yes nor no` };
}

function readOpen(cell: string, label: string, decimal: "." | ","): Reading<string> {
  const count = readCell(cell, decimal);
  if (count !== null && Number.isInteger(count) && count >= 0) return { value: String(count) };
  return { message: `${label} "${cell}" is no count` };
}

/** A bare number that isn't one under the file's decimal sign is refused, not guessed. */
function carriesUnit(cell: string, name: DimensionName): boolean {
  return /\d\s*[^\d\s.,]/.test(cell) || (name === "fraction" && /\d\s1$/.test(cell));
}

/** Reads one cell that isn't empty: a number in the column's unit, one with its own, yes or no, or words. */
export function readRoleCell(
  kind: TestKind,
  cell: string,
  mapping: ColumnMapping,
  decimal: "." | ",",
): Reading<string> {
  const column = columnOf(kind, mapping.role);
  const label = roleLabel(kind, mapping.role);
  if (mapping.role === OPEN) return readOpen(cell, label, decimal);
  if (column === null) return { value: cell };
  if (column.dimension === null) return readCheck(cell, label);
  const number = readCell(cell, decimal);
  if (number === null && !carriesUnit(cell, column.dimension))
    return { message: `${label} "${cell}" is no number` };
  const text = number === null ? cell : `${number} ${mapping.unit}`;
  const reading = readQuantity(text, column.dimension);
  if (!isGood(reading)) return { message: `${label} "${cell}" can't be read` };
  const wrong = wrongSign(toSI(reading.value, column.dimension), column);
  return wrong === null ? { value: text } : { message: `${label} ${wrong}, read ${text}` };
}
