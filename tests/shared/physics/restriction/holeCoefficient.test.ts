import fc from "fast-check";
import { describe, expect, it } from "vitest";
import {
  frictionlessCoefficient,
  holeDischargeCoefficient,
  isoReynoldsTerm,
  lichtarowiczCoefficient,
  roundedInletLoss,
  thinHoleCoefficient,
} from "#shared/physics/restriction/holeCoefficient.ts";
import { expectOutOfRange } from "#tests/support/outOfRange.ts";

const sharp = (thicknessRatio: number) => ({ thicknessRatio, edge: "sharp" as const });
const reynolds = fc.double({ min: 0.1, max: 1e6, noNaN: true });

describe("holeDischargeCoefficient, blend", () => {
  it.each([0.5, 1, 1.4, 2, 3])("across t/d = %s is continuous at any Reynolds number", (ratio) => {
    for (const re of [10, 300, 2000, 20_000, 5e5]) {
      const below = holeDischargeCoefficient(sharp(ratio * (1 - 1e-9)), re);
      const above = holeDischargeCoefficient(sharp(ratio * (1 + 1e-9)), re);
      expect(above).toBeCloseToRelative(below, 1e-7);
    }
  });

  it.each([0, 0.2, 0.5])("at t/d = %s is that of a thin hole", (ratio) => {
    const expected = thinHoleCoefficient(frictionlessCoefficient(sharp(ratio)), 5000);
    expect(holeDischargeCoefficient(sharp(ratio), 5000)).toBe(expected);
  });

  it.each([1, 1.7, 2, 8])("at t/d = %s is that of a long hole", (ratio) => {
    const expected = lichtarowiczCoefficient(frictionlessCoefficient(sharp(ratio)), ratio, 5000);
    expect(holeDischargeCoefficient(sharp(ratio), 5000)).toBe(expected);
  });

  it("half-way between is the mean of both", () => {
    const ultimate = frictionlessCoefficient(sharp(0.75));
    const mean = (thinHoleCoefficient(ultimate, 5000) + lichtarowiczCoefficient(ultimate, 0.75, 5000)) / 2;
    expect(holeDischargeCoefficient(sharp(0.75), 5000)).toBeCloseToRelative(mean, 1e-14);
  });

  it("stays between 0 and 1", () => {
    fc.assert(
      fc.property(fc.double({ min: 0, max: 10, noNaN: true }), reynolds, (ratio, re) => {
        const coefficient = holeDischargeCoefficient(sharp(ratio), re);
        expect(coefficient).toBeGreaterThan(0);
        expect(coefficient).toBeLessThan(1);
      }),
    );
  });
});

describe("thinHoleCoefficient", () => {
  it("above Re_d = 500 meets its own equation", () => {
    fc.assert(
      fc.property(fc.double({ min: 900, max: 1e6, noNaN: true }), (re) => {
        const coefficient = thinHoleCoefficient(0.6, re);
        expect(coefficient).toBeCloseToRelative(0.6 + isoReynoldsTerm(coefficient * re), 1e-13);
      }),
    );
  });

  it("below Re_d = 500 meets its own equation", () => {
    fc.assert(
      fc.property(fc.double({ min: 0.01, max: 600, noNaN: true }), (re) => {
        const coefficient = thinHoleCoefficient(0.6, re);
        const held = 0.6 + 0.000521 * (1e6 / 500) ** 0.7;
        const bore = coefficient * re;
        const loss = held ** -2 + ((12 * Math.PI) / bore) * (1 - bore / 500);
        expect(coefficient ** -2).toBeCloseToRelative(loss, 1e-12);
      }),
    );
  });

  it("across Re_d = 500 is continuous", () => {
    const edge = 500 / (0.6 + isoReynoldsTerm(500));
    const below = thinHoleCoefficient(0.6, edge * (1 - 1e-9));
    expect(thinHoleCoefficient(0.6, edge * (1 + 1e-9))).toBeCloseToRelative(below, 1e-8);
  });

  // Johansen, Proc. R. Soc. A 126 (1930) 231: thin orifices peak at about 0.7 near Re_d 200 and fall as √Re_d below 10 (from memory).
  it("has no value above 0.72, and falls as the square root below Re_d = 1", () => {
    fc.assert(
      fc.property(reynolds, (re) => {
        expect(thinHoleCoefficient(0.5961, re)).toBeLessThan(0.72);
      }),
    );
    const ratio = thinHoleCoefficient(0.6, 0.02) / thinHoleCoefficient(0.6, 0.01);
    expect(ratio).toBeCloseToRelative(2, 1e-3);
  });
});

describe("frictionlessCoefficient", () => {
  it("of a wall from three bores on falls along the long hole's line", () => {
    expect(frictionlessCoefficient(sharp(4))).toBeCloseToRelative(0.827 - 0.034, 1e-14);
    expect(frictionlessCoefficient(sharp(10))).toBeCloseToRelative(0.742, 1e-14);
  });

  // Borda: a thin wall's jet of contraction C_c = 1/(1 + √K) keeps its velocity; in Idelchik's edge 1.35 stands for 2√0.5 = 1.414.
  it("of a rounded inlet in a thin wall is its jet's contraction within 2 %", () => {
    for (const radiusRatio of [0.02, 0.05, 0.1]) {
      const coefficient = frictionlessCoefficient({ thicknessRatio: 0, edge: "rounded", radiusRatio });
      expect(coefficient).toBeCloseToRelative(1 / (1 + Math.sqrt(roundedInletLoss(radiusRatio))), 0.02);
    }
  });

  it("of an inlet of no radius is the sharp one, of a round one in a long wall nearly all", () => {
    const none = { thicknessRatio: 1, edge: "rounded" as const, radiusRatio: 0 };
    expect(frictionlessCoefficient(none)).toBeCloseToRelative(frictionlessCoefficient(sharp(1)), 1e-14);
    const round = { thicknessRatio: 3, edge: "rounded" as const, radiusRatio: 0.3 };
    expect(frictionlessCoefficient(round)).toBeCloseToRelative(1 / Math.sqrt(1.03), 1e-14);
  });

  it("refuses ratios below 0", () => {
    expectOutOfRange(() => frictionlessCoefficient(sharp(-0.1)), "hole.thickness/diameter");
    expectOutOfRange(() => frictionlessCoefficient(sharp(Number.NaN)), "hole.thickness/diameter");
    expectOutOfRange(() => roundedInletLoss(-0.1), "hole.radius/diameter");
  });
});
