import { type Book, findById } from "../../../../shared/book/book.ts";
import { inUnit } from "../../../../shared/units/format.ts";
import { headed } from "../../../../shared/units/showing.ts";
import { api } from "../../../state/api.ts";
import { type Cell, type Table, toCsv } from "../../../ui/table.ts";
import type { Combination, SetsPage } from "../answers.ts";
import type { ColumnSpec } from "../columns.ts";
import { LIMIT_NAMES } from "../words/limits.ts";
import { kindText, trustMarks } from "../words/set.ts";
import { type Sorting, setsPath } from "./useRows.ts";

/** So many sets come at once, the most that a page holds. */
const PAGE = 500;

function rowOf(book: Book, columns: readonly ColumnSpec[], set: Combination): Cell[] {
  const { parts, diameter, gap, duty, values, broken } = set;
  return [
    findById(book.motors, parts.motor)?.data.name ?? parts.motor,
    findById(book.rotors, parts.rotor)?.data.name ?? parts.rotor,
    kindText(set),
    inUnit(diameter, "length"),
    findById(book.packs, parts.pack)?.data.name ?? parts.pack,
    parts.skirt === null ? null : (findById(book.skirts, parts.skirt)?.data.name ?? parts.skirt),
    gap === null ? null : inUnit(gap, "length"),
    inUnit(duty, "fraction"),
    ...columns.map(({ key, shown }) => {
      const value = values[key];
      return value === null ? null : shown(value);
    }),
    trustMarks(set)
      .map(({ word }) => word)
      .join(", "),
    broken.map(({ limit }) => LIMIT_NAMES[limit] ?? limit).join(", "),
  ];
}

/** @returns sets as a table: their parts by name, every column in the unit shown, what they are based on, which limits they break */
export function setsTable(book: Book, columns: readonly ColumnSpec[], sets: readonly Combination[]): Table {
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
    rows: sets.map((set) => rowOf(book, columns, set)),
  };
}

/** @returns all sets of a job in the order of its list, as CSV @throws {ApiError} */
export async function setsCsv(
  book: Book,
  job: string,
  columns: readonly ColumnSpec[],
  sorting: Sorting,
): Promise<string> {
  const sets: Combination[] = [];
  let total = 1;
  while (sets.length < total) {
    const page = await api.get<SetsPage>(setsPath(job, sorting, sets.length, PAGE));
    if (page.items.length === 0) break;
    sets.push(...page.items);
    total = page.total;
  }
  return toCsv(setsTable(book, columns, sets));
}
