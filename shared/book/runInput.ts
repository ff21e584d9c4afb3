import type { Build } from "../model/build.ts";
import type { RundownInput } from "../physics/rundown.ts";
import { type Resolved, solvable } from "./resolve/resolved.ts";

/**
 * A build's numbers with its cell, for whatever follows it through its charge.
 *
 * @param build - a stored build, or one changed by what-if handles
 * @param resolved - the same build made into numbers
 * @returns SI, at the build's own charge and under its own drive cycle; null where the build has no numbers yet
 */
export function runInput(build: Build, resolved: Resolved): RundownInput | null {
  const numbers = solvable(resolved);
  if (!numbers || !resolved.motor || !resolved.pack) return null;
  const { openCircuitVoltage: _at, cellResistance: _of, ...wiring } = numbers.pack;
  const { thermalTimeConstant } = resolved.motor.thermal;
  return {
    ...numbers,
    motor: { ...numbers.motor, thermalTimeConstant },
    pack: { ...wiring, cell: resolved.pack.cell },
    startCharge: build.charge,
    cycle: build.cycle,
  };
}
