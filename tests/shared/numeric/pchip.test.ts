import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { NotEnoughDataError, OutOfRangeError } from "#shared/numeric/errors.ts";
import { createPchip } from "#shared/numeric/pchip.ts";

/** Measured values: none so small that its rounding is no longer a share of it. */
const finite = fc.double({ min: -100, max: 100, noNaN: true }).map((y) => (Math.abs(y) < 1e-100 ? 0 : y));
const width = fc.double({ min: 0.01, max: 10, noNaN: true });
/** Points with increasing x. */
const points = fc.array(fc.tuple(width, finite), { minLength: 2, maxLength: 9 }).map((steps) => {
  let x = 0;
  return steps.map(([step, y]) => {
    x += step;
    return [x, y] as const;
  });
});
const split = (list: readonly (readonly [number, number])[]): [number[], number[]] => [
  list.map(([x]) => x),
  list.map(([, y]) => y),
];
const places = (lo: number, hi: number, count: number): number[] =>
  Array.from({ length: count + 1 }, (_, i) => (i === count ? hi : lo + ((hi - lo) * i) / count));

describe("createPchip, against values worked by hand", () => {
  // Fritsch & Butland on (0, 0), (1, 1), (3, 2): h 1 and 2, secants 1 and 1/2, w₁ = 5, w₂ = 4,
  // so the inner slope is 9/(5/1 + 4/0.5) = 9/13; three-point ends 7/6 and 1/6.
  const curve = createPchip([0, 1, 3], [0, 1, 2]);

  it("has the weighted harmonic mean as inner slope and three-point slopes at the ends", () => {
    expect(curve.slope(1)).toBeCloseToRelative(9 / 13, 1e-15);
    expect(curve.slope(0)).toBeCloseToRelative(7 / 6, 1e-15);
    expect(curve.slope(3)).toBeCloseToRelative(1 / 6, 1e-15);
  });

  it("is the cubic of those end slopes between two points", () => {
    // Hermite at the middle: (y₀ + y₁)/2 + h(d₀ − d₁)/8.
    expect(curve.value(0.5)).toBeCloseToRelative(1 / 2 + (7 / 6 - 9 / 13) / 8, 1e-15);
    expect(curve.value(2)).toBeCloseToRelative(3 / 2 + (2 * (9 / 13 - 1 / 6)) / 8, 1e-15);
    // and its slope there: 3/2·secant − (d₀ + d₁)/4.
    expect(curve.slope(0.5)).toBeCloseToRelative(3 / 2 - (7 / 6 + 9 / 13) / 4, 1e-14);
  });

  it("is flat where the points turn, so that no value passes the top one", () => {
    const hump = createPchip([0, 1, 2], [0, 1, 0]);
    expect(hump.slope(1)).toBe(0);
    expect(Math.max(...places(0, 2, 200).map((x) => hump.value(x)))).toBe(1);
  });

  it("holds an end slope that would run against its first secant at 0, and a steep one at three times it", () => {
    // ends: ((2·1 + 1)·1 − 1·9)/2 = −3 against secant 1; ((2 + 1)·1 + 9)/2 = 6 over 3·1 where the shape turns
    expect(createPchip([0, 1, 2], [0, 1, 10]).slope(0)).toBe(0);
    expect(createPchip([0, 1, 2], [0, 1, -8]).slope(0)).toBe(3);
    expect(createPchip([0, 1, 2], [10, 1, 0]).slope(2)).toBe(0);
  });
});

describe("createPchip, on any points", () => {
  it("goes through them exactly, and reports its range", () => {
    fc.assert(
      fc.property(points, (list) => {
        const [xs, ys] = split(list);
        const curve = createPchip(xs, ys);
        xs.forEach((x, i) => {
          expect(curve.value(x)).toBe((ys[i] ?? Number.NaN) + 0);
        });
        expect(curve.clampedTo).toEqual([xs[0], xs[xs.length - 1]]);
      }),
    );
  });

  it("stays between neighbouring points and rises only where they rise", () => {
    fc.assert(
      fc.property(points, (list) => {
        const [xs, ys] = split(list);
        const curve = createPchip(xs, ys);
        for (let i = 0; i + 1 < xs.length; i += 1) {
          const [from, to] = [ys[i] ?? Number.NaN, ys[i + 1] ?? Number.NaN];
          const rounding = 1e-13 * (Math.abs(from) + Math.abs(to));
          const direction = Math.sign(to - from);
          const values = places(xs[i] ?? 0, xs[i + 1] ?? 0, 20).map((x) => curve.value(x));
          values.slice(1).forEach((value, j) => {
            expect(direction * (value - (values[j] ?? Number.NaN))).toBeGreaterThanOrEqual(-rounding);
          });
        }
      }),
    );
  });

  it("has the slope of its own values", () => {
    fc.assert(
      fc.property(points, fc.double({ min: 0.05, max: 0.95, noNaN: true }), (list, share) => {
        const [xs, ys] = split(list);
        const curve = createPchip(xs, ys);
        const [x0, x1] = [xs[0] ?? 0, xs[1] ?? 0];
        const [x, step] = [x0 + share * (x1 - x0), 1e-4 * (x1 - x0)];
        const difference = (curve.value(x + step) - curve.value(x - step)) / (2 * step);
        const scale = (Math.abs(ys[0] ?? 0) + Math.abs(ys[1] ?? 0)) / (x1 - x0);
        // a cubic's central difference is off by y'''·step²/6, y''' being up to 36 times the secant over h²
        expect(Math.abs(difference - curve.slope(x))).toBeLessThanOrEqual(1e-6 * scale + 1e-12);
      }),
    );
  });

  it("mirrors with its points", () => {
    fc.assert(
      fc.property(points, fc.double({ min: 0, max: 1, noNaN: true }), (list, share) => {
        const [xs, ys] = split(list);
        const mirrored = createPchip(xs.map((x) => -x).reverse(), [...ys].reverse());
        const [lo, hi] = [xs[0] ?? 0, xs[xs.length - 1] ?? 0];
        const x = Math.min(hi, lo + share * (hi - lo));
        expect(Math.abs(mirrored.value(-x) - createPchip(xs, ys).value(x))).toBeLessThanOrEqual(1e-9);
      }),
    );
  });

  it("is the straight line through two points, and through any on a line", () => {
    expect(createPchip([1, 3], [2, 6]).value(1.7)).toBeCloseToRelative(3.4, 1e-15);
    expect(createPchip([1, 3], [2, 6]).slope(2)).toBe(2);
    expect(createPchip([0, 1, 4, 5], [1, 3, 9, 11]).value(2.6)).toBeCloseToRelative(6.2, 1e-15);
  });
});

describe("createPchip, refusals", () => {
  const curve = createPchip([0, 1], [5, 6]);

  it.each([-1e-12, 1.000001, Number.NaN, Number.POSITIVE_INFINITY])(
    "gives no value at %s, outside its points",
    (x) => {
      expect(() => curve.value(x)).toThrow(OutOfRangeError);
      expect(() => curve.slope(x)).toThrow(OutOfRangeError);
      expect(() => curve.value(x)).toThrow(/allowed: 0 to 1/);
    },
  );

  it("asks for a point at each end when there are fewer than two", () => {
    expect(() => createPchip([1], [1])).toThrow(NotEnoughDataError);
    expect(() => createPchip([], [])).toThrow(/Give a point at each end/);
  });

  it.each([
    ["equal xs", [0, 1, 1], [0, 1, 2], "xs[2]"],
    ["falling xs", [0, 1, 0.5], [0, 1, 2], "xs[2]"],
    ["an x that is no number", [0, Number.NaN, 2], [0, 1, 2], "xs[1]"],
    ["a y that is not finite", [0, 1, 2], [0, Number.POSITIVE_INFINITY, 2], "ys[1]"],
    ["lists of unlike length", [0, 1, 2], [0, 1], "number of ys"],
  ])("refuses %s and names the place", (_, xs, ys, quantity) => {
    expect(() => createPchip(xs, ys)).toThrow(expect.objectContaining({ code: "out-of-range", quantity }));
  });
});
