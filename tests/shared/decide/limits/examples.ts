import type { LimitsInput } from "#shared/decide/limits/input.ts";
import type { RundownInput } from "#shared/physics/rundown.ts";
import { PANE_CRAWLER } from "#tests/support/paneCrawler.ts";

/** An invented pane crawler with everything known, at a full charge. */
export const BUILD: RundownInput = {
  ...PANE_CRAWLER,
  motor: { ...PANE_CRAWLER.motor, thermalResistance: 7, thermalTimeConstant: 45 },
  pack: {
    series: 2,
    parallel: 1,
    wireResistance: 0.014,
    cell: {
      capacity: 1620,
      minimumVoltage: 3.2,
      resistance: 0.026,
      curve: [
        [0, 3.3],
        [0.5, 3.8],
        [1, 4.2],
      ],
      maxCurrent: 9,
    },
  },
  startCharge: 1,
};

export const KNOWN: LimitsInput = {
  build: BUILD,
  motor: { windingLimit: 393.15, ratedVoltage: 7.4, maxCurrent: 9 },
  rotor: {
    density: 1240,
    poisson: 0.36,
    strength: 25e6,
    boreDiameter: 0.0015,
    blades: { mass: 4e-4, radius: 0.016, rimThickness: 0.0015, count: 9 },
  },
  rotorMass: 8e-3,
  fallHeight: 2.5,
  estimated: ["winding"],
};

/** The same build on another supply: cells in series. */
export function withSeries(series: number): LimitsInput {
  return { ...KNOWN, build: { ...BUILD, pack: { ...BUILD.pack, series } } };
}

/** The same build with other figures of its motor. */
export function withMotor(change: Partial<RundownInput["motor"]>): LimitsInput {
  return { ...KNOWN, build: { ...BUILD, motor: { ...BUILD.motor, ...change } } };
}
