import { evaluatePolynomial } from "../../numeric/polynomial.ts";
import { assemble } from "../../physics/assembly.ts";
import { operatingPoint, operatingPoints } from "../../physics/operatingPoint.ts";
import { RESULT, solveCase } from "../../physics/point/newton.ts";
import { solveSealedCase, solveWarmCase, WARM, WARM_RESULT } from "../../physics/point/newtonWarm.ts";
import { solvePropellerCase } from "../../physics/point/propellerWarm.ts";
import { predictPropeller } from "../../physics/propeller.ts";
import { windingResistance } from "../../physics/winding.ts";
import { FLAG } from "./columns.ts";
import type { FittedSkirt } from "./fittedSkirt.ts";
import { ductedInput, openInput } from "./input.ts";
import { isOpen, placesOf } from "./places.ts";
import type { Prepared, SizedRotor } from "./prepare.ts";
import { KEPT, type Work } from "./work.ts";

/** Where a curve is entered when no neighbour is known, in shares of its end [-]. */
const FIRST_SHARE = 0.5;

/** ω at which cold torques balance at φ [rad/s]. */
function speedAt(c: Float64Array, phi: number): number {
  const lambda = c[5] + phi * (c[6] + phi * (c[7] + phi * (c[8] + phi * c[9])));
  const radius = c[WARM.radius];
  const k = c[WARM.torqueConstant];
  const resistance = c[WARM.resistance];
  const square = radius * radius;
  const load = 0.5 * c[WARM.density] * Math.PI * square * square * radius * lambda;
  const damping = (k * k) / resistance + c[WARM.viscousTorque];
  const drive = (k * c[WARM.drivingVoltage]) / resistance - c[WARM.frictionTorque];
  return (2 * drive) / (damping + Math.sqrt(damping * damping + 4 * load * drive));
}

/** Halvings of the range of speeds in search of a start with a warm winding. */
const HALVINGS = 24;

/** ω at which torques balance at φ once the winding has settled, about [rad/s]: the voltage left over falls with ω. */
function warmSpeedAt(c: Float64Array, phi: number): number {
  let high = speedAt(c, phi);
  if (c[WARM.heating] === 0) return high;
  const lambda = c[5] + phi * (c[6] + phi * (c[7] + phi * (c[8] + phi * c[9])));
  const k = c[WARM.torqueConstant];
  const load = 0.5 * c[WARM.density] * Math.PI * c[WARM.radius] ** 5 * lambda;
  let low = 0;
  for (let i = 0; i < HALVINGS; i++) {
    const speed = 0.5 * (low + high);
    const current = (c[WARM.frictionTorque] + speed * (c[WARM.viscousTorque] + load * speed)) / k;
    const cool = 1 - c[WARM.heating] * current * current;
    const drop = current * (c[WARM.circuitResistance] + c[WARM.windingResistance] / cool);
    if (cool > 0 && drop < c[WARM.drivingVoltage] - k * speed) low = speed;
    else high = speed;
  }
  return 0.5 * (low + high);
}

/** A start that needs no neighbour: the middle of the curve, and the w that a laminar lip, or the pressure there, gives. */
function startAnew(c: Float64Array, start: Float64Array, lip: boolean): void {
  const phi = FIRST_SHARE * c[WARM.phiEnd];
  const speed = warmSpeedAt(c, phi);
  const u = speed * c[WARM.radius];
  const psi = c[0] + phi * (c[1] + phi * (c[2] + phi * (c[3] + phi * c[4])));
  const rise = 0.5 * c[WARM.density] * u * u * psi;
  const frictionDrop = c[WARM.gapLaminar];
  start[WARM_RESULT.phi] = phi;
  start[WARM_RESULT.speed] = speed;
  start[WARM_RESULT.gapVelocity] = lip
    ? (2 * rise) / (frictionDrop + Math.sqrt(frictionDrop * frictionDrop + 4 * c[WARM.gapInertia] * rise))
    : rise;
}

/** A start from another solution, its φ in shares of the curve and its w with the tip speed. */
function startFrom(work: Work, from: number, lip: boolean): void {
  const { c, solution, kept } = work;
  const phi = kept[KEPT * from] * c[WARM.phiEnd];
  const speed = speedAt(c, phi);
  const u = speed * c[WARM.radius];
  solution[WARM_RESULT.phi] = phi;
  solution[WARM_RESULT.speed] = speed;
  solution[WARM_RESULT.gapVelocity] = kept[KEPT * from + 1] * (lip ? u : u * u);
}

function keep(work: Work, run: number, lip: boolean): void {
  const { c, solution, kept, keptIn, fittedSkirt } = work;
  const u = solution[WARM_RESULT.speed] * c[WARM.radius];
  kept[KEPT * fittedSkirt] = solution[WARM_RESULT.phi] / c[WARM.phiEnd];
  kept[KEPT * fittedSkirt + 1] = solution[WARM_RESULT.gapVelocity] / (lip ? u : u * u);
  keptIn[fittedSkirt] = run;
}

/** Whether the case is one that the sweep's solver takes: lip gap, winding at one temperature, no size correction. */
const isPlain = (c: Float64Array, lip: boolean): boolean =>
  lip && c[WARM.jointArea] === 0 && c[WARM.heating] === 0 && c[WARM.sizeFall] === 0 && c[WARM.sizeMost] === 1;

/** Solves the case from the start that lies in `solution`; writes current and winding too. @returns whether it converged */
export function solveFrom(c: Float64Array, solution: Float64Array, lip: boolean): boolean {
  if (!isPlain(c, lip)) return solveWarmCase(c, solution);
  if (!solveCase(c, solution)) return false;
  const emf = c[WARM.drivingVoltage] - c[WARM.torqueConstant] * solution[RESULT.speed];
  solution[WARM_RESULT.current] = emf / c[WARM.resistance];
  solution[WARM_RESULT.windingResistance] = c[WARM.windingResistance];
  return true;
}

/** @returns whether one crossing alone is proven: at the least speed on the curve the size correction leaves some efficiency, and d ln F/d ln u is no more than one crossing is proven for. */
export function isProven(sizedRotor: SizedRotor, c: Float64Array, solution: Float64Array): boolean {
  if (sizedRotor.sizeFall === 0) return true;
  const phi = solution[WARM_RESULT.phi];
  const lambda = c[5] + phi * (c[6] + phi * (c[7] + phi * (c[8] + phi * c[9])));
  return isProvenFrom(sizedRotor, lambda, solution[WARM_RESULT.speed] * c[WARM.radius]);
}

/** @returns the same of a rotor at φ and a tip speed [m/s] */
export function isProvenAt(sizedRotor: SizedRotor, phi: number, tipSpeed: number): boolean {
  return isProvenFrom(sizedRotor, evaluatePolynomial(sizedRotor.lambda, phi), tipSpeed);
}

function isProvenFrom(sizedRotor: SizedRotor, lambda: number, tipSpeed: number): boolean {
  if (sizedRotor.sizeFall === 0) return true;
  const least = tipSpeed * Math.sqrt(lambda / sizedRotor.mostLambda);
  const lost = sizedRotor.sizeFall * least ** -0.2;
  return 0.2 * lost <= sizedRotor.mostSizeSlope * (sizedRotor.sizeMost - lost);
}

function solveFast(work: Work, sizedRotor: SizedRotor, { lip, sealed }: FittedSkirt, run: number): boolean {
  const { c, solution, keptIn, fittedSkirt } = work;
  if (sealed) {
    solution[WARM_RESULT.speed] = warmSpeedAt(c, 0);
    return solveSealedCase(c, solution);
  }
  const near = keptIn[fittedSkirt] === run ? fittedSkirt : fittedSkirt - 1;
  const known = near >= 0 && keptIn[near] === run && (near === fittedSkirt || keptIn[fittedSkirt] !== run);
  if (known) startFrom(work, near, lip);
  let solved = known && solveFrom(c, solution, lip);
  if (!solved) {
    startAnew(c, solution, lip);
    solved = solveFrom(c, solution, lip);
  }
  if (!(solved && isProven(sizedRotor, c, solution))) return false;
  keep(work, run, lip);
  return true;
}

/** Solves a combination by the scan of every crossing. */
function solveScanned(prepared: Prepared, work: Work, index: number): number {
  const { machine, leak } = assemble(ductedInput(prepared.problem, placesOf(prepared.radix, index)));
  const point = operatingPoint(operatingPoints(machine, leak));
  if (!point) return FLAG.noPoint;
  const { solution } = work;
  solution[WARM_RESULT.phi] = point.phi;
  solution[WARM_RESULT.speed] = point.speed;
  solution[WARM_RESULT.flow] = point.flow;
  solution[WARM_RESULT.pressure] = point.pressure;
  solution[WARM_RESULT.current] = point.current;
  solution[WARM_RESULT.windingResistance] = point.windingResistance;
  return FLAG.scanned;
}

/** Starts a propeller from the run's last one on this stand, its speed in shares of the unloaded one. */
function solveOpen(prepared: Prepared, work: Work, run: number): boolean {
  const { c, solution, kept, keptIn, fittedSkirt } = work;
  const unloaded = c[WARM.drivingVoltage] / c[WARM.torqueConstant];
  solution[WARM_RESULT.speed] =
    keptIn[fittedSkirt] === run ? kept[KEPT * fittedSkirt] * unloaded : Number.NaN;
  const load = prepared.propellers[work.sizedRotor - prepared.radix.ducted.rotors];
  if (!solvePropellerCase(load, c, solution)) return false;
  kept[KEPT * fittedSkirt] = solution[WARM_RESULT.speed] / unloaded;
  keptIn[fittedSkirt] = run;
  return true;
}

/** Solves a combination with a propeller by the prediction's own law, where one balance alone is not proven. */
function solveOpenAnew({ problem, radix }: Prepared, { solution }: Work, index: number): number {
  const input = openInput(problem, placesOf(radix, index));
  const { point } = predictPropeller(input, []);
  if (!point) return FLAG.noPoint;
  const { resistance, thermalResistance } = input.motor;
  solution.fill(Number.NaN);
  solution[WARM_RESULT.speed] = point.speed;
  solution[WARM_RESULT.current] = point.motorCurrent;
  solution[WARM_RESULT.windingResistance] =
    thermalResistance === null ? resistance : windingResistance(resistance, point.windingTemperature);
  return FLAG.scanned;
}

/** Flag of a combination that {@link solve} finds; one that a prediction refuses is unsolved. */
function orUnsolved(solve: () => number): number {
  try {
    return solve();
  } catch (error) {
    if (error instanceof Error && "code" in error) return FLAG.unsolved;
    throw error;
  }
}

/**
 * Solves the combination that the case is written for.
 *
 *     the stable crossing of largest flow; from a neighbour's solution where one crossing is proven and the leak is a fast case, by the scan elsewhere
 *
 * @param prepared - the question
 * @param work - this thread's memory, its case written for the combination; the solution is left in it
 * @param index - of the combination [-]
 * @param run - number of the run of combinations that may start from each other [-]
 * @returns flags of the combination, bits of FLAG [-]
 *
 * Valid for any combination; an answer that a prediction would refuse is flagged as unsolved. Source: docs/method/choosing.md
 */
export function solveCombination(prepared: Prepared, work: Work, index: number, run: number): number {
  if (!work.turns) return FLAG.noPoint;
  if (isOpen(prepared.radix, work.sizedRotor)) {
    if (solveOpen(prepared, work, run)) return 0;
    return orUnsolved(() => solveOpenAnew(prepared, work, index));
  }
  const sizedRotor = prepared.sizedRotors[work.sizedRotor];
  const fittedSkirt = prepared.fittedSkirts[work.fittedSkirt];
  if (fittedSkirt.fast && sizedRotor.phiEnd > 0 && solveFast(work, sizedRotor, fittedSkirt, run)) return 0;
  return orUnsolved(() => solveScanned(prepared, work, index));
}
