import { OutOfRangeError } from "../../numeric/errors.ts";
import { WINDING_REFERENCE_TEMPERATURE } from "../../physics/constants.ts";
import { WARM_RESULT } from "../../physics/point/newtonWarm.ts";
import { thrustOf } from "../../physics/point/propellerWarm.ts";
import { type Chunk, chunkOver, FLAG } from "./columns.ts";
import { crossingMargin } from "./crossing.ts";
import { isMovable, writeGapAsSet } from "./gapLaw.ts";
import { generalMargins } from "./generalMargin.ts";
import { givingMargins } from "./givingMargin.ts";
import { marginOf } from "./holdNeeds.ts";
import { ductedInput } from "./input.ts";
import { keptTimeOf } from "./keptTime.ts";
import { breaks, brokenBits, isLimited, PLACE, writeAllowed, writeValues } from "./limits.ts";
import { isOpen, placesOf } from "./places.ts";
import type { Prepared } from "./prepare.ts";
import { fastSuction, scannedSuction } from "./pullOf.ts";
import { type RunTime, runTime } from "./runTime.ts";
import { solveCombination } from "./solveCombination.ts";
import { sumAt } from "./sums.ts";
import { createWork, type Work, writeCombination } from "./work.ts";

/** Combinations that may start from each other: a chunk that begins inside a run solves its beginning too, so that where chunks end changes no digit. */
export const RUN = 1024;

/** The combination that is being judged, and the room for its time; one object a thread, written anew for each combination. */
interface Row extends RunTime {
  motor: number;
  sizedRotor: number;
  pack: number;
  duty: number;
  fittedSkirt: number;
  flags: number;
  speed: number;
  flow: number;
  pressure: number;
  suction: number;
  parked: number;
  driving: number;
  crossing: number;
  windingTemperature: number;
  packCurrent: number;
  keptTime: number;
}

const emptyRow = (): Row => ({
  motor: 0,
  sizedRotor: 0,
  pack: 0,
  duty: 0,
  fittedSkirt: 0,
  flags: 0,
  speed: 0,
  flow: 0,
  pressure: 0,
  suction: 0,
  parked: 0,
  driving: 0,
  crossing: Number.NaN,
  windingTemperature: 0,
  packCurrent: 0,
  time: 0,
  keptTime: Number.NaN,
  flag: 0,
});

function writeStanding(row: Row): void {
  row.speed = 0;
  row.flow = 0;
  row.pressure = 0;
  row.suction = 0;
  row.windingTemperature = Number.NaN;
  row.packCurrent = Number.NaN;
}

/** What presses the vehicle on, by a rotor in a duct. */
function writePull(prepared: Prepared, work: Work, row: Row): void {
  const { solution } = work;
  const phi = solution[WARM_RESULT.phi];
  const { phiMin, phiMax } = prepared.problem.rotors[prepared.radix.sizedRotors[row.sizedRotor].outer];
  if (phi < phiMin || phi > phiMax) row.flags |= FLAG.extrapolated;
  const fitted = prepared.fittedSkirts[work.fittedSkirt];
  row.suction =
    row.flags & FLAG.scanned
      ? scannedSuction(prepared, fitted, fitted, solution)
      : fastSuction(prepared, fitted, fitted, work.c, solution);
}

/** What presses the vehicle on, by a propeller. */
function writeThrust({ propellers, radix }: Prepared, row: Row): void {
  const load = propellers[row.sizedRotor - radix.ducted.rotors];
  row.suction = Math.max(0, thrustOf(load, row.speed));
  if (row.speed < load.tested[0] || row.speed > load.tested[1]) row.flags |= FLAG.extrapolated;
}

function writeTurning(prepared: Prepared, work: Work, row: Row): void {
  const { solution } = work;
  const { fixed, duties } = prepared.problem;
  const { thermalResistance } = prepared.motors[row.motor];
  const current = solution[WARM_RESULT.current];
  const heat = current * current * solution[WARM_RESULT.windingResistance];
  row.speed = solution[WARM_RESULT.speed];
  row.flow = solution[WARM_RESULT.flow];
  row.pressure = solution[WARM_RESULT.pressure];
  if (isOpen(prepared.radix, row.sizedRotor)) writeThrust(prepared, row);
  else writePull(prepared, work, row);
  row.windingTemperature =
    thermalResistance === null
      ? WINDING_REFERENCE_TEMPERATURE
      : fixed.air.temperature + thermalResistance * heat;
  row.packCurrent = duties[row.duty] * current + fixed.supply.auxCurrent;
}

function solveRow(prepared: Prepared, work: Work, row: Row, index: number): void {
  row.motor = work.motor;
  row.sizedRotor = work.sizedRotor;
  row.pack = work.pack;
  row.duty = work.duty;
  row.fittedSkirt = work.fittedSkirt;
  row.flags = solveCombination(prepared, work, index, (index / RUN) | 0);
  if (prepared.motors[row.motor].thermalResistance === null) row.flags |= FLAG.coldWinding;
  if (row.flags & (FLAG.noPoint | FLAG.unsolved)) writeStanding(row);
  else writeTurning(prepared, work, row);
  row.time = Number.NaN;
  row.keptTime = Number.NaN;
}

/** Margins where the running gear gives: by the fast solvers where they take the combination, else by the general one. */
function writeGivingMargins(prepared: Prepared, work: Work, row: Row, index: number): void {
  const fitted = prepared.fittedSkirts[row.fittedSkirt];
  const { fast } = fitted;
  if (fast && (row.flags & FLAG.scanned) === 0 && isMovable(fitted)) {
    const moving = { prepared, work, fitted, place: fitted, fast };
    work.aside.set(work.solution);
    const sure = givingMargins(moving, sumAt(prepared.sums.mass, row), row);
    writeGapAsSet(moving);
    if (sure) return;
  }
  const least = generalMargins(prepared, ductedInput(prepared.problem, placesOf(prepared.radix, index)));
  row.parked = least("parked");
  row.driving = least("driving");
}

/** Margins over the attitudes that are wanted. */
function writeMargins(prepared: Prepared, work: Work, row: Row, index: number): void {
  const pulling = Math.max(0, row.suction);
  const mass = sumAt(prepared.sums.mass, row);
  const { parked, driving } = prepared.needs[row.fittedSkirt];
  if (prepared.gives && pulling > 0 && !isOpen(prepared.radix, row.sizedRotor))
    writeGivingMargins(prepared, work, row, index);
  else {
    row.parked = marginOf(parked, mass, pulling);
    row.driving = marginOf(driving, mass, pulling);
  }
  row.crossing = crossingMargin(prepared, work, index, row);
}

const isOneBit = (bits: number): boolean => (bits & (bits - 1)) === 0;
const NO_RUN = 1 << PLACE.point;

/** Limits that a row breaks, its times left aside. */
function brokenBut(prepared: Prepared, { values, allowed, limited }: Work, row: Row): number {
  if (!limited) return row.flags & (FLAG.noPoint | FLAG.unsolved) ? NO_RUN : 0;
  writeValues(prepared, row, values);
  return brokenBits(values, allowed, PLACE.time);
}

/** Whether one more limit can still decide: no other one broken, or one alone. */
const decides = (others: number, asked: boolean): boolean =>
  others === 0 || (asked && isOneBit(others) && others !== NO_RUN);

const withBit = (bits: number, place: number, value: number, { allowed }: Work): number =>
  breaks(place, value, allowed[place]) ? bits | (1 << place) : bits;

const isAsked = ({ allowed }: Work, place: number): boolean => allowed[place] > Number.NEGATIVE_INFINITY;

/** Judges a row; its times are found where they can still decide. */
function judgeRow(prepared: Prepared, work: Work, row: Row, index: number): number {
  let bits = brokenBut(prepared, work, row);
  if (prepared.problem.wants.untimed) return bits;
  if (decides(bits, isAsked(work, PLACE.time))) {
    runTime(prepared, work, index, row.flags, row);
    row.flags |= row.flag;
    bits = withBit(bits, PLACE.time, row.time, work);
  }
  if (!(isAsked(work, PLACE.keptTime) && decides(bits, true))) return bits;
  row.keptTime = keptTimeOf(prepared, work, index);
  return withBit(bits, PLACE.keptTime, row.keptTime, work);
}

function store(chunk: Chunk, at: number, row: Row, broken: number): void {
  chunk.speed[at] = row.speed;
  chunk.flow[at] = row.flow;
  chunk.pressure[at] = row.pressure;
  chunk.suction[at] = row.suction;
  chunk.parked[at] = row.parked;
  chunk.driving[at] = row.driving;
  chunk.crossing[at] = row.crossing;
  chunk.windingTemperature[at] = row.windingTemperature;
  chunk.packCurrent[at] = row.packCurrent;
  chunk.time[at] = row.time;
  chunk.keptTime[at] = row.keptTime;
  chunk.flags[at] = row.flags;
  chunk.broken[at] = broken;
}

function checkRange({ count }: Prepared, from: number, to: number): void {
  if (!(Number.isInteger(from) && from >= 0 && from < count))
    throw new OutOfRangeError("from", from, `a whole number, 0 to ${count - 1}`);
  if (!(Number.isInteger(to) && to > from && to <= count))
    throw new OutOfRangeError("to", to, `a whole number, ${from + 1} to ${count}`);
}

/**
 * Solves and judges the combinations from one index up to another.
 *
 *     prediction, run time and limits of each combination, its own mass included
 *
 * @param prepared - from {@link prepare}
 * @param from - first index [-]
 * @param to - behind the last one [-]
 * @param into - chunk where the results go; new unless given
 * @returns the chunk, SI; `time` and `keptTime` NaN where they decide nothing (two other limits broken), see {@link timeAlone}, {@link keptTimeAlone}
 * @throws {OutOfRangeError} on a range that holds no combination
 *
 * Valid for any question. Where chunks begin and end changes no digit. Source: docs/method/choosing.md
 *
 * @example
 * const { problem } = chooseProblem(book, chooseRequest.parse({
 *   build: "pane-crawler",
 *   motors: ["bell-18", "brushed-20"],
 *   rotors: [{ rotor: "swept-nine" }],
 *   packs: ["two-cell-450"],
 *   skirts: [{ skirt: "square-lip", gaps: { from: 3e-4, to: 9e-4, step: 1e-4 } }],
 *   duties: [0.8, 1],
 * }));
 * const prepared = prepare(problem);
 * const results = gathered([solveChunk(prepared, 0, prepared.count)]);
 * prepared.count; // → 56
 * const [best] = rankedPage(prepared, results, { column: "margin", want: "most" }, { skip: 0, count: 1 });
 * placesOf(prepared.radix, best).gap; // → 0
 */
export function solveChunk(prepared: Prepared, from: number, to: number, into?: Chunk): Chunk {
  checkRange(prepared, from, to);
  const chunk = into ?? chunkOver(from, to - from);
  const work = createWork(prepared);
  const row = emptyRow();
  let [motor, pack] = [-1, -1];
  for (let index = from - (from % RUN); index < to; index++) {
    writeCombination(prepared, work, index);
    if (work.motor !== motor || work.pack !== pack) {
      [motor, pack] = [work.motor, work.pack];
      writeAllowed(prepared, motor, pack, work.allowed);
      work.limited = isLimited(work.allowed);
    }
    solveRow(prepared, work, row, index);
    if (index < from) continue;
    writeMargins(prepared, work, row, index);
    store(chunk, index - from, row, judgeRow(prepared, work, row, index));
  }
  return chunk;
}
