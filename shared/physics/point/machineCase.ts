import { firstPositiveZero } from "../../numeric/polynomial.ts";
import type { LeakAir } from "../restriction/law.ts";
import { warmingOf } from "../winding.ts";
import type { Circuit, RotorInput } from "./machine.ts";
import { MOST_COEFFICIENTS } from "./newton.ts";
import { WARM } from "./newtonWarm.ts";
import { sizeConstants, sizeLaw } from "./sizeLaw.ts";

/** @returns whether a rotor's curve is short enough for a case */
export const fitsCase = ({ psi, lambda }: RotorInput): boolean =>
  Math.max(psi.length, lambda.length) <= MOST_COEFFICIENTS;

function writeRotor(c: Float64Array, rotor: RotorInput, air: LeakAir): void {
  const { psi, lambda, sizeCorrection } = rotor;
  for (let power = 0; power < MOST_COEFFICIENTS; power++) {
    c[WARM.psi + power] = psi[power] ?? 0;
    c[WARM.lambda + power] = lambda[power] ?? 0;
  }
  c[WARM.radius] = rotor.diameter / 2;
  c[WARM.density] = air.density;
  const end = sizeCorrection ? (firstPositiveZero(psi) ?? Number.POSITIVE_INFINITY) : 0;
  [c[WARM.sizeMost], c[WARM.sizeFall]] = sizeCorrection ? sizeConstants(sizeLaw(rotor, end, air)) : [1, 0];
}

/**
 * Writes rotor, motor and supply into a case of the fast solvers; its leak and the end of its curve are written apart.
 *
 *     V_drive and R of the circuit, R_a and R₂₀·α·R_th of the winding, a and b of the size correction
 *
 * @param c - laid out as {@link WARM}, SI
 * @param rotor - of a curve that {@link fitsCase} [m, -]
 * @param circuit - from `assembleCircuit`
 * @param ambient - of the air, where the winding's heat goes [K]
 * @param air - density [kg/m³], viscosity [Pa·s]
 * @returns whether the motor turns, its winding not warmed yet
 * @throws {OutOfRangeError} on a number that no winding can have
 *
 * Valid for one equivalent DC machine. Source: docs/method/operating-point.md
 */
export function writeMachineCase(
  c: Float64Array,
  rotor: RotorInput,
  circuit: Circuit,
  ambient: number,
  air: LeakAir,
): boolean {
  const { motor, torqueConstant, drivingVoltage, circuitResistance } = circuit;
  const { winding, heating } = warmingOf(motor, ambient);
  writeRotor(c, rotor, air);
  c[WARM.torqueConstant] = torqueConstant;
  c[WARM.frictionTorque] = motor.frictionTorque;
  c[WARM.viscousTorque] = motor.viscousTorque;
  c[WARM.drivingVoltage] = drivingVoltage;
  c[WARM.circuitResistance] = circuitResistance;
  c[WARM.resistance] = winding + circuitResistance;
  c[WARM.windingResistance] = winding;
  c[WARM.heating] = heating;
  return torqueConstant * drivingVoltage > motor.frictionTorque * c[WARM.resistance];
}

/** Parts of each power that Bernstein's coefficients of degree 4 take: C(i, j)/C(4, j). */
const BERNSTEIN = [
  [1, 1 / 4, 0, 0, 0],
  [1, 1 / 2, 1 / 6, 0, 0],
  [1, 3 / 4, 1 / 2, 1 / 4, 0],
  [1, 1, 1, 1, 1],
] as const;

/** ψ > 0 on 0…φ where all of Bernstein's coefficients there are: it lies in their hull. */
function isPlainlyAbove(c: Float64Array, phi: number): boolean {
  if (!(c[WARM.psi] > 0)) return false;
  for (const row of BERNSTEIN) {
    let value = 0;
    for (let power = MOST_COEFFICIENTS - 1; power > 0; power--)
      value = (value + row[power] * c[WARM.psi + power]) * phi;
    if (!(value + c[WARM.psi] > 0)) return false;
  }
  return true;
}

/**
 * Whether a place lies before the end of a case's curve.
 *
 *     φ below the first positive zero of ψ
 *
 * @param c - laid out as {@link WARM}
 * @param phi - φ [-], > 0
 * @returns whether it does
 *
 * Valid for any curve that fits a case. Source: a polynomial lies in the hull of its Bernstein coefficients (Farouki, Computer Aided Geometric Design 29 (2012) 379–419, from memory)
 */
export function isBeforeEnd(c: Float64Array, phi: number): boolean {
  if (isPlainlyAbove(c, phi)) return true;
  const psi = Array.from(c.subarray(WARM.psi, WARM.psi + MOST_COEFFICIENTS));
  const end = psi.some((each) => each !== 0) ? firstPositiveZero(psi) : 0;
  return end === null || phi < end;
}
