import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { firstPositiveZero } from "#shared/numeric/polynomial.ts";
import { isBeforeEnd } from "#shared/physics/point/machineCase.ts";
import { WARM } from "#shared/physics/point/newtonWarm.ts";

const caseOf = (psi: readonly number[]) => {
  const c = new Float64Array(WARM.length);
  c.set(psi, WARM.psi);
  return c;
};

describe("whether a place lies before the end of a curve", () => {
  it("of random curves: as the first positive zero says", () => {
    const coefficient = fc.integer({ min: -500, max: 500 }).map((hundredths) => hundredths / 100);
    fc.assert(
      fc.property(
        fc.array(coefficient, { minLength: 1, maxLength: 5 }),
        fc.double({ min: 1e-3, max: 2, noNaN: true }),
        (psi, phi) => {
          if (psi.every((each) => each === 0)) return;
          const end = firstPositiveZero(psi) ?? Number.POSITIVE_INFINITY;
          if (Math.abs(phi / end - 1) < 1e-9) return;
          expect(isBeforeEnd(caseOf(psi), phi)).toBe(phi < end);
        },
      ),
      { numRuns: 2000 },
    );
  });

  // 1 − 2x + x² touches 0 at 1 and rises again.
  it("behind a zero that ψ only touches: no", () => {
    expect(isBeforeEnd(caseOf([1, -2, 1]), 0.99)).toBe(true);
    expect(isBeforeEnd(caseOf([1, -2, 1]), 1.5)).toBe(false);
  });
});
