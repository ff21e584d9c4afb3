import { describe, expect, it } from "vitest";
import { SKIRTS, SURFACES } from "#seed-data/truth.ts";
import type { Book } from "#shared/book/book.ts";
import { calibrationOf } from "#shared/book/calibration.ts";
import type { Build } from "#shared/model/build.ts";
import { alike } from "#shared/numeric/alike.ts";
import { demoBook } from "#tests/support/demoBook.ts";
import { expectAllFinite } from "#tests/support/finite.ts";
import { withoutCell } from "#tests/support/partialBook.ts";

/** The demo is invented: these are checks of its own consistency, no validation of the method. */
const book = demoBook();

function buildOf(id: string): Build {
  const stored = book.builds.find((record) => record.id === id);
  if (!stored) throw new Error(`no build ${id}`);
  return stored.data;
}

function calibrated(id: string, changedBook: Book = book) {
  const found = calibrationOf(changedBook, buildOf(id));
  if (!found?.answer) throw new Error(found?.why ?? "no calibration");
  return { ...found, answer: found.answer };
}

describe("calibrationOf, on the demo's pull and leak tests", () => {
  it.each([
    ["pane-crawler", "square-lip"],
    ["roof-crawler", "felt-ring"],
    ["ridge-runner", "wide-land"],
  ] as const)(
    "of %s: the gap that the tests were made with lies within the interval, nothing contradicts",
    (id, skirt) => {
      const { answer, pulls, leftOut } = calibrated(id);
      const [lo, hi] = answer.gap.interval;
      expect(SKIRTS[skirt].gap).toBeGreaterThan(lo);
      expect(SKIRTS[skirt].gap).toBeLessThan(hi ?? Number.POSITIVE_INFINITY);
      expect(answer.residuals).toHaveLength(pulls.length);
      expect(leftOut).toEqual([]);
      expect(answer.warnings.map(({ code }) => code)).not.toContain("conflict");
      expectAllFinite(answer);
    },
  );

  it("of the roof crawler, dragged along as well: the friction of the tests lies within its interval", () => {
    const { friction } = calibrated("roof-crawler").answer;
    expect(friction?.interval[0]).toBeLessThan(SURFACES["roof-pane"].wheelFriction);
    expect(friction?.interval[1]).toBeGreaterThan(SURFACES["roof-pane"].wheelFriction);
  });

  it("of the ridge runner: its leak test at the set gap takes part and narrows the gap", () => {
    const { answer, testIds, leaks, prior } = calibrated("ridge-runner");
    expect(leaks).toHaveLength(7);
    expect(testIds).toContain("demo-18-leak");
    expect(answer.gap.sd).toBeLessThan(prior.gap.sd / 2);
  });

  it("of the pane crawler: its leak test on a shim of another height, and on another surface, stays out", () => {
    expect(calibrated("pane-crawler").testIds).toEqual(["demo-12-pull", "demo-13-pull"]);
  });

  it("asked twice of one state of the book: the same object, computed once", () => {
    expect(calibrationOf(book, buildOf("pane-crawler"))).toBe(calibrationOf(book, buildOf("pane-crawler")));
  });
});

describe("calibrationOf, on a changed book", () => {
  const withTests = (change: (test: Book["tests"][number]) => Book["tests"]): Book => ({
    ...book,
    tests: book.tests.flatMap(change),
  });

  it("without the cells' curve: the pulls whose voltage was read tell the same gap", () => {
    const { answer } = calibrated("pane-crawler", withoutCell(book));
    expect(answer.gap).toEqual(calibrated("pane-crawler").answer.gap);
  });

  it("that lists its tests the other way round: asked from the same numbers in the same order, its tests named in its own", () => {
    const turned = { ...book, tests: book.tests.toReversed() };
    for (const id of ["pane-crawler", "ridge-runner"]) {
      const [one, other] = [calibrated(id), calibrated(id, turned)];
      expect(alike(one.request, other.request, 1e-9)).toBe(true);
      expect(other.pulls).toEqual(one.pulls);
      expect(other.leaks).toEqual(one.leaks);
      expect(other.testIds).not.toEqual(one.testIds);
      expect(new Set(other.testIds)).toEqual(new Set(one.testIds));
    }
  });

  it("without pull tests: null", () => {
    const changedBook = withTests((test) => (test.data.kind === "pull" ? [] : [test]));
    expect(calibrationOf(changedBook, buildOf("pane-crawler"))).toBeNull();
  });

  it("with all pulls set aside but one: null", () => {
    let seen = 0;
    const changedBook = withTests((test) => {
      if (test.data.kind !== "pull" || test.data.skirt !== "square-lip") return [test];
      const rows = test.data.rows.map((row) => (seen++ === 0 ? row : { ...row, setAside: "slipped" }));
      return [{ ...test, data: { ...test.data, rows } }];
    });
    expect(calibrationOf(changedBook, buildOf("pane-crawler"))).toBeNull();
  });

  it("with pulls on a shim: they are no word on the set gap and stay out", () => {
    const changedBook = withTests((test) => {
      if (test.id !== "demo-12-pull" || test.data.kind !== "pull") return [test];
      const rows = test.data.rows.map((row) => ({ ...row, gap: { value: 1, unit: "mm" as const } }));
      return [{ ...test, data: { ...test.data, rows } }];
    });
    expect(calibrated("pane-crawler", changedBook).testIds).toEqual(["demo-13-pull"]);
  });

  it("with a pull whose rotor is not in the book: it is left out and named", () => {
    const changedBook = withTests((test) => {
      if (test.id !== "demo-12-pull" || test.data.kind !== "pull") return [test];
      return [{ ...test, data: { ...test.data, rotor: "lost" } }];
    });
    const { leftOut, testIds } = calibrated("pane-crawler", changedBook);
    expect(testIds).toEqual(["demo-13-pull"]);
    expect(leftOut.map(({ row }) => row)).toEqual([0, 1, 2, 3]);
  });

  it("with a pull at a voltage that does not turn the motor: no answer, and why", () => {
    const changedBook = withTests((test) => {
      if (test.id !== "demo-12-pull" || test.data.kind !== "pull") return [test];
      const rows = test.data.rows.map((row) => ({ ...row, voltage: { value: 1, unit: "mV" as const } }));
      return [{ ...test, data: { ...test.data, rows } }];
    });
    const found = calibrationOf(changedBook, buildOf("pane-crawler"));
    expect(found?.answer).toBeNull();
    expect(found?.why).toMatch(/pulls\.0\.held/);
  });
});
