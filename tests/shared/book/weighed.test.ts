import { describe, expect, it } from "vitest";
import { slipsOfTest } from "#shared/book/slips/ofTest.ts";
import { weighingOf } from "#shared/book/weighed.ts";
import { weighInTest } from "#shared/model/tests/weighIn.ts";
import { demoBook } from "#tests/support/demoBook.ts";

const book = demoBook();
const { id, data } = book.builds[0];

const grams = (value: number) => ({ reading: { value, unit: "g" } });
const weighing = (date: string, readings: number[], more: object = {}) =>
  weighInTest.parse({
    kind: "weigh-in",
    date,
    weighed: "build",
    build: id,
    rows: readings.map(grams),
    ...more,
  });
const withTests = (...tests: ReturnType<typeof weighing>[]) => ({
  ...book,
  tests: tests.map((test, i) => ({ ...book.tests[0], id: `w${i}`, data: test })),
});

describe("weighingOf", () => {
  it("is the newest weigh-in of the whole build, struck-out ones aside", () => {
    const struck = weighing("2026-07-03", [500], { struckOut: "wrong pack" });
    const found = weighingOf(
      withTests(weighing("2026-07-02", [410, 412]), weighing("2026-07-01", [300]), struck),
      id,
    );
    expect(found).toMatchObject({ test: "w0", date: "2026-07-02", mass: expect.closeTo(0.411, 12) });
    // s = √2 g, over √2
    expect(found?.uncertainty).toBeCloseToRelative(1e-3, 1e-9);
  });

  it("is none for another build, or where every reading is set aside", () => {
    const aside = weighing("2026-07-02", [410]);
    const rows = [{ ...aside.rows[0], setAside: "draught" }];
    expect(weighingOf(withTests({ ...aside, rows }), id)).toBeNull();
    expect(weighingOf(withTests(aside), "another")).toBeNull();
  });
});

describe("a weigh-in far from what the build says", () => {
  it("is asked about before it is saved", () => {
    const mass = 1000 * (data.vehicle.mass ?? 0);
    expect(slipsOfTest(book, weighing("2026-07-01", [mass * 1.2]))).toEqual([]);
    expect(slipsOfTest(book, weighing("2026-07-01", [mass / 10]))).toMatchObject([
      { path: "rows.0.reading" },
    ]);
  });
});
