import { type Energy, energiesOf } from "./energies.ts";
import { underExtremes } from "./extremes.ts";
import { type First, firstOf } from "./first.ts";
import type { LimitsInput } from "./input.ts";
import type { Limit } from "./limit.ts";
import { type AtMaxCurrent, atMaxCurrent } from "./maxCurrent.ts";
import { type OverVoltage, overVoltageOf } from "./overVoltage.ts";
import { type RotorFigures, rotorFigures, rotorLimit } from "./rotor.ts";
import { stateOf } from "./state.ts";
import { cellLimits, motorLimits } from "./supply.ts";
import { type WarmUp, warmUp } from "./warmUp.ts";
import { windingLimit } from "./winding.ts";

/** What a build does against all that can burn, burst, run empty or fall. */
export interface Limits {
  /** charge that all of it stands at [-] */
  readonly charge: number;
  readonly limits: readonly Limit[];
  readonly first: First;
  /** null where R_th or τ_th isn't known */
  readonly warmUp: WarmUp | null;
  /** why there is none */
  readonly warmUpMissing: string | null;
  /** null where no rated voltage is known, or the rotor stands */
  readonly overVoltage: OverVoltage | null;
  /** null where the maker's greatest current or R_th isn't known */
  readonly maxCurrent: AtMaxCurrent | null;
  readonly rotor: RotorFigures;
  /** of the settled winding [A] */
  readonly settledCurrent: number;
  readonly energies: readonly Energy[];
}

function warmUpMissing({ build }: LimitsInput): string | null {
  if (build.motor.thermalResistance === null)
    return "The motor's thermal resistance, or its diameter and length, from which it is estimated.";
  return build.motor.thermalTimeConstant
    ? null
    : "The motor's thermal time constant: how long the winding takes to 63 % of its rise at a steady load.";
}

/**
 * What burns or bursts first, and how near everything else is.
 *
 *     each figure over its limit at the build's charge: the winding settled, all else just switched on, cold, when most flows; the winding from cold at that supply
 *
 * @param input - build with its cell [SI], limits of motor and rotor, height of the fall [m]
 * @returns limits with their ratios [-], the first to fail, winding against time [s, K], over-voltage [-], rotor [Pa, rad/s], energies [J]
 * @throws {OutOfRangeError} with the path of a number that can't be
 * @throws {NotEnoughDataError} where the rotor's curve does not reach down to the leak
 *
 * Valid at one charge, held: the worst of a run is its start. Source: docs/method/limits.md
 */
export function limitsOf(input: LimitsInput): Limits {
  const { build, motor } = input;
  const { light, heavy } = underExtremes(build);
  const cold = build.air.temperature;
  const [settled, started] = [stateOf(light), stateOf(light, cold)];
  const rotor = rotorFigures(input, started.speed);
  const limits = [
    windingLimit(input, settled),
    ...motorLimits(input, started),
    ...cellLimits(input, stateOf(heavy, cold)),
    rotorLimit(input, rotor),
  ];
  const warm = warmUp(light, settled, motor.windingLimit);
  const { ratedVoltage } = motor;
  const over = ratedVoltage === null ? null : overVoltageOf(light, started.motorVoltage, ratedVoltage);
  return {
    charge: build.startCharge ?? 1,
    limits,
    first: firstOf(limits, rotor, warm, over),
    warmUp: warm,
    warmUpMissing: warmUpMissing(input),
    overVoltage: over,
    maxCurrent: atMaxCurrent(input),
    rotor,
    settledCurrent: settled.current,
    energies: energiesOf(input, rotor),
  };
}
