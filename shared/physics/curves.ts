import { requirePositive } from "../numeric/errors.ts";
import { type Assembly, assemble } from "./assembly.ts";
import { RPM } from "./motor.ts";
import { overcomesFriction, psiAt } from "./point/machine.ts";
import { balancedSpeed } from "./point/speed.ts";
import type { PredictInput } from "./predict.ts";
import { leakFlow } from "./restriction/leak.ts";

export interface FanCurvePoint {
  readonly phi: number;
  /** [m³/s] */
  readonly flow: number;
  /** [Pa] */
  readonly pressure: number;
  /** the machine's own speed there [rpm] */
  readonly rpm: number;
  readonly extrapolated: boolean;
}

export interface LeakCurvePoint {
  /** [m³/s] */
  readonly flow: number;
  /** [Pa] */
  readonly pressure: number;
}

/**
 * The curve that rotor, motor and pack make together: at every φ the speed at which the torques balance.
 *
 *     Q = φ·A·u,  Δp = ½ρu²ψ(φ),  u from the balance of torques at φ
 *
 * @param input - build at one state, all SI
 * @param count - points along the curve, 2 or more [-]
 * @returns points from blocked to open: φ [-], Q [m³/s], Δp [Pa], rpm, beyond the tested range or not; none where the motor stands still
 * @throws {OutOfRangeError} with the path of a number that can't be
 *
 * Valid on φ from 0 to the first positive zero of ψ (to the end of the fitted range where ψ has none). Source: docs/method/operating-point.md
 */
export function fanCurve(input: PredictInput, count = 60): FanCurvePoint[] {
  return fanCurveOf(assemble(input), count);
}

/** @returns the same from an {@link Assembly} that is ready @throws {OutOfRangeError} as {@link fanCurve} */
export function fanCurveOf({ machine }: Pick<Assembly, "machine">, count = 60): FanCurvePoint[] {
  requirePositive("count - 1", count - 1);
  if (!overcomesFriction(machine)) return [];
  const { rotor, phiEnd, air, radius, area } = machine;
  const end = Number.isFinite(phiEnd) ? phiEnd : rotor.phiMax;
  const points: FanCurvePoint[] = [];
  for (let i = 0; i < count; i++) {
    const phi = (end * i) / (count - 1);
    const { speed } = balancedSpeed(machine, phi);
    if (!(speed > 0)) continue;
    const tipSpeed = speed * radius;
    points.push({
      phi,
      flow: phi * area * tipSpeed,
      pressure: Math.max(0, 0.5 * air.density * tipSpeed ** 2 * psiAt(machine, phi, tipSpeed)),
      rpm: speed / RPM,
      extrapolated: phi < rotor.phiMin || phi > rotor.phiMax,
    });
  }
  return points;
}

/**
 * The curve of everything that leaks.
 *
 *     Q(Δp), parts in parallel
 *
 * @param input - build at one state, all SI
 * @param highest - Δp at the curve's end [Pa], > 0
 * @param count - points along the curve [-]
 * @returns points from none to the highest pressure, closer together near none: Q [m³/s], Δp [Pa]
 * @throws {OutOfRangeError} with the path of a number that can't be
 *
 * Valid as its parts. Source: docs/method/restriction.md
 */
export function leakCurve(input: PredictInput, highest: number, count = 60): LeakCurvePoint[] {
  const { leak, air } = assemble(input);
  requirePositive("highest", highest);
  return Array.from({ length: count }, (_, i) => {
    const pressure = highest * (i / (count - 1)) ** 2;
    return { flow: leakFlow(leak, air, pressure), pressure };
  });
}
