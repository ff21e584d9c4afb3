import { lowestCell } from "./events.ts";
import type { Moment, RundownLaw } from "./law.ts";

/** Steps of charge from full to empty: 1/|dz/dt| is smooth, and the estimate good to about 1 %. */
const STEPS = 64;

/**
 * Charge left after a time, estimated in a few dozen moments instead of step by step.
 *
 *     t(z) = ∫ dz/|dz/dt|, trapezoids in z, the winding cold
 *
 * @param law - of the run-down [-]
 * @param start - its first moment
 * @param minimumVoltage - that ends the run, of the lowest cell [V]
 * @param time - after the start [s]
 * @returns z then [-]; null where the run has ended by then
 * @throws {NotEnoughDataError} where what the rotor draws isn't known
 *
 * Valid for every law; a warm winding draws less, so that the run lasts longer than this says. Source: definition
 */
export function chargeLeftAfter(
  law: RundownLaw,
  start: Moment,
  minimumVoltage: number,
  time: number,
): number | null {
  let now = start;
  let passed = 0;
  for (let step = 1; step <= STEPS; step++) {
    if (lowestCell(now) <= minimumVoltage) return null;
    const next = law.momentAt(0, start.charge * (1 - step / STEPS), 0);
    const drop = now.charge - next.charge;
    const takes = (drop / 2) * (1 / Math.abs(now.chargeRate) + 1 / Math.abs(next.chargeRate));
    if (!(passed + takes < time)) return now.charge - (drop * (time - passed)) / takes;
    passed += takes;
    now = next;
  }
  return null;
}
