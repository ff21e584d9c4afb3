import { underExtremes } from "./extremes.ts";
import type { LimitsInput } from "./input.ts";
import type { Limit } from "./limit.ts";
import { type RotorFigures, rotorFigures, rotorLimit } from "./rotor.ts";
import { type State, statesOf } from "./state.ts";
import { cellLimits, motorLimits } from "./supply.ts";
import { windingLimit } from "./winding.ts";

/** Every limit at the moment of the charge that is hardest on it. */
export interface Hardest {
  readonly limits: readonly Limit[];
  /** from a full charge, just switched on */
  readonly rotor: RotorFigures;
  /** at a full charge, the winding settled */
  readonly settled: State;
}

/**
 * How near a build comes to its limits over a whole charge, each judged at its own hardest moment.
 *
 *     full: winding settled; rotor, motor and cell current just switched on, cold;  at the build's own charge: the loaded cell's voltage
 *
 * @param input - build with its cell, at the charge that its figures are shown at [SI]; limits of motor and rotor
 * @param full - charge that a run begins at; 1 unless given [-]
 * @returns limits with their ratios [-], the rotor's figures [Pa, rad/s], the settled state [K, A]
 * @throws {OutOfRangeError} with the path of a number that can't be
 * @throws {NotEnoughDataError} where the rotor's curve does not reach down to the leak
 *
 * Valid for a voltage that falls with the charge: every run begins at its hardest. Source: docs/method/verdict.md
 */
export function hardestLimits(input: LimitsInput, full = 1): Hardest {
  const { build } = input;
  const shown = build.startCharge ?? full;
  const cold = build.air.temperature;
  const { light, heavy } = underExtremes(build);
  const lightAt = statesOf(light);
  const heavyAt = heavy === light ? lightAt : statesOf(heavy);
  const from = Math.max(full, shown);
  const started = lightAt(from, cold);
  const rotor = rotorFigures(input, started.speed);
  const [cellCurrent] = cellLimits(input, heavyAt(from, cold));
  const [, cellVoltage] = cellLimits(input, heavyAt(shown, cold));
  // Last: where a settled winding stops the rotor, no point is looked for any more at lower voltages.
  const settled = lightAt(from);
  return {
    limits: [
      windingLimit(input, settled),
      ...motorLimits(input, started),
      cellCurrent,
      cellVoltage,
      rotorLimit(input, rotor),
    ],
    rotor,
    settled,
  };
}
