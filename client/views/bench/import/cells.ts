import type { TestKind } from "../../../../shared/model/tests/index.ts";
import type { DimensionName } from "../../../../shared/units/dimensions.ts";
import type { Limits } from "../../../../shared/units/limits.ts";
import { isGood, type Reading, readNumber } from "../../../../shared/units/readNumber.ts";
import { cellNumber } from "../record/numbers.ts";
import { optionOf } from "../record/options.ts";
import { readCell } from "./csv.ts";
import type { ColumnMapping } from "./mapping.ts";
import { columnOf, OPEN, roleLabel } from "./roles.ts";

const YES = /^(yes|y|true|1|x|ja)$/i;
const NO = /^(no|n|false|0|-|nein)$/i;

/** What a cell says, as text. */
interface Said {
  readonly value: string;
}

/** @returns why a number can't be what the column holds, in words; null where it can. A number that is too large is the form's to refuse. */
function wrongSign(si: number, { positive, min }: Limits): string | null {
  if (positive) return si > 0 ? null : "must be more than 0";
  return min === 0 && si < 0 ? "must not be below 0" : null;
}

/** @returns what a check says, "yes" or nothing; null where a text is neither */
export function yesOrNo(text: string): "yes" | "" | null {
  if (YES.test(text)) return "yes";
  return NO.test(text) ? "" : null;
}

function readCheck(cell: string, label: string): Reading<Said> {
  const value = yesOrNo(cell);
  return value === null ? { message: `${label} "${cell}" is neither yes nor no` } : { value };
}

function readOpen(cell: string, label: string, decimal: "." | ","): Reading<Said> {
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
): Reading<Said> {
  const column = columnOf(kind, mapping.role);
  const label = roleLabel(kind, mapping.role);
  if (mapping.role === OPEN) return readOpen(cell, label, decimal);
  if (column === null) return { value: cell };
  if (column.options) {
    const value = optionOf(column.options, cell);
    const allowed = column.options.map(([, each]) => each).join(", ");
    return value === null ? { message: `${label} "${cell}" is none of ${allowed}` } : { value };
  }
  const spec = cellNumber(kind, column, mapping.unit);
  if (spec === null || column.dimension === null) return readCheck(cell, label);
  const number = readCell(cell, decimal);
  if (number === null && !carriesUnit(cell, column.dimension))
    return { message: `${label} "${cell}" is no number` };
  const text = number === null ? cell : `${number} ${mapping.unit}`;
  const reading = readNumber({ ...spec, limits: undefined }, text);
  if (!isGood(reading)) return { message: `${label} "${cell}" can't be read` };
  const wrong = wrongSign(reading.value, spec.limits ?? {});
  return wrong === null ? { value: text } : { message: `${label} ${wrong}, read ${text}` };
}
