import { type Book, findById } from "../../../../shared/book/book.ts";
import { inUnit } from "../../../../shared/units/format.ts";
import { headed } from "../../../../shared/units/showing.ts";
import { api } from "../../../state/api.ts";
import { type Cell, type Table, toCsv } from "../../../ui/table.ts";
import type { Combination, CombinationsPage } from "../answers.ts";
import type { ColumnSpec } from "../columns.ts";
import { kindText, trustMarks } from "../words/combination.ts";
import { LIMIT_NAMES } from "../words/limits.ts";
import { combinationsPath, type Sorting } from "./useRows.ts";

/** So many combinations come at once, the most that a page holds. */
const PAGE = 500;

function rowOf(book: Book, columns: readonly ColumnSpec[], combination: Combination): Cell[] {
  const { parts, diameter, gap, duty, values, broken } = combination;
  return [
    findById(book.motors, parts.motor)?.data.name ?? parts.motor,
    findById(book.rotors, parts.rotor)?.data.name ?? parts.rotor,
    kindText(combination),
    inUnit(diameter, "length"),
    findById(book.packs, parts.pack)?.data.name ?? parts.pack,
    parts.skirt === null ? null : (findById(book.skirts, parts.skirt)?.data.name ?? parts.skirt),
    gap === null ? null : inUnit(gap, "length"),
    inUnit(duty, "fraction"),
    ...columns.map(({ key, shown }) => {
      const value = values[key];
      return value === null ? null : shown(value);
    }),
    trustMarks(combination)
      .map(({ word }) => word)
      .join(", "),
    broken.map(({ limit }) => LIMIT_NAMES[limit] ?? limit).join(", "),
  ];
}

/** @returns combinations as a table: their parts by name, every column in the unit shown, what they are based on, which limits they break */
export function combinationsTable(
  book: Book,
  columns: readonly ColumnSpec[],
  combinations: readonly Combination[],
): Table {
  return {
    columns: [
      "motor",
      "rotor",
      "kind",
      headed("diameter", "length"),
      "pack",
      "skirt",
      headed("gap", "length"),
      headed("throttle", "fraction"),
      ...columns.map(({ axis }) => axis),
      "marks",
      "breaks",
    ],
    rows: combinations.map((combination) => rowOf(book, columns, combination)),
  };
}

/** @returns all combinations of a job in the order of its list, as CSV @throws {ApiError} */
export async function combinationsCsv(
  book: Book,
  job: string,
  columns: readonly ColumnSpec[],
  sorting: Sorting,
): Promise<string> {
  const combinations: Combination[] = [];
  let total = 1;
  while (combinations.length < total) {
    const page = await api.get<CombinationsPage>(combinationsPath(job, sorting, combinations.length, PAGE));
    if (page.items.length === 0) break;
    combinations.push(...page.items);
    total = page.total;
  }
  return toCsv(combinationsTable(book, columns, combinations));
}
