import { writeFastCase } from "../../physics/point/fastCase.ts";
import { MOST_COEFFICIENTS } from "../../physics/point/newton.ts";
import { WARM, WARM_RESULT } from "../../physics/point/newtonWarm.ts";
import { type Digits, isOpen, writeDigits } from "./places.ts";
import type { Prepared } from "./prepare.ts";
import { LIMITS } from "./result.ts";

/** Numbers kept of each fitted skirt's last solution: φ/φ_end, w over u (lip) or over u² (pressure). */
export const KEPT = 2;

/** One thread's memory: nothing is allocated per combination. Its digits are those that the case is written for, -1 at first. */
export interface Work extends Digits {
  /** the case, laid out as WARM */
  readonly c: Float64Array;
  /** the solution, laid out as WARM_RESULT */
  readonly solution: Float64Array;
  /** a solution at another voltage */
  readonly aside: Float64Array;
  /** each fitted skirt's last solution, for the next start */
  readonly kept: Float64Array;
  /** run in which each was kept */
  readonly keptIn: Int32Array;
  /** value and allowed value of each limit */
  readonly values: Float64Array;
  readonly allowed: Float64Array;
  /** anything is asked but an operating point, and a time */
  limited: boolean;
  /** digits of the combination that is being written */
  readonly next: Digits;
  /** the motor turns, once its winding has settled */
  turns: boolean;
}

/** @returns memory for one thread */
export function createWork({ radix: { fittedSkirts } }: Prepared): Work {
  return {
    c: new Float64Array(WARM.length),
    solution: new Float64Array(WARM_RESULT.length),
    aside: new Float64Array(WARM_RESULT.length),
    kept: new Float64Array(KEPT * fittedSkirts.length),
    keptIn: new Int32Array(fittedSkirts.length).fill(-1),
    values: new Float64Array(LIMITS.length),
    allowed: new Float64Array(LIMITS.length),
    limited: true,
    next: { motor: 0, sizedRotor: 0, pack: 0, duty: 0, fittedSkirt: 0 },
    motor: -1,
    sizedRotor: -1,
    pack: -1,
    duty: -1,
    fittedSkirt: -1,
    turns: false,
  };
}

function writeMotor(prepared: Prepared, work: Work, motor: number): void {
  const { c } = work;
  const { frictionTorque, viscousTorque } = prepared.problem.motors[motor];
  const { torqueConstant, winding, heating } = prepared.motors[motor];
  c[WARM.torqueConstant] = torqueConstant;
  c[WARM.frictionTorque] = frictionTorque;
  c[WARM.viscousTorque] = viscousTorque;
  c[WARM.windingResistance] = winding;
  c[WARM.heating] = heating;
  work.motor = motor;
}

/** A propeller's law is no part of the case. */
function writeSizedRotor(prepared: Prepared, work: Work, sizedRotor: number): void {
  const { c } = work;
  work.sizedRotor = sizedRotor;
  if (isOpen(prepared.radix, sizedRotor)) return;
  const { psi, lambda, phiEnd, diameter, sizeMost, sizeFall } = prepared.sizedRotors[sizedRotor];
  for (let power = 0; power < MOST_COEFFICIENTS; power++) {
    c[WARM.psi + power] = psi[power] ?? 0;
    c[WARM.lambda + power] = lambda[power] ?? 0;
  }
  c[WARM.phiEnd] = phiEnd;
  c[WARM.radius] = diameter / 2;
  c[WARM.density] = prepared.air.density;
  c[WARM.sizeMost] = sizeMost;
  c[WARM.sizeFall] = sizeFall;
}

/** @returns whether the motor turns at this voltage once its winding has settled in the current that its friction takes */
export function turnsAt(c: Float64Array, voltage: number): boolean {
  const least = c[WARM.frictionTorque] / c[WARM.torqueConstant];
  const cool = 1 - c[WARM.heating] * least * least;
  return cool > 0 && least * (c[WARM.circuitResistance] + c[WARM.windingResistance] / cool) < voltage;
}

/** @returns δ(N_s·V_cell − R_b·I_aux) of the case's pack [V] */
export function drivingVoltageAt(prepared: Prepared, work: Work, cellVoltage: number): number {
  const { supply } = prepared.problem.fixed;
  const { series } = prepared.problem.packs[work.pack];
  const { resistance } = prepared.packs[work.pack];
  return prepared.problem.duties[work.duty] * (series * cellVoltage - resistance * supply.auxCurrent);
}

function writeSupply(prepared: Prepared, work: Work, pack: number, duty: number): void {
  const { c } = work;
  work.pack = pack;
  work.duty = duty;
  const share = prepared.problem.duties[duty];
  const { resistance, voltage } = prepared.packs[pack];
  c[WARM.circuitResistance] = prepared.problem.fixed.supply.driverResistance + share * share * resistance;
  c[WARM.drivingVoltage] = drivingVoltageAt(prepared, work, voltage);
}

/**
 * Writes one combination into the case, the changed parts alone.
 *
 *     digits of the index as in {@link radixOf}
 *
 * @param prepared - the question
 * @param work - this thread's memory
 * @param index - of the combination [-]
 * @returns nothing
 *
 * Valid for 0 ≤ index < count; allocates nothing
 */
export function writeCombination(prepared: Prepared, work: Work, index: number): void {
  writeDigits(prepared.radix, index, work.next);
  const { motor, sizedRotor, pack, duty, fittedSkirt } = work.next;
  const otherMotor = motor !== work.motor;
  if (otherMotor) writeMotor(prepared, work, motor);
  if (sizedRotor !== work.sizedRotor) writeSizedRotor(prepared, work, sizedRotor);
  const otherSupply = pack !== work.pack || duty !== work.duty;
  if (otherSupply) writeSupply(prepared, work, pack, duty);
  if (otherMotor || otherSupply) {
    const { c } = work;
    c[WARM.resistance] = c[WARM.windingResistance] + c[WARM.circuitResistance];
    work.turns = turnsAt(c, c[WARM.drivingVoltage]);
  }
  if (fittedSkirt !== work.fittedSkirt) {
    const fast = isOpen(prepared.radix, sizedRotor) ? null : prepared.fittedSkirts[fittedSkirt].fast;
    if (fast) writeFastCase(work.c, fast);
    work.fittedSkirt = fittedSkirt;
  }
}
