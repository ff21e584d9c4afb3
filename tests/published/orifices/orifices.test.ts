import { describe, expect, it } from "vitest";
import { holeExpansibility, holeFlow } from "#shared/physics/restriction/hole.ts";
import {
  frictionlessCoefficient,
  isoReynoldsTerm,
  roundedInletLoss,
  thinHoleCoefficient,
} from "#shared/physics/restriction/holeCoefficient.ts";

describe("expansibility of a hole", () => {
  // ISO 5167-2:2003, 5.3.2.2: 0.9974739057343425 at β = 0.0222/0.0739, p₂/p₁ = 0.99, κ = 1.4. Found in the tests of a public fluid library.
  // The standard's terms in β, 0.256 β⁴ + 0.93 β⁸ (from memory), are divided out; what is left is its limit β → 0. Closed form.
  it("at p₂/p₁ = 0.99 is the standard's value without its terms in β", () => {
    const beta = 0.0222 / 0.0739;
    const withBeta = 0.351 + 0.256 * beta ** 4 + 0.93 * beta ** 8;
    const expected = 1 - ((1 - 0.9974739057343425) * 0.351) / withBeta;
    expect(holeExpansibility(1000, 100_000)).toBeCloseToRelative(expected, 1e-12);
  });
});

describe("flow of a hole with a given coefficient", () => {
  // ISO 5167-1, general equation: 0.01120390943807026 kg/s for D 0.0739, d 0.0222, C 0.5988, ε 0.9975, ρ 1.1646, Δp 1000 Pa. Found in the tests of a public fluid library.
  // That ε is rounded, and the pipe has its factor 1.0040970074165514 of approach (found there): both are put in place of ours. Closed form.
  it("at the standard's C and ε is the standard's mass flow", () => {
    const air = { density: 1.1646, viscosity: 1.8e-5, pressure: 100_000 };
    const holes = { diameter: 0.0222, thickness: 0.001, count: 1, dischargeCoefficient: 0.5988 };
    const { flow } = holeFlow(holes, air, 1000);
    const mass = (flow * 1.1646 * 1.0040970074165514 * 0.9975) / holeExpansibility(1000, 100_000);
    expect(mass).toBeCloseToRelative(0.01120390943807026, 1e-12);
  });
});

describe("coefficient of a thin hole in a large wall", () => {
  // Limit β → 0 of ISO 5167-2: C = 0.5961 + 0.000521 (10⁶/Re_d)^0.7. Derived (closed form).
  it.each([
    [1e4, 0.6091869283],
    [1e5, 0.5987111855],
    [1e6, 0.596621],
  ])("at Re %s has the standard's Reynolds term", (reynolds, expected) => {
    expect(0.5961 + isoReynoldsTerm(reynolds)).toBeCloseToRelative(expected, 1e-9);
    expect(thinHoleCoefficient(0.5961, reynolds / expected)).toBeCloseToRelative(expected, 1e-9);
  });

  // The same limit against Idelchik's edge of no thickness, 1/√2.85 = 0.592: the two authors are 0.7 % apart.
  it("at t/d = 0 lies within 1 % of the standard's limit", () => {
    expect(frictionlessCoefficient({ thicknessRatio: 0, edge: "sharp" })).toBeCloseToRelative(0.5961, 0.01);
  });
});

describe("loss of a rounded inlet", () => {
  // Idelchik, Handbook of Hydraulic Resistance (1966), rounded inlet flush with a wall. Found in a public fluid library. The table itself: exact.
  it.each([
    [0, 0.5],
    [0.01, 0.44],
    [0.02, 0.37],
    [0.03, 0.31],
    [0.04, 0.26],
    [0.05, 0.22],
    [0.06, 0.2],
    [0.08, 0.15],
    [0.12, 0.09],
    [0.16, 0.06],
    [0.2, 0.03],
  ])("at r/d = %s is the table's", (ratio, expected) => {
    expect(roundedInletLoss(ratio)).toBeCloseToRelative(expected, 1e-12);
  });

  // An exponential through the table, 0.03 + 0.47·10^(−7.7 r/d) (from memory), misses it by up to 0.0175 (found).
  it.each([0.015, 0.035, 0.07, 0.1, 0.14, 0.18])(
    "at r/d = %s, between its rows, follows the exponential",
    (ratio) => {
      expect(Math.abs(roundedInletLoss(ratio) - (0.03 + 0.47 * 10 ** (-7.7 * ratio)))).toBeLessThan(0.0175);
    },
  );
});

describe("coefficient of a thin hole with a rounded inlet", () => {
  // ISO/TR 15377 (1998/2007), quarter-circle orifice: C = 0.772 at β = 0.245, its smallest. Found. Its radius, r = 0.1 d, and plate, as thick, from memory.
  // Ours joins Idelchik's inlet and thick-edge tables; handbooks differ by a factor of two in the inlet's loss: 3 %.
  it("at r = t = 0.1 d lies within 3 % of the quarter-circle orifice", () => {
    const shape = { thicknessRatio: 0.1, edge: "rounded", radiusRatio: 0.1 } as const;
    expect(frictionlessCoefficient(shape)).toBeCloseToRelative(0.772, 0.03);
  });
});
