import { OutOfRangeError } from "../numeric/errors.ts";
import { formatDigits } from "../units/format.ts";
import { worstAttitudeUnder } from "./hold/holdUnder.ts";
import { CONDITION_COUNT, compileHold, type HoldLaw } from "./hold/law.ts";
import type { Note } from "./note.ts";
import { type CycleSegment, type Judged, judgedAt, loadsOf } from "./rundown/cycle.ts";
import { cycleLaw } from "./rundown/cycleLaw.ts";
import {
  type End,
  type EndReason,
  endInside,
  type Fall,
  lowestCell,
  type MarginAt,
  marginLaw,
  passing,
  type Watch,
  watch,
} from "./rundown/events.ts";
import { checkRundown, DEFAULT_TARGET_MARGIN, type RundownInput, stepOf } from "./rundown/input.ts";
import { type Moment, type RundownLaw, steadyLaw } from "./rundown/law.ts";
import { chargeLeftAfter } from "./rundown/length.ts";
import { rundownNotes } from "./rundown/notes.ts";
import { stepped } from "./rundown/step.ts";

export type { CycleSegment } from "./rundown/cycle.ts";
export type { Fall } from "./rundown/events.ts";
export type { CellInput, RundownInput } from "./rundown/input.ts";

export type Sample = Pick<
  Moment,
  | "time"
  | "charge"
  | "packVoltage"
  | "cellVoltage"
  | "rpm"
  | "pressure"
  | "suction"
  | "packCurrent"
  | "windingTemperature"
> & {
  /** δ; only where a suction is kept [-] */
  readonly duty?: number;
  /** the same moment under each load of the drive cycle, by rising current; the figures beside it are their mean then */
  readonly loads?: readonly LoadSample[];
};

/** A moment under one load of the drive cycle. */
export interface LoadSample {
  /** [A] */
  readonly driveCurrent: number;
  /** F_s, jet included, or thrust [N] */
  readonly suction: number;
  readonly packVoltage: number;
  /** of one cell, loaded [V] */
  readonly cellVoltage: number;
}

export interface AttitudeFalls {
  /** θ [°] */
  readonly angle: number;
  /** the driving margin falls below 1 */
  readonly holds: Fall;
  /** the driving margin falls below the target */
  readonly target: Fall;
  /** with a drive cycle: the load it is judged by, and whether parked or driving */
  readonly judged?: { readonly driveCurrent: number; readonly parked: boolean };
}

export interface Rundown {
  readonly end: { readonly time: number; readonly reason: EndReason };
  readonly attitudes: readonly AttitudeFalls[];
  readonly samples: readonly Sample[];
  readonly warnings: readonly Note[];
  /** only where a suction is kept */
  readonly keep?: Kept;
}

/** How a controller that keeps a suction fares. */
export interface Kept {
  /** δ [-] */
  readonly dutyAtStart: number;
  /** from then on even full throttle is too little [s]; null: never */
  readonly fullThrottleFrom: number | null;
}

/** Longest run: twelve hours at the usual step of a second. */
const MOST_STEPS = 43_200;
/** Rows of the answer, about. */
const MOST_SAMPLES = 300;
const [WALL, CEILING] = [90, 180];

interface Watched {
  readonly angle: number;
  readonly judged: Judged | null;
  readonly marginAt: MarginAt;
  readonly holds: Watch;
  readonly target: Watch;
}

function anglesOf(input: RundownInput, hold: HoldLaw, start: Moment): number[] {
  if (input.angles) return [...new Set(input.angles)];
  const worst = worstAttitudeUnder(hold, CONDITION_COUNT, start.pull);
  return [...new Set([WALL, CEILING, worst])].filter((angle) => angle > 0);
}

function watched(input: RundownInput, law: RundownLaw, start: Moment): Watched[] {
  const hold = compileHold(input.vehicle);
  return anglesOf(input, hold, start).map((angle) => {
    const judged = isCycle(input.cycle) ? judgedAt(input.cycle, angle) : null;
    const marginAt = marginLaw(hold, angle, judged);
    const level = input.targetMargin ?? DEFAULT_TARGET_MARGIN;
    const holds = watch(law, marginAt, 1, start, judged);
    return { angle, judged, marginAt, holds, target: watch(law, marginAt, level, start, judged) };
  });
}

function tooLong(input: RundownInput, charge: number): OutOfRangeError {
  const step = stepOf(input);
  const hours = (MOST_STEPS * step) / 3600;
  const left = (100 * charge).toFixed(0);
  const allowed = `a run of at most ${formatDigits(hours, 3)} h (${MOST_STEPS} steps of ${step} s); this one has ${left} % of its charge left then`;
  return new OutOfRangeError("pack.cell.capacity", input.pack.cell.capacity, allowed);
}

/** So far above the longest run, in estimated time, a run is refused before it is made; nearer to it its steps decide. */
const PLAINLY = 1.1;

function refusePlainlyTooLong(input: RundownInput, law: RundownLaw, start: Moment): void {
  const step = stepOf(input);
  const after = (steps: number) => chargeLeftAfter(law, start, input.pack.cell.minimumVoltage, steps * step);
  if (after(PLAINLY * MOST_STEPS) === null) return;
  throw tooLong(input, after(MOST_STEPS) ?? 0);
}

interface Run {
  readonly rows: readonly Moment[];
  readonly reason: EndReason;
}

function run(input: RundownInput, law: RundownLaw, start: Moment, watches: readonly Watched[]): Run {
  const { minimumVoltage } = input.pack.cell;
  const step = stepOf(input);
  const rows = [start];
  if (lowestCell(start) <= minimumVoltage) return { rows, reason: "minimum-voltage" };
  let now = start;
  let end: End | null = null;
  while (!end) {
    if (rows.length > MOST_STEPS) throw tooLong(input, now.charge);
    const next = stepped(law, now, step);
    end = endInside(law, now, next, minimumVoltage);
    const reached = end?.moment ?? next;
    for (const { holds, target } of watches) {
      holds.see(now, reached);
      target.see(now, reached);
    }
    rows.push(reached);
    now = reached;
  }
  return { rows, reason: end.reason };
}

function isCycle(cycle: RundownInput["cycle"]): cycle is readonly CycleSegment[] {
  return cycle !== undefined && cycle.length > 0;
}

/**
 * The law of a build's run: under its drive cycle, or under a steady load where it has none.
 *
 *     as {@link cycleLaw} and {@link steadyLaw}
 *
 * @param input - build with its cell, all SI [-]
 * @returns the law, asked by time [s], charge [-] and winding rise [K]
 * @throws {OutOfRangeError} with the path of a number that can't be
 *
 * Valid and source: as there
 */
export function rundownLaw(input: RundownInput): RundownLaw {
  return isCycle(input.cycle) ? cycleLaw(input, input.cycle) : steadyLaw(input);
}

function loadSamples(moment: Moment, { cycle }: RundownInput): Pick<Sample, "loads"> {
  const { under } = moment;
  if (!under || !cycle) return {};
  const loads = loadsOf(cycle).map(({ driveCurrent }, i) => {
    const { suction, packVoltage, cellVoltage } = under[i];
    return { driveCurrent, suction, packVoltage, cellVoltage };
  });
  return { loads };
}

function sampleOf(moment: Moment, input: RundownInput): Sample {
  const { time, charge, packVoltage, cellVoltage } = moment;
  const { rpm, pressure, suction, packCurrent, windingTemperature } = moment;
  return {
    time,
    charge,
    packVoltage,
    cellVoltage,
    rpm,
    pressure,
    suction,
    packCurrent,
    windingTemperature,
    ...(input.keep ? { duty: moment.duty } : {}),
    ...loadSamples(moment, input),
  };
}

/** When full throttle begins to be too little, located inside its step. */
function keptThrough(input: RundownInput, law: RundownLaw, rows: readonly Moment[]): Pick<Rundown, "keep"> {
  if (!input.keep) return {};
  const [start] = rows;
  const lost = rows.findIndex(({ spare }) => spare < 0);
  const before = rows[lost - 1];
  const within = before ? passing(law, before, rows[lost], ({ spare }) => spare) : 0;
  const from = (before ?? start).time + within;
  return { keep: { dutyAtStart: start.duty, fullThrottleFrom: lost < 0 ? null : from } };
}

function thinned(rows: readonly Moment[]): Moment[] {
  const every = Math.ceil(rows.length / MOST_SAMPLES);
  return rows.filter((_, i) => i % every === 0 || i === rows.length - 1);
}

const finiteOrNull = (margin: number): number | null => (Number.isFinite(margin) ? margin : null);

/** A run with the margins along it. */
export interface FollowedRun extends Rundown {
  /** by attitude, as the attitudes stand: driving, parked where a cycle only parks there, by sample [-]; null where no pull is needed */
  readonly margins: readonly (readonly (number | null)[])[];
}

/**
 * A run and the margins of each attitude along it.
 *
 *     as {@link runDown}, margins by {@link marginLaw} at its samples
 *
 * @param input - as {@link runDown} takes it, SI
 * @returns the run, and margins by attitude and sample [-]
 * @throws {OutOfRangeError} {NotEnoughDataError} as {@link runDown}
 *
 * Valid and source: as {@link runDown}
 */
export function followRun(input: RundownInput): FollowedRun {
  checkRundown(input);
  const law = rundownLaw(input);
  const start = law.momentAt(0, input.startCharge ?? 1, 0);
  refusePlainlyTooLong(input, law, start);
  const watches = watched(input, law, start);
  const { rows, reason } = run(input, law, start, watches);
  const shown = thinned(rows);
  return {
    end: { time: rows[rows.length - 1].time, reason },
    attitudes: watches.map((each) => fallsOf(each, input)),
    samples: shown.map((moment) => sampleOf(moment, input)),
    warnings: rundownNotes(input, law, rows),
    ...keptThrough(input, law, rows),
    margins: watches.map(({ marginAt }) => shown.map((moment) => finiteOrNull(marginAt(moment)))),
  };
}

function fallsOf({ angle, judged, holds, target }: Watched, { cycle }: RundownInput): AttitudeFalls {
  const falls = { angle, holds: holds.answer(), target: target.answer() };
  if (!judged || !cycle) return falls;
  const { driveCurrent } = loadsOf(cycle)[judged.load];
  return { ...falls, judged: { driveCurrent, parked: judged.parked } };
}

/**
 * A build from a state of charge to its end: when each attitude stops holding, and all that changes on the way.
 *
 *     dz/dt = −I_pack/(N_p·C_cell),  τ_th·dΔT/dt = I²·R_m(T)·R_th − ΔT;  ends at V_oc(z) − R_cell·I_pack/N_p = V_min or z = 0;  a kept suction sets δ
 *
 * @param input - build with its cell, all SI; start charge, target margin [-], step [s], attitudes [°], drive cycle [°, -, A]
 * @returns end [s], falls of each attitude's driving margin (parked where a cycle only parks it there) [s, V], samples in SI units (rpm [rpm]), warnings
 * @throws {OutOfRangeError} with the path of a number that can't be; on a run of more than 43 200 steps
 * @throws {NotEnoughDataError} on a curve that stops short, a time constant without a thermal resistance, a rotor curve that doesn't reach the leak
 *
 * Valid for slow changes: rotor and pressure follow at once. Without a time constant the winding is settled at every moment, or cold where its thermal resistance isn't known.
 * Source: classical Runge–Kutta method; docs/method/run-down.md
 */
export function runDown(input: RundownInput): Rundown {
  const { margins: _along, ...run } = followRun(input);
  return run;
}
