import { describe, expect, it } from "vitest";
import { fitThrottleOffset } from "#shared/fit/throttleOffset.ts";
import { NotEnoughDataError } from "#shared/numeric/errors.ts";
import { expectOutOfRange } from "#tests/support/outOfRange.ts";

const sweep = (offset: number, limit = Number.POSITIVE_INFINITY) =>
  Array.from({ length: 21 }, (_, i) => i / 20).map((command) => ({
    command,
    response: Math.min(limit, 20 * Math.max(0, command - offset)),
  }));

describe("fitThrottleOffset, on a sweep whose response is straight", () => {
  it.each([0.1, 0.16, 0.3])("finds the offset %s", (offset) => {
    const fit = fitThrottleOffset(sweep(offset));
    expect(fit.offset).toBeCloseToRelative(offset, 1e-9);
    expect(fit.saturated).toEqual([]);
    expect(fit.standardError).toBeLessThan(1e-9);
  });

  it("leaves a saturated plateau out", () => {
    const fit = fitThrottleOffset(sweep(0.16, 12));
    expect(fit.offset).toBeCloseToRelative(0.16, 1e-9);
    expect(fit.saturated.length).toBeGreaterThan(2);
  });

  it("says where the line begins below zero", () => {
    const fit = fitThrottleOffset(sweep(-0.05));
    expect(fit.offset).toBeCloseToRelative(-0.05, 1e-9);
    expect(fit.warnings.map((note) => note.code)).toEqual(["offset-below-zero"]);
  });
});

describe("fitThrottleOffset, on a sweep that can't answer", () => {
  it.each([
    ["no points", []],
    ["two commands", sweep(0.1).slice(18, 20)],
    ["no response at all", sweep(0.1).map((point) => ({ ...point, response: 0 }))],
    ["the same response throughout", sweep(0.1).map((point) => ({ ...point, response: 50 }))],
  ])("%s: refused, with what to measure", (_, points) => {
    expect(() => fitThrottleOffset(points)).toThrow(NotEnoughDataError);
  });
  it("a command in percent is refused by its path", () => {
    expectOutOfRange(() => fitThrottleOffset([{ command: 50, response: 1 }]), "points.0.command");
  });
});
