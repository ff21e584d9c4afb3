import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { type Dimension, stackOf } from "#shared/decide/fitUp/stack.ts";
import { expectOutOfRange } from "#tests/support/outOfRange.ts";

const space = (nominal: number, tolerance: number): Dimension => ({ nominal, tolerance, sense: 1 });
const part = (nominal: number, tolerance: number, quantity = 1): Dimension => ({
  nominal,
  tolerance,
  sense: -1,
  quantity,
});

describe("stackOf", () => {
  it("of a space and two parts, by hand: 1 mm clear, ±0.9 mm at worst, ±0.7 mm by root-sum-square", () => {
    // 20 − 11 − 8 = 1; 0.6 + 0.2 + 0.3 = 1.1; √(0.36 + 0.04 + 0.09) = 0.7 mm.
    const stack = stackOf([space(0.02, 6e-4), part(0.011, 2e-4), part(0.008, 3e-4)]);
    expect(stack.clearance).toBeCloseToRelative(1e-3, 1e-12);
    expect(stack.worstCase[0]).toBeCloseToRelative(-1e-4, 1e-9);
    expect(stack.worstCase[1]).toBeCloseToRelative(2.1e-3, 1e-12);
    expect(stack.rss[0]).toBeCloseToRelative(3e-4, 1e-9);
    expect(stack.rss[1]).toBeCloseToRelative(1.7e-3, 1e-12);
    // Φ(3·1/0.7) = Φ(4.285 714): 1 − 9.107 × 10⁻⁶.
    expect(1 - stack.chance).toBeCloseToRelative(9.107e-6, 1e-3);
    expect(stack.verdict).toBe("may-not-close");
    expect(stack.contributions.map(({ share }) => share)).toEqual([
      expect.closeTo(36 / 49, 12),
      expect.closeTo(4 / 49, 12),
      expect.closeTo(9 / 49, 12),
    ]);
  });

  it.each([
    ["closes", 0.0202, 1],
    ["closes, just", 0.0201, 1],
    ["may-not-close", 0.02009, 1],
    ["may-not-close", 0.01995, 1],
    ["will-not-close", 0.0198, 0],
  ])("says %s of a space of %s m over two parts of 10 mm", (verdict, nominal) => {
    const stack = stackOf([space(nominal, 5e-5), part(0.01, 2.5e-5, 2)]);
    expect(stack.verdict).toBe(verdict.split(",")[0]);
  });

  it("without tolerances closes at a clearance of 0, whatever the sums' rounding, and has no chance below", () => {
    const exact = [space(0.3, 0), part(0.1, 0), part(0.2, 0)];
    expect(stackOf(exact)).toMatchObject({ clearance: 0, worstCase: [0, 0], chance: 1, verdict: "closes" });
    expect(stackOf([space(0.2999, 0), ...exact.slice(1)])).toMatchObject({
      chance: 0,
      verdict: "will-not-close",
    });
  });

  it("counts pieces of one kind as that many parts, for any quantity", () => {
    const size = fc.double({ min: 1e-3, max: 0.05, noNaN: true });
    const quantity = fc.integer({ min: 1, max: 6 });
    fc.assert(
      fc.property(
        size,
        size,
        quantity,
        fc.double({ min: 0, max: 1, noNaN: true }),
        (whole, one, pieces, of) => {
          const tolerance = of * one;
          const counted = stackOf([space(whole, 0), part(one, tolerance, pieces)]);
          const listed = stackOf([
            space(whole, 0),
            ...Array.from({ length: pieces }, () => part(one, tolerance)),
          ]);
          expect(counted.clearance).toBeCloseTo(listed.clearance, 12);
          for (const end of [0, 1] as const) {
            expect(counted.worstCase[end]).toBeCloseTo(listed.worstCase[end], 12);
            expect(counted.rss[end]).toBeCloseTo(listed.rss[end], 12);
          }
          expect(counted.chance).toBeCloseTo(listed.chance, 9);
        },
      ),
    );
  });

  it.each([
    ["dimensions.0.nominal", [space(0, 0), part(1, 0)]],
    ["dimensions.1.nominal", [space(1, 0), part(-1, 0)]],
    ["dimensions.1.tolerance", [space(1, 0), part(1, -1)]],
    ["dimensions.1.tolerance", [space(1, 0), part(0.1, 0.2)]],
    ["dimensions.1.quantity", [space(1, 0), part(0.1, 0, 1.5)]],
    ["dimensions.1.quantity", [space(1, 0), part(0.1, 0, 0)]],
  ])("names %s, out of range", (path, dimensions) => {
    expectOutOfRange(() => stackOf(dimensions), path);
  });
});
