// Source: open motor and propeller test data by StrawsonDesign, MIT (tests/fixtures/motor-prop-two-voltages/SOURCE.md).
import { describe, expect, it } from "vitest";
import { motorBasis } from "#shared/book/motorBasis.ts";
import { fitPropeller } from "#shared/fit/propellerFit.ts";
import {
  bookOf,
  DIAMETER,
  GRAM_FORCE,
  isFull,
  isTurned,
  motors,
  propellers,
  type SweepRow,
  shaftPowerOf,
} from "#tests/support/propellerSweeps.ts";

describe("published sweeps of small propellers, logged as thrust tests", () => {
  it("at full throttle give one propeller the same C_P whatever motor turned it, less than half as scattered as the current at part throttle would", () => {
    for (const propeller of propellers) {
      const usable = motors.filter((motor) => !isTurned(motor, propeller));
      const full = usable.map((motor) => powerOf(motor, propeller, (row) => isFull(row)));
      const part = usable.map((motor) => powerOf(motor, propeller, (row) => !isFull(row)));
      console.info(
        `  propeller ${propeller}: C_P at full throttle ${rangeOf(full)}, by part throttle's current ${rangeOf(part)}`,
      );
      expect(scatterOf(full)).toBeLessThan(0.5 * scatterOf(part));
    }
  });
});

/** C_P of a propeller from some rows of one motor's sweep, their current taken as the motor's own. */
function powerOf(motor: string, propeller: string, wanted: (row: SweepRow) => boolean): number {
  const { book, sweep } = bookOf(motor, propeller);
  const constants = motorBasis(book, "stand-motor")?.constants;
  if (!constants) return Number.NaN;
  const used = sweep.filter(wanted).map((row) => ({
    rpm: Number(row.rpm),
    thrust: Number(row.thrust_gf) * GRAM_FORCE,
    shaftPower: Math.max(0, shaftPowerOf(row, constants)),
  }));
  return fitPropeller({ diameter: DIAMETER, rows: used }).power?.[0] ?? Number.NaN;
}

/** Standard deviation of ln C_P [-]. */
function scatterOf(values: readonly number[]): number {
  const logs = values.map(Math.log);
  const mean = logs.reduce((sum, log) => sum + log, 0) / logs.length;
  return Math.sqrt(logs.reduce((sum, log) => sum + (log - mean) ** 2, 0) / (logs.length - 1));
}

const rangeOf = (values: readonly number[]): string =>
  `${Math.min(...values).toFixed(4)} to ${Math.max(...values).toFixed(4)}`;
