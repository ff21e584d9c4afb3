import type { RideHeightTest } from "../../model/tests/rideHeight.ts";
import { toSI } from "../../units/quantity.ts";
import { instrumentUncertainty, maybe, type Reading } from "./reading.ts";

/** @returns a ride-height test's readings: load beside the vehicle's own weight [N], height of the lip [m] */
export function rideHeights(test: RideHeightTest): Reading<{ load: number; height: number }>[] {
  return test.rows.map((row, index) => ({
    load: toSI(row.load, "load"),
    height: toSI(row.height, "length"),
    row: index,
    setAside: row.setAside ?? null,
  }));
}

/** What the instruments of ride-height tests leave uncertain. */
export interface HeightInstruments {
  /** of one height, the largest of the tests' [m]; undefined where none is stated */
  readonly heightUncertainty: number | undefined;
  /** of one load, its fixed part [N] */
  readonly loadUncertainty: number;
  /** of the loads as a share of them, which the stiffness shares [-] */
  readonly loadShare: number;
}

/** @returns standard uncertainties of ride-height readings, the largest of the tests' */
export function heightInstruments(tests: readonly RideHeightTest[]): HeightInstruments {
  const height = (test: RideHeightTest) => {
    const highest = Math.max(...rideHeights(test).map((reading) => reading.height));
    return instrumentUncertainty(test.instruments.height, highest, "length");
  };
  const largest = (of: (test: RideHeightTest) => number) => Math.max(0, ...tests.map(of));
  return {
    heightUncertainty: largest(height) || undefined,
    loadUncertainty: largest(({ instruments }) => maybe(instruments.load?.absolute, "load") ?? 0),
    loadShare: largest(({ instruments }) => (instruments.load?.percent ?? 0) / 100),
  };
}
