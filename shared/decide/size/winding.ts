import { answerOrNull } from "../../numeric/errors.ts";
import { COPPER_TEMPERATURE_COEFFICIENT, WINDING_REFERENCE_TEMPERATURE } from "../../physics/constants.ts";
import { speedConstant } from "../../physics/motor.ts";
import { packResistance } from "../../physics/pack.ts";
import type { Turning } from "../../physics/point/turning.ts";
import { steadyWindingTemperature } from "../../physics/winding.ts";
import type { SizeBuild } from "./input.ts";

/** The winding with which a motor of one strength does it, or the power that is missing. */
export type Winding =
  | {
      readonly state: "does";
      /** [rpm/V] */
      readonly kv: number;
      /** R₂₀ [Ω] */
      readonly resistance: number;
    }
  | {
      readonly state: "short";
      /** that the motor's terminals would take, copper and friction included [W] */
      readonly needed: number;
      /** the most that pack and speed controller give [W] */
      readonly most: number;
      /** of one cell at rest, from which on it would do [V] */
      readonly cellVoltage: number;
    }
  | { readonly state: "runs-away" };

/** R_m(T)/R₂₀ where the winding settles; it hangs on M²/K_m² alone. Null: it finds no steady temperature. */
function warmFactor({ motor, air }: SizeBuild, torque: number): number | null {
  const { thermalResistance, motorConstant } = motor;
  if (thermalResistance === null) return 1;
  // I²·R₂₀ = (M/k_t)²·(k_t/K_m)²: the current M/K_m through a winding of 1 Ω heats alike.
  const current = Math.abs(torque) / motorConstant;
  const settled = answerOrNull(() =>
    steadyWindingTemperature(current, 1, thermalResistance, air.temperature),
  );
  return settled && 1 + COPPER_TEMPERATURE_COEFFICIENT * (settled - WINDING_REFERENCE_TEMPERATURE);
}

/**
 * The winding of a motor of one strength that turns a rotor from a pack.
 *
 *     V = k_t(ω + wM/K_m²) + R·M/k_t,  V = δ(V_oc − R_b·I_aux), R = R_d + δ²R_b, M = M_s + M_c + M_v·ω, w = R_m(T)/R₂₀
 *     k_t = [V + √(V² − 4(ω + wM/K_m²)·R·M)]/(2(ω + wM/K_m²)),  K_v = 60/(2π·k_t),  R₂₀ = (k_t/K_m)²
 *
 * @param build - motor [N·m/√W, N·m, N·m·s/rad, K/W], pack [V, Ω], supply [-, Ω, A], air [K]
 * @param turning - ω [rad/s], M_s [N·m]
 * @returns K_v [rpm/V] and R₂₀ [Ω]; below 0 under the root the power that is missing [W]
 *
 * Valid for M > 0 and motors whose copper fills the same space at every winding, K_m the same. The other root draws more for the same pull. Source: torque balance of one equivalent DC machine; docs/method/size.md
 */
export function windingFor(build: SizeBuild, { speed, torque: rotorTorque }: Turning): Winding {
  const { motor, pack, supply } = build;
  const torque = rotorTorque + motor.frictionTorque + motor.viscousTorque * speed;
  const warm = warmFactor(build, torque);
  if (warm === null) return { state: "runs-away" };
  const inside = packResistance(pack);
  const voltage = supply.duty * (pack.series * pack.openCircuitVoltage - inside * supply.auxCurrent);
  const resistance = supply.driverResistance + supply.duty ** 2 * inside;
  const perConstant = speed + (warm * torque) / motor.motorConstant ** 2;
  const root = voltage ** 2 - 4 * perConstant * resistance * torque;
  const needed = perConstant * torque;
  if (!(voltage > 0 && root >= 0)) {
    const least = 2 * Math.sqrt(needed * resistance);
    const cellVoltage = (least / supply.duty + inside * supply.auxCurrent) / pack.series;
    const most = voltage > 0 && resistance > 0 ? voltage ** 2 / (4 * resistance) : 0;
    return { state: "short", needed, most, cellVoltage };
  }
  const constant = (voltage + Math.sqrt(root)) / (2 * perConstant);
  return { state: "does", kv: speedConstant(constant), resistance: (constant / motor.motorConstant) ** 2 };
}
