import type { BenchTest } from "../../model/tests/index.ts";

/** What a row says beside its readings: setting it aside changes none of them. */
const readingsOf = (row: BenchTest["rows"][number]): string => {
  const { setAside: _why, ...readings } = row as { readonly setAside?: string };
  return JSON.stringify(readings);
};

/** What the rows were taken under: another rotor, or another air, makes them other readings. */
const conditionsOf = (test: BenchTest): string => {
  const { title: _title, note: _note, struckOut: _why, date: _date, rows: _rows, ...conditions } = test;
  return JSON.stringify(conditions);
};

/**
 * Rows of a corrected test that read what they read before, each once and in any order.
 *
 * @returns place now by place before, as a map from the present row to the earlier [-]; empty where the test's conditions changed
 */
export function unchangedRows(before: BenchTest, after: BenchTest): Map<number, number> {
  if (conditionsOf(before) !== conditionsOf(after)) return new Map();
  const earlier = new Map<string, number[]>();
  before.rows.forEach((row, i) => {
    const key = readingsOf(row);
    earlier.set(key, [...(earlier.get(key) ?? []), i]);
  });
  const same = new Map<number, number>();
  after.rows.forEach((row, i) => {
    const old = earlier.get(readingsOf(row))?.shift();
    if (old !== undefined) same.set(i, old);
  });
  return same;
}
