import { studentQuantile } from "../numeric/student.ts";
import { RPM } from "../physics/motor.ts";
import { type Information, varianceAt } from "./information.ts";
import type { Band } from "./rotorBands.ts";
import type { MotorRow, VoltageFit } from "./voltageFit.ts";

export interface VoltageBands {
  /** R_m·I + k_e·ω [V] */
  readonly voltage: number;
  /** half-width: where the fitted voltage lies [V] */
  readonly mean: number;
  /** half-width: where another reading would lie [V] */
  readonly prediction: number;
}

/** @returns (I, ω): how V leans on R_m and k_e */
export const motorRow = ({ current, rpm }: Pick<MotorRow, "current" | "rpm">): number[] => [
  current,
  RPM * rpm,
];

/** @returns covariance of (R_m, k_e), with zeros along a resistance that was given; null where no residual is left over */
export function pairCovariance(fit: Pick<VoltageFit, "covariance" | "standardErrors">): Information | null {
  if (fit.covariance) return fit.covariance;
  const error = fit.standardErrors.backEmf;
  return error === null
    ? null
    : [
        [0, 0],
        [0, error ** 2],
      ];
}

/** @returns (XᵀX)⁻¹ of (R_m, k_e), per variance of the voltage; null where no residual is left over */
export function pairInformation(fit: VoltageFit): Information | null {
  const covariance = pairCovariance(fit);
  return covariance && fit.residualSd > 0
    ? covariance.map((row) => row.map((value) => value / fit.residualSd ** 2))
    : null;
}

/**
 * Bands of the voltage that a motor's constants give at one current and speed.
 *
 *     V ± t·√(xᵀCx), x = (I, ω);  prediction: V ± t·√(xᵀCx + s²)
 *
 * @param fit - k_e [V·s/rad], R_m [Ω], their covariance, residual sd [V], degrees of freedom [-]
 * @param at - current [A], speed [rpm]
 * @param confidence - share of each band, 0.95 unless given [-]
 * @returns V and both half-widths [V]; null where the rows left no residual
 * @throws {OutOfRangeError} on a confidence that is not between 0 and 1
 *
 * Valid within the currents and speeds of the test, one at a time. A resistance that was given counts as known.
 * Source: Draper & Smith, Applied Regression Analysis, 3rd ed., section 5.2
 */
export function voltageBands(
  fit: VoltageFit,
  at: Pick<MotorRow, "current" | "rpm">,
  confidence = 0.95,
): VoltageBands | null {
  const covariance = pairCovariance(fit);
  if (!covariance || !(fit.dof > 0)) return null;
  const t = studentQuantile((1 + confidence) / 2, fit.dof);
  const variance = varianceAt(covariance, motorRow(at));
  return {
    voltage: fit.resistance * at.current + fit.backEmf * RPM * at.rpm,
    mean: t * Math.sqrt(variance),
    prediction: t * Math.sqrt(variance + fit.residualSd ** 2),
  };
}

export interface TorqueLine {
  /** M_c [N·m] */
  readonly frictionTorque: number;
  /** M_v [N·m·s/rad] */
  readonly viscousTorque: number;
}

export interface TorqueAt {
  /** of the shaft [N·m] */
  readonly torque: number;
  readonly mean: Band;
}

/**
 * Shaft torque of a motor at a fixed voltage and one speed, with the band that the fit leaves it.
 *
 *     M = k_e·(V − k_e·ω)/R_m − M_c − M_v·ω;  M ± t·√(gᵀCg), g = (∂M/∂R_m, ∂M/∂k_e), friction ∝ k_e as it was read in amperes
 *
 * @param fit - k_e [V·s/rad], R_m [Ω], their covariance, degrees of freedom [-]
 * @param friction - M_c [N·m], M_v [N·m·s/rad]
 * @param voltage - at the motor [V]
 * @param rpm - speed [rpm]
 * @param confidence - share of the band, 0.95 unless given [-]
 * @returns torque and its band [N·m]; without a band (both ends the torque) where the rows left no residual
 * @throws {OutOfRangeError} on a confidence that is not between 0 and 1
 *
 * Valid to first order in the errors of R_m and k_e; the scatter of the no-load current is not in it. Source: JCGM 100:2008 (GUM), 5.2
 */
export function torqueAt(
  fit: VoltageFit,
  friction: TorqueLine,
  voltage: number,
  rpm: number,
  confidence = 0.95,
): TorqueAt {
  const { backEmf: k, resistance } = fit;
  const speed = RPM * rpm;
  const current = (voltage - k * speed) / resistance;
  const lost = friction.frictionTorque + friction.viscousTorque * speed;
  const torque = k * current - lost;
  const covariance = pairCovariance(fit);
  if (!covariance || !(fit.dof > 0)) return { torque, mean: { low: torque, high: torque } };
  const slopes = [(-k * current) / resistance, (voltage - 2 * k * speed) / resistance - lost / k];
  const t = studentQuantile((1 + confidence) / 2, fit.dof);
  const half = t * Math.sqrt(varianceAt(covariance, slopes));
  return { torque, mean: { low: torque - half, high: torque + half } };
}
