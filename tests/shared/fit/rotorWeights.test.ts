import { describe, expect, it } from "vitest";
import { rotorPoints } from "#shared/fit/rotorPoints.ts";
import { type ReadingUncertainty, rotorWeights } from "#shared/fit/rotorWeights.ts";
import { evaluatePolynomial } from "#shared/numeric/polynomial.ts";
import { readingAt } from "#tests/support/rotorReadings.ts";

const PSI = [0.9, 0.3, -14];
const DIAMETER = 0.05;
const at = (phi: number, off = 0) => readingAt({ phi, psi: evaluatePolynomial(PSI, phi) + off });
const SURE: ReadingUncertainty = { pressure: 0, speed: 0, flow: 0, flowFromPressure: false };

/** Variance of what a reading misses the curve by: each error put into the reading itself, one after the other (JCGM 100:2008, 5.1.2). */
function varianceOf(reading: ReturnType<typeof at>, u: ReadingUncertainty): number {
  const step = 1e-6;
  const missed = (change: (by: number) => Partial<typeof reading>) => {
    const miss = (by: number) => {
      const [{ phi, psi }] = rotorPoints(DIAMETER, [{ ...reading, ...change(by) }]);
      return psi - evaluatePolynomial(PSI, phi);
    };
    return (miss(step) - miss(-step)) / (2 * step);
  };
  const gauge = missed((by) => ({
    pressure: reading.pressure * (1 + by),
    flow: u.flowFromPressure ? reading.flow * Math.sqrt(1 + by) : reading.flow,
  }));
  const tachometer = missed((by) => ({ rpm: reading.rpm * (1 + by) }));
  const meter = missed((by) => ({ flow: reading.flow * (1 + by) }));
  return ((gauge * u.pressure) / reading.pressure) ** 2 + (tachometer * u.speed) ** 2 + (meter * u.flow) ** 2;
}

describe("rotorWeights", () => {
  it.each([
    ["a pressure sensor alone", { ...SURE, pressure: 4 }],
    ["a sensor that gives the flow as well", { ...SURE, pressure: 4, flowFromPressure: true }],
    ["a tachometer alone", { ...SURE, speed: 0.004 }],
    ["a flow meter alone", { ...SURE, flow: 0.03 }],
    ["all of them", { pressure: 4, speed: 0.004, flow: 0.03, flowFromPressure: true }],
  ])("%s: is one over the variance that the errors give, each put into the reading by itself", (_, u) => {
    for (const phi of [0.03, 0.11, 0.2]) {
      const [weight] = rotorWeights(DIAMETER, [at(phi)], [u], PSI);
      expect(weight).toBeCloseToRelative(1 / varianceOf(at(phi), u), 1e-6);
    }
  });

  it("a blocked reading knows no flow: only pressure and, twice, speed count, by hand", () => {
    const reading = at(0);
    const u = { pressure: 4, speed: 0.004, flow: 0.03, flowFromPressure: true };
    const expected = (0.9 * (4 / reading.pressure)) ** 2 + (2 * 0.9 * 0.004) ** 2;
    expect(rotorWeights(DIAMETER, [reading], [u], PSI)[0]).toBeCloseToRelative(1 / expected, 1e-12);
  });

  it("a pressure below its own uncertainty, or below 0, counts as known to 100 percent of the curve", () => {
    const u = { ...SURE, pressure: 4 };
    const phi = 0.2;
    const height = evaluatePolynomial(PSI, phi);
    for (const pressure of [0, -3.9, 3.9, 4])
      expect(rotorWeights(DIAMETER, [{ ...at(phi), pressure }], [u], PSI)[0]).toBeCloseToRelative(
        1 / height ** 2,
        1e-12,
      );
    const [beyond] = rotorWeights(DIAMETER, [{ ...at(phi), pressure: -8 }], [u], PSI);
    expect(beyond).toBeCloseToRelative(4 / height ** 2, 1e-12);
  });
});
