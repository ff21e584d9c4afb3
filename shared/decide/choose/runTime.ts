import { assemble } from "../../physics/assembly.ts";
import { crossingNear } from "../../physics/operatingPoint.ts";
import { circuitAt } from "../../physics/point/machine.ts";
import { solveSealedCase, WARM, WARM_RESULT } from "../../physics/point/newtonWarm.ts";
import { solvePropellerCase } from "../../physics/point/propellerWarm.ts";
import { predictPropeller } from "../../physics/propeller.ts";
import { runDown } from "../../physics/rundown.ts";
import { FLAG } from "./columns.ts";
import { ductedInput, openInput, runOf } from "./input.ts";
import { type CellsByStep, momentAt, type PackTable, stepAt } from "./packTable.ts";
import { isOpen, placesOf } from "./places.ts";
import type { Prepared } from "./prepare.ts";
import { solveFrom } from "./solveCombination.ts";
import { type InverseCurrent, varyingTime } from "./varyingTime.ts";
import { drivingVoltageAt, turnsAt, type Work } from "./work.ts";

/** Repetitions of the first guess at the last voltage, with I ∝ V^1.5 as a fan's current about goes. */
const GUESSES = 3;
/** Newton steps on the quadratic for the last voltage. */
const END_STEPS = 4;
/** A fall of the cell's voltage below this share counts as none. */
const FLAT = 1e-9;

/** I_pack at another voltage of the cell [A]; NaN where it has none there. */
type CurrentAt = (prepared: Prepared, work: Work, cellVoltage: number) => number;

/** Solves the case anew from the solution that lies in `aside`, its voltage changed in this ratio. */
function solvedAside(prepared: Prepared, { c, aside, sizedRotor, fittedSkirt }: Work, ratio: number) {
  const { propellers, fittedSkirts, radix } = prepared;
  if (isOpen(radix, sizedRotor))
    return solvePropellerCase(propellers[sizedRotor - radix.ducted.rotors], c, aside);
  const { lip, sealed } = fittedSkirts[fittedSkirt];
  aside[WARM_RESULT.gapVelocity] *= lip ? ratio : ratio * ratio;
  return sealed ? solveSealedCase(c, aside) : solveFrom(c, aside, lip);
}

const fastCurrent: CurrentAt = (prepared, work, cellVoltage) => {
  const { c, aside, solution } = work;
  const full = c[WARM.drivingVoltage];
  const voltage = drivingVoltageAt(prepared, work, cellVoltage);
  if (!turnsAt(c, voltage)) return Number.NaN;
  const ratio = voltage / full;
  aside.set(solution);
  aside[WARM_RESULT.speed] *= ratio;
  c[WARM.drivingVoltage] = voltage;
  const solved = solvedAside(prepared, work, ratio);
  c[WARM.drivingVoltage] = full;
  if (!solved) return Number.NaN;
  return (
    prepared.problem.duties[work.duty] * aside[WARM_RESULT.current] + prepared.problem.fixed.supply.auxCurrent
  );
};

/** NaN where a prediction refuses an answer. */
function orNone(solve: () => number): number {
  try {
    return solve();
  } catch (error) {
    if (error instanceof Error && "code" in error) return Number.NaN;
    throw error;
  }
}

function predictedCurrent(index: number): CurrentAt {
  return ({ problem, radix }, _work, cellVoltage) => {
    const { pack, ...build } = openInput(problem, placesOf(radix, index));
    return orNone(() => {
      const at = { ...build, pack: { ...pack, openCircuitVoltage: cellVoltage } };
      return predictPropeller(at, []).point?.packCurrent ?? Number.NaN;
    });
  };
}

function scannedCurrent(index: number): CurrentAt {
  return (prepared, work, cellVoltage) => {
    const input = ductedInput(prepared.problem, placesOf(prepared.radix, index));
    const { machine, leak } = assemble(input);
    const openCircuitVoltage = input.pack.series * cellVoltage;
    const now = circuitAt(machine, { openCircuitVoltage, packResistance: machine.packResistance });
    return orNone(() => {
      const crossing = crossingNear(now, leak, work.solution[WARM_RESULT.phi]);
      return crossing ? input.supply.duty * crossing.current + input.supply.auxCurrent : Number.NaN;
    });
  };
}

/** Voltage at which the loaded cell is at its minimum, about. */
function lastVoltage(table: PackTable, current: number): number {
  const { voltage, minimumVoltage, cellResistance } = table;
  let last = minimumVoltage;
  for (let i = 0; i < GUESSES; i++) {
    const share = last / voltage;
    last = minimumVoltage + cellResistance * current * share * Math.sqrt(share);
  }
  return last;
}

/** Voltages at which cells of varying resistance are solved lie at least this share of the first one apart. */
const LEAST_FALL = 0.01;

/** How far the cell, or its stand-in of one resistance, falls to its end, about; below 0 [V]. */
function lastFall(table: PackTable, current: number): number {
  const { varying, voltage } = table;
  const last = lastVoltage(table, current);
  if (!varying) return Math.max(table.lowest[table.lowest.length - 1], last) - voltage;
  const { least } = standInFalls(table, varying, current, last - voltage);
  return Math.min(Math.max(least, last - voltage), -LEAST_FALL * voltage);
}

/** Falls of the stand-in, about, as if the first current flowed throughout: their least, and their mean down to an end [V]. */
function standInFalls(
  { voltage }: PackTable,
  steps: CellsByStep,
  current: number,
  end: number,
): { readonly least: number; readonly mean: number } {
  let [least, sum, count] = [0, 0, 0];
  for (let i = 0; i < steps.voltage.length; i++) {
    const fall = steps.voltage[i] - voltage - steps.more[i] * current;
    least = Math.min(least, fall);
    if (least < end) break;
    sum += fall;
    count += 1;
  }
  return { least, mean: sum / count };
}

/** The middle voltage keeps this share of the fall away from both ends. */
const LEAST_SHARE = 0.15;

/** Mean of V − V₀ over the charge down to the last voltage, about [V]. */
function meanFall(table: PackTable, fall: number, current: number): number {
  if (table.varying) return standInFalls(table, table.varying, current, fall).mean;
  const step = stepAt(table, table.voltage + fall);
  return momentAt(table, 1, step) / momentAt(table, 0, step);
}

/** Where 1/I has to be right: at the mean of the fall, away from both ends [V]. */
function middleFall(table: PackTable, fall: number, current: number): number {
  const mean = meanFall(table, fall, current);
  return Math.min(LEAST_SHARE * fall, Math.max((1 - LEAST_SHARE) * fall, mean));
}

/** A current and how far the cell has fallen where it flows. */
interface Node {
  fall: number;
  current: number;
}

/** 1/I a quadratic in V through three solved voltages. */
function inverseOf(current: number, middle: Node, last: Node): InverseCurrent {
  const first = 1 / current;
  const near = (1 / middle.current - first) / middle.fall;
  const far = (1 / last.current - 1 / middle.current) / (last.fall - middle.fall);
  const square = (far - near) / last.fall;
  return { first, square, slope: near - square * middle.fall };
}

/** ∫dz/I from the charge to the end. */
function quadrature(table: PackTable, { first, slope, square }: InverseCurrent, last: Node): number {
  const { voltage, minimumVoltage, cellResistance } = table;
  let x = last.fall;
  for (let i = 0; i < END_STEPS; i++) {
    const inverse = first + x * (slope + x * square);
    const loaded = voltage + x - cellResistance / inverse - minimumVoltage;
    x -= loaded / (1 + (cellResistance * (slope + 2 * x * square)) / (inverse * inverse));
  }
  const step = stepAt(table, voltage + Math.min(0, x));
  const linear = first * momentAt(table, 0, step) + slope * momentAt(table, 1, step);
  return table.capacity * (linear + square * momentAt(table, 2, step));
}

/** The run followed step by step: where the rotor stops or changes its point on the way. */
function followed(prepared: Prepared, index: number): number {
  const run = { ...runOf(prepared.problem, placesOf(prepared.radix, index)), angles: [] };
  return orNone(() => runDown(run).end.time);
}

/** What a run lasts [s], and the flag to add. */
export interface RunTime {
  time: number;
  flag: number;
}

function currentOf({ radix }: Prepared, { sizedRotor }: Work, index: number, flags: number): CurrentAt {
  if (!(flags & FLAG.scanned)) return fastCurrent;
  return isOpen(radix, sizedRotor) ? predictedCurrent(index) : scannedCurrent(index);
}

/**
 * How long a combination runs, from the charge to the cell's minimum under load or to empty, its winding settled.
 *
 *     t = N_p·C·∫dz/I_pack(V_oc(z));  1/I_pack a quadratic in V_oc through three operating points;  cells of varying resistance by {@link varyingTime}
 *
 * @param prepared - the question
 * @param work - this thread's memory, case and solution of the combination in it
 * @param index - of the combination [-]
 * @param flags - of the combination [-]
 * @param out - written: time [s], NaN where even {@link runDown} has none, and FLAG.steppedRun or 0
 * @returns nothing
 *
 * Valid within 0.1 % of {@link runDown} without a thermal time constant. Source: docs/method/choosing.md
 */
export function runTime(prepared: Prepared, work: Work, index: number, flags: number, out: RunTime): void {
  const table = prepared.packs[work.pack];
  const { voltage, minimumVoltage, cellResistance } = table;
  const { supply } = prepared.problem.fixed;
  const current = prepared.problem.duties[work.duty] * work.solution[WARM_RESULT.current] + supply.auxCurrent;
  out.flag = 0;
  out.time = 0;
  if (voltage - cellResistance * current <= minimumVoltage) return;
  const fall = lastFall(table, current);
  if (fall > -FLAT * voltage) {
    const step = stepAt(table, minimumVoltage + cellResistance * current);
    out.time = (table.capacity * momentAt(table, 0, step)) / current;
    return;
  }
  const currentAt = currentOf(prepared, work, index, flags);
  const half = middleFall(table, fall, current);
  const last = { fall, current: currentAt(prepared, work, voltage + fall) };
  const middle = { fall: half, current: currentAt(prepared, work, voltage + half) };
  if (last.current > 0 && middle.current > 0) {
    const inverse = inverseOf(current, middle, last);
    const { varying: steps } = table;
    out.time = steps ? varyingTime({ ...table, steps, inverse }) : quadrature(table, inverse, last);
  } else {
    out.flag = FLAG.steppedRun;
    out.time = followed(prepared, index);
  }
}
