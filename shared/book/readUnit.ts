import { type DimensionName, dimension } from "../units/dimensions.ts";
import type { Book } from "./book.ts";

/** Where tests keep a reading of a dimension. */
const READ_AT = { pressure: "pressure", load: "thrust" } as const satisfies Partial<
  Record<DimensionName, string>
>;
type ReadDimension = keyof typeof READ_AT;

interface Typed {
  readonly unit?: string;
}

/**
 * The unit in which a maker reads a quantity off the own instrument.
 *
 * @param book - the whole bench book
 * @param name - pressure: of curve and leak tests; load: of thrust tests
 * @returns the unit of the newest such reading, by the day of its test; the dimension's first where none is read, or its unit is none of those shown
 */
export function readUnit(book: Pick<Book, "tests">, name: ReadDimension): string {
  const shown = dimension(name).shown.map(({ label }) => label);
  const newest = [...book.tests].sort((a, b) => b.data.date.localeCompare(a.data.date));
  for (const { data } of newest) {
    const rows: readonly object[] = "rows" in data ? data.rows : [];
    const read = rows.map((row) => (row as Readonly<Record<string, Typed | undefined>>)[READ_AT[name]]);
    const unit = read.find((each) => each?.unit !== undefined)?.unit;
    if (unit !== undefined && shown.includes(unit)) return unit;
  }
  return shown[0];
}
