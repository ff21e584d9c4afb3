import { torqueConstant } from "../../physics/motor.ts";
import { packResistance } from "../../physics/pack.ts";
import { windingFor } from "./winding.ts";
import { type Asked, turningsAt } from "./wound.ts";

/** What a size takes, not put back. */
export interface Rated {
  /** [rpm/V] */
  readonly kv: number;
  /** V_b·I_b, all loads included [W] */
  readonly packPower: number;
}

/**
 * What one size takes, in closed form: for samples, where putting each back would take too long.
 *
 *     I = (M_s + M_c + M_v·ω)/k_t,  I_b = δI + I_aux,  P = (N_s·V_oc − R_b·I_b)·I_b
 *
 * @param asked - from {@link askedOf}, SI
 * @param diameter - D [m]
 * @returns K_v [rpm/V] and P [W] at the slowest turning that some winding does; null where none does
 * @throws {OutOfRangeError} {NotEnoughDataError} as {@link turningsAt}
 *
 * Valid where {@link woundAt} finds the slowest turning to be the one that a vehicle set down settles at, and for a gap that does not give. Source: docs/method/size.md
 */
export function ratedAt(asked: Pick<Asked, "build" | "duty" | "pull">, diameter: number): Rated | null {
  const { motor, pack, supply } = asked.build;
  for (const turning of turningsAt(asked, diameter)) {
    const torque = turning.torque + motor.frictionTorque + motor.viscousTorque * turning.speed;
    if (!(turning.torque > 0 && torque > 0)) continue;
    const winding = windingFor(asked.build, turning);
    if (winding.state !== "does") continue;
    const packCurrent = (supply.duty * torque) / torqueConstant(winding.kv) + supply.auxCurrent;
    const voltage = pack.series * pack.openCircuitVoltage - packResistance(pack) * packCurrent;
    return { kv: winding.kv, packPower: voltage * packCurrent };
  }
  return null;
}
