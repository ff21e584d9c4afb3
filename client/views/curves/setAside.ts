import type { BenchTest } from "../../../shared/model/tests/index.ts";

/**
 * A test with one of its rows set aside, or taken back; nothing else in it changes.
 *
 * @param test - as stored
 * @param row - index into its rows
 * @param reason - why the row is left out of the fits; null takes it back
 * @throws {RangeError} on a row that the test does not have, or a reason of blanks
 */
export function withRowSetAside(test: BenchTest, row: number, reason: string | null): BenchTest {
  const rows: readonly BenchTest["rows"][number][] = test.rows;
  if (!rows[row]) throw new RangeError(`the test has no row ${row + 1}`);
  const said = reason?.trim();
  if (said === "") throw new RangeError("a reason is needed");
  const next = rows.map((each, i) => {
    if (i !== row) return each;
    const { setAside: _before, ...kept } = each;
    return said === undefined ? kept : { ...kept, setAside: said };
  });
  return { ...test, rows: next } as BenchTest;
}

/** Rows that stay in the book but not in the fit. */
export function asideRows(test: BenchTest): { row: number; reason: string }[] {
  const rows: readonly BenchTest["rows"][number][] = test.rows;
  return rows.flatMap((each, row) => (each.setAside === undefined ? [] : [{ row, reason: each.setAside }]));
}
