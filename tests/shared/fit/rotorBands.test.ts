import { describe, expect, it } from "vitest";
import { rotorBands } from "#shared/fit/rotorBands.ts";
import { fitRotor } from "#shared/fit/rotorFit.ts";
import { readingAt } from "#tests/support/rotorReadings.ts";

const PHIS = [0, 0.02, 0.05, 0.08, 0.11, 0.14, 0.17, 0.2];
const PSIS = [1.02, 1.01, 0.985, 0.9, 0.81, 0.66, 0.48, 0.27];
const fit = fitRotor({ diameter: 0.05, points: PHIS.map((phi, i) => readingAt({ phi, psi: PSIS[i] })) });

/** Student's t, 97.5 % at 5 degrees of freedom, as tabulated (NIST/SEMATECH e-Handbook, 1.3.6.7.2: 2.571). */
const T_TABLE = 2.571;

describe("rotorBands, on a fit with five degrees of freedom", () => {
  // standard errors at φ = 0.1 computed once with numpy from the hat matrix
  it("are tabulated t times the standard errors of mean and prediction", () => {
    const bands = rotorBands(fit, 0.1);
    if (!bands) throw new Error("no bands");
    expect((bands.mean.high - bands.mean.low) / 2).toBeCloseToRelative(T_TABLE * 0.0034574666759743006, 3e-4);
    expect((bands.prediction.high - bands.prediction.low) / 2).toBeCloseToRelative(
      T_TABLE * 0.007165739630140056,
      3e-4,
    );
    expect(bands.extrapolated).toBe(false);
  });

  it("widen beyond the readings and say so", () => {
    const inside = rotorBands(fit, 0.1);
    const outside = rotorBands(fit, 0.3);
    expect(outside?.extrapolated).toBe(true);
    const width = (band: typeof inside) => (band ? band.mean.high - band.mean.low : 0);
    expect(width(outside)).toBeGreaterThan(3 * width(inside));
  });

  it("are null where the points leave no residual", () => {
    const points = [readingAt({ phi: 0, psi: 0.8 }), readingAt({ phi: 0.2, psi: 0 })];
    expect(rotorBands(fitRotor({ diameter: 0.05, points }), 0.1)).toBeNull();
  });
});
