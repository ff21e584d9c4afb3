import { describe, expect, it } from "vitest";
import { type Book, findById } from "#shared/book/book.ts";
import { buildUncertainty } from "#shared/book/buildUncertainty.ts";
import { rigWeight } from "#shared/book/readings/pull.ts";
import { resolveAsSet } from "#shared/book/resolve/resolveWith.ts";
import { resolveBuild } from "#shared/book/resolve.ts";
import { calibrationNotes } from "#shared/book/verdictCase.ts";
import { uncertaintyOf } from "#shared/decide/uncertainty.ts";
import type { Build } from "#shared/model/build.ts";
import { predict } from "#shared/physics/predict.ts";
import { type TypedQuantity, toSI } from "#shared/units/quantity.ts";
import { demoBook } from "#tests/support/demoBook.ts";

/** The ridge runner has a leak test at its set gap, and five pulls. */
const demo = demoBook();
const ridge = findById(demo.builds, "ridge-runner")?.data as Build;

/** The demo, every force of its pulls with that skirt changed by a factor. */
function withPulls(factor: number | ((row: number) => number)): Book {
  const by = typeof factor === "number" ? () => factor : factor;
  const tests = demo.tests.map((test) => {
    const { data } = test;
    if (data.kind !== "pull" || data.skirt !== ridge.skirt) return test;
    const rig = rigWeight({ ...data, instruments: {} });
    const scaled = (load: TypedQuantity, row: number) => ({
      value: by(row) * (toSI(load, "load") + rig) - rig,
      unit: "N",
    });
    const rows = data.rows.map((row, i) => ({
      ...row,
      held: scaled(row.held, i),
      letGo: row.letGo && scaled(row.letGo, i),
    }));
    return { ...test, data: { ...data, rows } };
  });
  return { ...demo, tests };
}

function judged(book: Book) {
  const resolved = resolveBuild(book, ridge);
  const { input, calibration } = resolved;
  if (!input || !calibration?.answer) throw new Error("no numbers");
  const { sources: _said, ...uncertain } = buildUncertainty(book, ridge, resolved);
  const { suction } = uncertaintyOf(input, { ...uncertain, samples: 1024, angles: [90] });
  return { resolved, answer: calibration.answer, pull: predict(input, []).suction, suction };
}

const suctionAsSet = (book: Book): number => {
  const { input } = resolveAsSet(book, ridge);
  if (!input) throw new Error("no numbers");
  return predict(input, []).suction;
};

describe("pulls of a skirt whose leak was measured, 12 % below what is predicted without them", () => {
  const book = withPulls(2015 / 2286);
  const { resolved, answer, pull, suction } = judged(book);
  const asSet = suctionAsSet(book);

  it("move the prediction to what they say, which was elsewhere before", () => {
    const told = answer.residuals.map(({ before, held, letGo }) => (held + (letGo ?? held)) / 2 / before);
    const ratio = told.reduce((sum, each) => sum + each, 0) / told.length;
    expect(ratio).toBeLessThan(0.92);
    expect(pull / asSet).toBeCloseToRelative(ratio, 0.02);
    expect(resolved.pullFactor).toMatchObject({ basis: "calibrated" });
    expect(resolved.tests).toEqual(expect.arrayContaining([...resolved.pullFactor.testIds]));
  });

  it("lie within the band of the prediction, which the prediction without them lies outside of", () => {
    expect(suction.p5).toBeLessThan(pull);
    expect(suction.p95).toBeGreaterThan(pull);
    expect(suction.p95).toBeLessThan(asSet);
    for (const { inside, deviation } of answer.residuals)
      expect(inside || Math.abs(deviation) < 2.6).toBe(true);
  });

  it("contradict nothing: one build explains them", () => {
    expect(calibrationNotes(resolved, "conflict")).toEqual([]);
  });

  it("leave the leak alone: it is the leak test's", () => {
    expect(resolved.leak).toEqual(resolveAsSet(book, ridge).leak);
  });
});

describe("pulls that no single build explains", () => {
  it("with one of them half as strong again: contradicted", () => {
    const { resolved } = judged(withPulls((row) => (row === 2 ? 1.5 : 1)));
    expect(calibrationNotes(resolved, "conflict")).toHaveLength(1);
  });
});

describe("a skirt without pulls", () => {
  const bare: Book = { ...demo, tests: demo.tests.filter(({ data }) => data.kind !== "pull") };

  it("pulls as the model says, within a tenth", () => {
    const resolved = resolveBuild(bare, ridge);
    expect(resolved.pullFactor).toEqual({ basis: "assumed", value: 1, uncertainty: 0.1, testIds: [] });
    expect(resolved.input?.vehicle.pullFactor).toBe(1);
    const { logNormal, sources } = buildUncertainty(bare, ridge, resolved);
    expect(logNormal["vehicle.pullFactor"]).toBe(0.1);
    expect(sources["vehicle.pullFactor"]).toMatchObject({ from: "default", test: "pull" });
  });
});
