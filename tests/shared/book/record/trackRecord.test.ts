import { describe, expect, it } from "vitest";
import { withScatter } from "#shared/book/record/readingScatter.ts";
import { offOf, summaryOf, trackRecordOf } from "#shared/book/record/trackRecord.ts";
import { unchangedRows } from "#shared/book/record/unchangedRows.ts";
import type { RecordEntry } from "#shared/model/api/record.ts";
import { type BenchTest, benchTest } from "#shared/model/tests/index.ts";
import { demoBook } from "#tests/support/demoBook.ts";

const entry = (low: number, high: number | null, change: Partial<RecordEntry> = {}): RecordEntry => ({
  test: "t",
  row: 0,
  kind: "pull",
  date: "2026-01-01",
  at: "2026-01-01T08:00:00.000Z",
  figure: "pull",
  basis: "then",
  p5: 7,
  p50: 8,
  p95: 9.2,
  chance: null,
  measured: { low, high },
  held: null,
  inside: true,
  ...change,
});

describe("a reading beside its prediction", () => {
  // By hand, as in docs/method/record.md: √(8·9)/8 − 1.
  it("of 8 to 9 N against 8 N: 6.1 % above", () => {
    expect(offOf(entry(8, 9))).toBeCloseToRelative(Math.sqrt(72) / 8 - 1, 1e-12);
    expect(offOf(entry(8, 9))).toBeCloseTo(0.061, 3);
  });

  it.each([
    ["stopped before it let go", entry(8, null)],
    ["that let go at once", entry(0, 5)],
    ["of a drive", entry(0, 0, { measured: null })],
  ])("%s: counts as nothing", (_, one) => {
    expect(offOf(one)).toBeNull();
  });
});

describe("the record in one line", () => {
  it("of six readings: share inside, median off, drift between the halves", () => {
    const flows = [0.9, 1, 1.1, 1.2, 1.3, 1.4].map((factor, i) =>
      entry(8 * factor, 8 * factor, { inside: i < 5, basis: i === 0 ? "afterwards" : "then" }),
    );
    const { count, inTime, inside, bias, drift } = summaryOf("pull", flows);
    expect([count, inTime]).toEqual([6, 5]);
    expect(inside).toBeCloseToRelative(5 / 6, 1e-12);
    expect(bias).toBeCloseToRelative(0.15, 1e-12);
    expect(drift).toBeCloseToRelative(0.3, 1e-12);
    expect(summaryOf("pull", flows.slice(1)).drift).toBeNull();
  });

  it("of drives: the chance that was said against what held", () => {
    const drive = (chance: number, held: boolean) =>
      entry(0, 0, { figure: "margin", measured: null, inside: null, chance, held });
    const line = summaryOf("margin", [drive(0.9, true), drive(0.5, false)]);
    expect(line).toMatchObject({ said: 0.7, held: 0.5, inside: null, bias: null, drift: null });
  });
});

describe("the band of one reading", () => {
  it("without a scatter is the figure's, without another uncertainty the scatter's alone", () => {
    const band = withScatter({ p5: 7, p50: 8, p95: 9.2 }, 0);
    expect(band.p5).toBeCloseToRelative(7, 1e-12);
    expect(band.p95).toBeCloseToRelative(9.2, 1e-12);
    const sharp = withScatter({ p5: 8, p50: 8, p95: 8 }, 0.05);
    // 95 % point of the normal distribution, from memory
    expect(sharp.p95).toBeCloseToRelative(8 * Math.exp(1.6449 * 0.05), 1e-5);
    expect(sharp.p5).toBeCloseToRelative(8 / Math.exp(1.6449 * 0.05), 1e-5);
  });

  it("of a margin that nothing is needed for stays as it is", () => {
    const none = { p5: null, p50: null, p95: null };
    expect(withScatter(none, 0.05)).toBe(none);
  });
});

describe("rows of a corrected test that read what they did", () => {
  const test = (rows: object[], change: object = {}): BenchTest =>
    benchTest.parse({
      kind: "pull",
      date: "2026-01-01",
      rotor: "r",
      motor: "m",
      pack: "p",
      skirt: "s",
      surface: "f",
      diameter: { value: 42, unit: "mm" },
      direction: "straight-off",
      rigMass: { value: 40, unit: "g" },
      rows,
      ...change,
    });
  const row = (grams: number, more: object = {}) => ({
    held: { value: grams, unit: "g" },
    letGo: { value: grams + 20, unit: "g" },
    ...more,
  });

  it("are found in any order, once each, aside or not; a corrected one isn't among them", () => {
    const before = test([row(400), row(400), row(500)]);
    const after = test([row(500, { setAside: "slipped" }), row(400), row(400), row(400), row(510)]);
    expect([...unchangedRows(before, after)]).toEqual([
      [0, 2],
      [1, 0],
      [2, 1],
    ]);
  });

  it("are none where the conditions changed; a title or a note changes none", () => {
    const before = test([row(400)]);
    expect(unchangedRows(before, test([row(400)], { rotor: "other" })).size).toBe(0);
    expect(unchangedRows(before, test([row(400)], { title: "x", note: "y" })).size).toBe(1);
  });
});

describe("what is kept of a row that isn't there any more, or of an unknown test", () => {
  it("is left out", () => {
    const book = demoBook();
    const pull = book.tests.find(({ data }) => data.kind === "pull");
    if (!pull) throw new Error("the demo has no pull test");
    const rows = [0, 999].map((at) => {
      const { row: _, p5, p50, p95 } = entry(8, 9);
      return { row: at, figure: "pull", basis: "then", chance: null, p5, p50, p95 } as const;
    });
    const at = "2026-01-01T08:00:00.000Z";
    const { entries } = trackRecordOf(book, [
      { test: pull.id, at, rows },
      { test: "gone", at, rows },
    ]);
    expect(entries.map(({ test, row }) => [test, row])).toEqual([[pull.id, 0]]);
  });
});
