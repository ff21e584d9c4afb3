import type { TestKind } from "../../../../shared/model/tests/index.ts";
import { cellNumber } from "../record/numbers.ts";
import { FIRST } from "./adjust.ts";
import { readClock } from "./clock.ts";
import { type CsvTable, readCell } from "./csv.ts";
import type { ColumnMapping } from "./mapping.ts";
import { columnOf } from "./roles.ts";

/** So many lines, evenly apart, say what a whole column is like. */
const LOOKED_AT = 2000;
/** A clock that begins later than this reads the time of day, no run [s]. Judgement. */
const AN_HOUR = 3600;
/** A number of seconds that begins beyond this counts from 1970 (3 years) [s]. Judgement. */
const THREE_YEARS = 1e8;

/** What a column's cells say, evenly through the file. */
function sampleOf(table: CsvTable, at: number): string[] {
  const step = Math.max(1, Math.floor(table.lines.length / LOOKED_AT));
  const cells: string[] = [];
  for (let i = 0; i < table.lines.length; i += step) {
    const cell = table.lines.at(i).cells[at]?.trim();
    if (cell) cells.push(cell);
  }
  return cells;
}

/** A logger that counts what flows out as negative writes no positive one. */
function isTurned(cells: readonly string[], decimal: "." | ","): boolean {
  const numbers = cells.map((cell) => readCell(cell, decimal)).filter((value) => value !== null);
  return numbers.some((value) => value < 0) && numbers.every((value) => value <= 0);
}

function countsFromElsewhere([first]: readonly string[], decimal: "." | ","): boolean {
  if (first === undefined) return false;
  const clock = readClock(first);
  if (clock) return clock.dated || clock.seconds >= AN_HOUR;
  return (readCell(first, decimal) ?? 0) > THREE_YEARS;
}

/**
 * Turns the sign of a column that can't be negative and has nothing but negative readings; lets a time of day or a timestamp
 * begin with its first line.
 *
 * @param mapping - with nothing set by hand yet
 */
export function withGuessedAdjustments(
  table: CsvTable,
  mapping: readonly ColumnMapping[],
  kind: TestKind,
): ColumnMapping[] {
  return mapping.map((column, at) => {
    const spec = columnOf(kind, column.role);
    const number = spec && cellNumber(kind, spec, column.unit);
    if (!spec || !number) return column;
    const cells = sampleOf(table, at);
    if (spec.dimension === "time")
      return countsFromElsewhere(cells, table.decimal) ? { ...column, minus: FIRST } : column;
    const { positive, min } = number.limits ?? {};
    const noneBelow = positive === true || min === 0;
    return noneBelow && isTurned(cells, table.decimal) ? { ...column, times: "-1" } : column;
  });
}
