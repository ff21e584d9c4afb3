import { describe, expect, it } from "vitest";
import { reach } from "#shared/decide/ways/reach.ts";

const line = (now: number, low: number, high: number, whole = false) => ({
  now,
  limits: [low, high] as const,
  whole,
});

describe("reach, a margin that rises with the handle", () => {
  const square = (x: number) => x * x;

  it("below the target: at least its root, from there to the end", () => {
    const found = reach(square, line(1, 0, 3), 2);
    expect(found).toMatchObject({
      state: "does",
      bound: "at-least",
      to: null,
      best: { value: 3, margin: 9 },
    });
    expect(found.value).toBeCloseToRelative(Math.SQRT2, 1e-11);
    expect(found.from).toBe(found.value);
    expect(square(found.value ?? 0)).toBeGreaterThanOrEqual(2);
  });

  it("above the target: it may go down to the root, which still meets the target", () => {
    const found = reach(square, line(2, 0, 3), 2);
    expect(found).toMatchObject({ state: "already", bound: "at-least", to: null });
    expect(found.value).toBeCloseToRelative(Math.SQRT2, 1e-11);
    expect(square(found.value ?? 0)).toBeGreaterThanOrEqual(2);
  });

  it("that never gets there: the best is at the end", () => {
    const found = reach(square, line(1, 0, 1.2), 2);
    expect(found).toMatchObject({ state: "never", value: null, bound: null, from: null, to: null });
    expect(found.best).toEqual({ value: 1.2, margin: 1.44 });
  });
});

describe("reach, a margin that falls with the handle", () => {
  const inverse = (x: number) => 1 / x;

  it("below the target: at most the root", () => {
    const found = reach(inverse, line(2, 0.1, 10), 2);
    expect(found).toMatchObject({ state: "does", bound: "at-most", from: null, value: 0.5 });
  });

  it("above the target: it may go up to the root", () => {
    const found = reach(inverse, line(0.2, 0.1, 10), 2);
    expect(found).toMatchObject({ state: "already", bound: "at-most", from: null, value: 0.5, to: 0.5 });
  });

  it("infinite at the end, where no pull is needed: the best has no margin", () => {
    expect(reach(inverse, line(2, 0, 10), 2).best).toEqual({ value: 0, margin: null });
  });
});

describe("reach, a margin with a peak", () => {
  const peak = (x: number) => 2 - (x - 3) ** 2;

  it("seen from below: at least its near side, and the stretch ends on the far one", () => {
    const found = reach(peak, line(1, 0, 10), 1);
    expect(found).toMatchObject({ state: "does", bound: "at-least" });
    expect(found.value).toBeCloseToRelative(2, 1e-11);
    expect(found.to).toBeCloseToRelative(4, 1e-11);
  });

  it("seen from above: at most its far side", () => {
    const found = reach(peak, line(9, 0, 10), 1);
    expect(found).toMatchObject({ state: "does", bound: "at-most" });
    expect(found.value).toBeCloseToRelative(4, 1e-11);
  });

  it("so narrow that it lies between two values of the scan: it is found all the same", () => {
    const found = reach(peak, line(1, 0, 10), 2 - 1e-8);
    expect(found.state).toBe("does");
    expect(found.value).toBeCloseToRelative(3 - 1e-4, 1e-9);
    expect(found.to).toBeCloseToRelative(3 + 1e-4, 1e-9);
  });

  it("that stays under the target: never, and the best is the peak itself", () => {
    const { state, best } = reach(peak, line(1, 0, 10), 2.1);
    expect(state).toBe("never");
    expect(best.value).toBeCloseToRelative(3, 1e-6);
    expect(best.margin).toBeCloseToRelative(2, 1e-12);
  });

  it("within it: the nearer side bounds it, both are named", () => {
    const found = reach(peak, line(3.6, 0, 10), 1);
    expect(found).toMatchObject({ state: "already", bound: "at-most" });
    expect(found.from).toBeCloseToRelative(2, 1e-11);
    expect(found.to).toBeCloseToRelative(4, 1e-11);
  });

  it("upside down, its dip between two values of the scan: what lies beyond the dip is not promised", () => {
    const dip = (x: number) => 1 + (x - 3) ** 2;
    const found = reach(dip, line(1, 0, 10), 1 + 1e-8);
    expect(found).toMatchObject({ state: "already", bound: "at-most", from: null });
    expect(found.value).toBeCloseToRelative(3 - 1e-4, 1e-9);
  });
});

describe("reach, whole numbers", () => {
  it("below the target: the first whole number that meets it", () => {
    expect(reach((x) => x / 2, line(1, 1, 12, true), 1.6)).toEqual({
      state: "does",
      value: 4,
      bound: "at-least",
      from: 4,
      to: null,
      best: { value: 12, margin: 6 },
    });
  });

  it("above the target: the last one that meets it", () => {
    expect(reach((x) => x / 2, line(6, 1, 12, true), 1.6)).toMatchObject({ state: "already", value: 4 });
  });
});

describe("reach, where a value has no answer", () => {
  it("counts it as one that does not hold, and stops at the edge", () => {
    const found = reach((x) => (x > 2 ? Number.NaN : x), line(1, 0, 3), 1.5);
    expect(found.value).toBeCloseToRelative(1.5, 1e-11);
    expect(found.to).toBeCloseToRelative(2, 1e-11);
    expect(found.to).toBeLessThanOrEqual(2);
  });

  it("across a jump: the value on the side that meets the target", () => {
    const found = reach((x) => (x < 2 ? 1 : 3), line(1, 0, 4), 2);
    expect(found.value).toBeGreaterThanOrEqual(2);
    expect(found.value).toBeCloseToRelative(2, 1e-11);
  });

  it("without any influence: already as far as it goes, or never", () => {
    expect(reach(() => 3, line(1, 0, 4), 2)).toMatchObject({ state: "already", value: null, bound: null });
    expect(reach(() => 1, line(1, 0, 4), 2)).toMatchObject({ state: "never", best: { value: 1, margin: 1 } });
  });

  it("standing at the end of its range: looks to the other side alone", () => {
    expect(reach((x) => 2 - x, line(1, 0, 1), 1.5)).toMatchObject({ state: "does", value: 0.5 });
  });
});
