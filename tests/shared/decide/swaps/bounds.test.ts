import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { boundsFrom, type Option } from "#shared/decide/swaps/bounds.ts";

const amount = fc.integer({ min: 0, max: 20 });
const anyLine = fc.array(fc.record({ cost: amount, mass: amount, alternative: fc.constant(null) }), {
  minLength: 1,
  maxLength: 4,
});

const everySum = (lines: readonly (readonly Option[])[]) =>
  lines.reduce(
    (sums, options) =>
      sums.flatMap((sum) =>
        options.map(({ cost, mass }) => ({ cost: sum.cost + cost, mass: sum.mass + mass })),
      ),
    [{ cost: 0, mass: 0 }],
  );

describe("boundsFrom", () => {
  it("never exceeds what whole options come to, from any line on, for any small list", () => {
    fc.assert(
      fc.property(fc.array(anyLine, { maxLength: 4 }), amount, (lines, limit) => {
        const bounds = boundsFrom(lines);
        expect(bounds).toHaveLength(lines.length + 1);
        bounds.forEach(({ leastCost, leastMass }, from) => {
          const sums = everySum(lines.slice(from));
          const costs = sums.filter(({ mass }) => mass <= limit).map(({ cost }) => cost);
          const masses = sums.filter(({ cost }) => cost <= limit).map(({ mass }) => mass);
          expect(leastCost(limit)).toBeLessThanOrEqual(Math.min(...costs));
          expect(leastMass(limit)).toBeLessThanOrEqual(Math.min(...masses));
        });
      }),
      { numRuns: 300 },
    );
  });

  it("is what the hull gives, by hand: 7 g saved by a whole step of 4 g for 2 and half of one of 6 g for 6", () => {
    const option = (cost: number, mass: number) => ({ cost, mass, alternative: null });
    const [{ leastCost, leastMass }] = boundsFrom([
      [option(0, 10), option(2, 6), option(9, 6)],
      [option(0, 10), option(6, 4), option(5, 9)],
    ]);
    expect(leastCost(13)).toBe(5);
    expect(leastMass(5)).toBe(13);
    expect(leastCost(9)).toBe(Number.POSITIVE_INFINITY);
    expect(leastMass(-1)).toBe(Number.POSITIVE_INFINITY);
    expect([leastCost(20), leastMass(100)]).toEqual([0, 10]);
  });
});
