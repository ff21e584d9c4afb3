import { describe, expect, it } from "vitest";
import {
  type CalibrationPage,
  calibrationPage,
  isCompared,
  pairsWith,
} from "#client/views/curves/calibration/calibrationData.ts";
import { calibratedLeakPlot, calibratedPullPlot } from "#client/views/curves/calibration/calibrationPlots.ts";
import {
  calibrationSentence,
  factorSentence,
  intervalText,
  isReached,
  leakOffText,
  missingOf,
  offText,
  reachedText,
} from "#client/views/curves/calibration/calibrationSentence.ts";
import { leakTable, pullTable } from "#client/views/curves/calibration/calibrationTables.ts";
import type { Book } from "#shared/book/book.ts";
import { calibrationOf } from "#shared/book/calibration.ts";
import { demoBook } from "#tests/support/demoBook.ts";

/** The demo is invented: these are checks of its own consistency, no validation of the method. */
const book = demoBook();

function pageOf(skirt: string, changedBook: Book = book): CalibrationPage {
  const [pair] = pairsWith(changedBook, "skirt", skirt);
  const page = pair && calibrationPage(changedBook, pair);
  if (!page) throw new Error(`no calibration of ${skirt}`);
  return page;
}

const gapAs = (skirt: string, gap: number): Book => ({
  ...book,
  skirts: book.skirts.map((each) => (each.id === skirt ? { ...each, data: { ...each.data, gap } } : each)),
});

const plain = (text: string) => text.replaceAll("\u202f", " ");

describe("the calibrations on a part's page", () => {
  it("of a skirt: the surface that it was pulled off, the build that stands on it, the calibration that Match uses", () => {
    const [pair, ...others] = pairsWith(book, "skirt", "square-lip");
    expect(others).toEqual([]);
    expect(pair.surface.id).toBe("side-pane");
    const build = book.builds.find(({ id }) => id === "pane-crawler");
    expect(pair.builds).toEqual([build?.data.name]);
    expect(build && calibrationOf(book, build.data)).toBe(pair.calibration);
  });

  it("of a skirt pulled off two surfaces: both, to choose between, the one that a build stands on first", () => {
    const tests = book.tests.map((test) =>
      test.id === "demo-13-pull" && test.data.kind === "pull"
        ? { ...test, data: { ...test.data, surface: "ridge-board" } }
        : test,
    );
    const pairs = pairsWith({ ...book, tests }, "skirt", "square-lip");
    expect(pairs.map(({ surface }) => surface.id)).toEqual(["side-pane", "ridge-board"]);
  });

  it("of a surface that nothing was pulled off: none", () => {
    const tests = book.tests.filter(({ data }) => data.kind !== "pull");
    expect(pairsWith({ ...book, tests }, "surface", "side-pane")).toEqual([]);
    expect(isCompared({ ...book, tests }, "surface", "side-pane")).toBe(false);
    expect(isCompared(book, "surface", "side-pane")).toBe(true);
  });
});

describe("the sentence of a calibration", () => {
  it("where the gap agrees with the one set: says so", () => {
    expect(plain(calibrationSentence(pageOf("square-lip")))).toMatch(
      /^Seven pulls put the gap at 0\.61\d? ± 0\.\d+ mm, in agreement with the 0\.60 mm set\.$/,
    );
  });

  it("where it does not: not the one set; a leak test is named", () => {
    const page = pageOf("wide-land", gapAs("wide-land", 0.00055));
    expect(plain(calibrationSentence(page))).toMatch(
      /^One leak test puts the gap at 0\.4\d+ ± 0\.0\d+ mm, not the 0\.55 mm set\.$/,
    );
  });

  it("of the pull factor: that of pulls beside the gap, or what the skirt pulls against its leak", () => {
    expect(plain(factorSentence(pageOf("square-lip")) ?? "")).toMatch(
      /^They put the pull factor at \d\.\d\d ± 0\.\d\d\.$/,
    );
    const page = pageOf("wide-land");
    expect(plain(factorSentence(page) ?? "")).toMatch(
      /^Five pulls put the pull factor at \d\.\d+ ± 0\.\d+: the skirt pulls as its leak lets expect\.$/,
    );
    const pullFactor = { ...page.answer.gap, mean: 0.88, sd: 0.02, given: 0.88 };
    expect(plain(factorSentence({ ...page, answer: { ...page.answer, pullFactor } }) ?? "")).toMatch(
      /0\.88 ± 0\.02: the skirt pulls less than its leak lets expect\.$/,
    );
  });

  it("where the tests contradict the model: says that, and claims no agreement", () => {
    const page = pageOf("square-lip");
    const warnings = [{ code: "conflict", message: "" }];
    expect(plain(calibrationSentence({ ...page, answer: { ...page.answer, warnings } }))).toMatch(
      /^Seven pulls put the gap at .* mm, but contradict each other or the model\.$/,
    );
  });
});

describe("what stands in the section", () => {
  it("of each pull: predictions with the gap calibrated and as set, in plot and table alike", () => {
    const page = pageOf("square-lip", gapAs("square-lip", 0.0008));
    const { brackets, bands } = calibratedPullPlot(page);
    expect(brackets).toHaveLength(14);
    expect(bands).toHaveLength(1);
    for (const [i, pull] of page.pulls.entries()) {
      expect(pull.predicted).toBeGreaterThan(1.05 * pull.before);
      const row = pullTable(page).rows[i];
      const solid = brackets?.find(({ key }) => key === pull.key);
      const dashed = brackets?.find(({ key }) => key === `${pull.key}-set`);
      expect([row[2], row[3]]).toEqual([solid?.at, dashed?.at]);
      expect([row[4], row[5]]).toEqual([solid?.lo, solid?.hi]);
    }
  });

  it("of each leak reading: measured against predicted, on one diagonal", () => {
    const page = pageOf("wide-land", gapAs("wide-land", 0.00055));
    const { marks, x, y } = calibratedLeakPlot(page);
    expect(marks).toHaveLength(14);
    expect([x.from, x.to]).toEqual([y.from, y.to]);
    expect(leakTable(page).rows).toHaveLength(7);
    const off = (predicted: "predicted" | "before") =>
      Math.max(...page.leaks.map((leak) => Math.abs(leak.measured / leak[predicted] - 1)));
    expect(off("predicted")).toBeLessThan(off("before"));
  });

  it("how many brackets are reached: more with the gap calibrated than with one that was set wrong", () => {
    const text = reachedText(pageOf("square-lip", gapAs("square-lip", 0.0008)));
    const [, now, before] = /^(\d) of 7 brackets, (\d) before/.exec(text) ?? [];
    expect(Number(now)).toBeGreaterThan(Number(before));
  });

  it("what each test contributed: without it the gap is less certain", () => {
    const { contributions, answer } = pageOf("felt-ring");
    for (const { without } of contributions) expect(without?.sd).toBeGreaterThan(answer.gap.sd);
  });

  it("where a leak test stands in the gap's place: without a pull test the pull factor is less certain, without the leak test the gap", () => {
    const { contributions, answer } = pageOf("wide-land");
    expect(contributions.map(({ readings }) => readings)).toEqual([3, 2, 7]);
    const [first, second, leak] = contributions;
    for (const { factor } of [first, second])
      expect(factor?.sd).toBeGreaterThan(answer.pullFactor?.sd ?? Number.NaN);
    expect(leak.without?.sd).toBeGreaterThan(5 * answer.gap.sd);
  });

  it("what is missing: pulls along, a leak test; nothing of either where both are there", () => {
    expect(missingOf(pageOf("square-lip")).join(" ")).toMatch(
      /Pull along the surface.*leak test of Square lip/,
    );
    expect(missingOf(pageOf("wide-land")).join(" ")).not.toMatch(/leak test of/);
    expect(missingOf(pageOf("felt-ring")).join(" ")).not.toMatch(/Pull along/);
  });
});

describe("a pull outside", () => {
  it.each([
    [9.5, 10.5, true],
    [10.9, 12, true],
    [11.1, 12, false],
    [8, 9.1, true],
    [8, 8.9, false],
    [8, null, true],
  ])(
    "with a bracket from %f to %o N, 10 N predicted and one in twenty of scatter: reached %o",
    (held, letGo, reached) => {
      const [reading] = pageOf("square-lip").pulls;
      expect(isReached({ ...reading, held, letGo }, 10, 0.05)).toBe(reached);
    },
  );
});

describe("words of a reading", () => {
  const pull = {
    pull: 0,
    testId: "t",
    row: 0,
    key: "t#0",
    predicted: 10,
    before: 9,
    held: 9,
    letGo: 11,
    inside: true,
    deviation: 0,
  };

  it.each([
    [{}, "inside"],
    [{ held: 10.5, inside: false }, "held 5.0 % more than predicted"],
    [{ letGo: 9.8, inside: false }, "let go 2.0 % below the prediction"],
  ])("with %o: %s", (change, text) => {
    expect(plain(offText({ ...pull, ...change }))).toBe(text);
  });

  it("of a leak reading: more or less than predicted", () => {
    const leak = { testId: "t", row: 0, key: "t#0", predicted: 0.002, before: 0.003, deviation: 1 };
    expect(plain(leakOffText({ ...leak, measured: 0.0021 }))).toBe("5.0 % more");
    expect(plain(leakOffText({ ...leak, measured: 0.0019 }))).toBe("5.0 % less");
  });

  it.each([
    [[1, 2], "1 to 2"],
    [[0, 2], "at most 2"],
    [[1, null], "at least 1"],
  ] as const)("of an interval %o: %s", (interval, text) => {
    expect(intervalText({ mean: 1, sd: 1, best: 1, interval }, String)).toBe(text);
  });
});
