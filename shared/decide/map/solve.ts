import { requirePositive } from "../../numeric/errors.ts";
import { isPropeller } from "../../physics/predictAny.ts";
import { FLAG } from "../choose/columns.ts";
import { holdNeeds, marginOf } from "../choose/holdNeeds.ts";
import { prepare } from "../choose/prepare.ts";
import { RUN, solveChunk } from "../choose/solveChunk.ts";
import { cellOf, checkAxes, type MapAxis, type MapQuestion, mapProblem } from "./grid.ts";
import type { MapBuild, MapKey } from "./place.ts";

/** What is mapped, row by row from the first y upwards [SI]; NaN where there is no answer. */
export interface MapField {
  readonly columns: number;
  readonly rows: number;
  /** least over the wanted attitudes; infinite where no pull is needed [-] */
  readonly margin: Float64Array;
  /** [K] */
  readonly winding: Float64Array;
  /** burst speed over speed [-]; NaN: not known, infinite where the rotor stands */
  readonly burst: Float64Array;
  /** to the end of the charge [s]; NaN where it wasn't asked for */
  readonly time: Float64Array;
}

/** Solved combinations of a map, from one up to another; plain data, fit to come from another thread. */
export interface MapPart extends Pick<MapField, "margin" | "winding" | "burst" | "time"> {
  readonly from: number;
  readonly to: number;
  /** F_s [N] */
  readonly suction: Float64Array;
}

/** Where no gap gives these move no operating point, only what it holds: they are asked of one solution. */
const HELD: readonly MapKey[] = ["mass", "wheelFriction"];

const isHeld = ({ of }: MapQuestion, { key }: MapAxis): boolean =>
  HELD.includes(key) && (isPropeller(of.input) || (of.input.vehicle.verticalStiffness ?? null) === null);

/** The question whose combinations are solved: an axis that moves no operating point stands still. */
function solvedOf(question: MapQuestion): MapQuestion {
  const still = (axis: MapAxis): MapAxis =>
    isHeld(question, axis) ? { key: axis.key, values: axis.values.slice(0, 1) } : axis;
  return { ...question, x: still(question.x), y: still(question.y) };
}

/**
 * How the operating points of a map are cut into parts for threads.
 *
 *     each part begins a run of its own, so that the cuts change no digit
 *
 * @param question - two axes [SI]
 * @param threads - at most so many parts [-]
 * @returns ranges of combinations, from one up to another [-]
 *
 * Valid for {@link mapPart}
 */
export function partsOf(question: MapQuestion, threads: number): (readonly [from: number, to: number])[] {
  const { x, y } = solvedOf(question);
  const count = x.values.length * y.values.length;
  const runs = Math.ceil(count / RUN);
  const cuts = Array.from({ length: threads + 1 }, (_, i) =>
    Math.min(count, Math.round((runs * i) / threads) * RUN),
  );
  return cuts.slice(1).flatMap((to, i) => (to > cuts[i] ? [[cuts[i], to] as const] : []));
}

/**
 * A part of a map's operating points.
 *
 *     every point solved in full, by the search's engine
 *
 * @param question - the build and two axes [SI]
 * @param range - combinations from one up to another [-]
 * @returns what they have [-, N, K, s]; NaN where there is no answer
 * @throws {OutOfRangeError} {NotEnoughDataError} as the search
 *
 * Valid for rotors of both kinds. Source: docs/method/map.md
 */
export function mapPart(question: MapQuestion, [from, to]: readonly [number, number]): MapPart {
  checkAxes(question);
  const prepared = prepare(mapProblem(solvedOf(question)));
  const chunk = solveChunk(prepared, from, to);
  const sizes = prepared.radix.sizedRotors.length;
  const perSize = prepared.count / prepared.radix.motors / sizes;
  const margin = new Float64Array(chunk.count);
  const burst = new Float64Array(chunk.count);
  for (let i = 0; i < chunk.count; i++) {
    const answered = (chunk.flags[i] & FLAG.unsolved) === 0;
    const size = Math.floor((from + i) / perSize) % sizes;
    margin[i] = answered ? Math.min(chunk.parked[i], chunk.driving[i]) : Number.NaN;
    const burstSpeed = prepared.burstSpeeds[size] ?? Number.NaN;
    burst[i] = chunk.speed[i] > 0 ? burstSpeed / chunk.speed[i] : Number.POSITIVE_INFINITY;
  }
  const suction = chunk.suction.map((pull, i) => (Number.isNaN(margin[i]) ? Number.NaN : pull));
  const winding = chunk.windingTemperature.slice();
  const time = question.timed ? chunk.time.slice() : new Float64Array(chunk.count).fill(Number.NaN);
  return { from, to, margin, suction, winding, burst, time };
}

/** Least margin of a pull by mass [kg] and friction [-], where the operating point hangs on neither. */
function heldMargins({ input: { vehicle }, attitudes }: MapBuild, frictions: readonly number[]) {
  const needs = frictions.map((wheelFriction) =>
    (["parked", "driving"] as const).map((mode) => holdNeeds({ ...vehicle, wheelFriction }, attitudes, mode)),
  );
  return (pull: number, mass: number, friction: number): number => {
    if (Number.isNaN(pull)) return Number.NaN;
    const [parked, driving] = needs[friction];
    const pulling = Math.max(0, pull);
    return Math.min(marginOf(parked, mass, pulling), marginOf(driving, mass, pulling));
  };
}

/** Where a cell's mass and friction lie in their lists; 0 where it is no axis. */
function listed(question: MapQuestion, key: MapKey, own: number) {
  const { x, y } = question;
  const axis = [x, y].find((each) => each.key === key);
  const place = (column: number, row: number) => (x.key === key ? column : y.key === key ? row : 0);
  return { values: axis?.values ?? [own], place };
}

/**
 * The parts of a map put together.
 *
 *     margins over mass and friction from one solution, F/(m·F_required per mass), where no gap gives
 *
 * @param question - the build and two axes [SI]
 * @param parts - each operating point in one of them
 * @returns the field [-, K, s]
 * @throws {OutOfRangeError} on a mass that is not above 0, a vehicle that can't be
 *
 * Valid and source: as {@link mapPart}
 */
export function mapOf(question: MapQuestion, parts: readonly MapPart[]): MapField {
  const { x, y, of } = question;
  const [columns, rows] = [x.values.length, y.values.length];
  const [heldX, heldY] = [isHeld(question, x), isHeld(question, y)];
  const solved = solvedOf(question);
  const across = solved.x.values.length;
  const source = new Int32Array(across * solved.y.values.length);
  const owner = new Uint8Array(source.length);
  const at = cellOf(solved);
  parts.forEach((part, p) => {
    for (let index = part.from; index < part.to; index++) {
      source[at(index)] = index - part.from;
      owner[at(index)] = p;
    }
  });
  const column = () => new Float64Array(columns * rows);
  const field = { columns, rows, margin: column(), winding: column(), burst: column(), time: column() };
  const mass = listed(question, "mass", of.input.vehicle.mass);
  const friction = listed(question, "wheelFriction", of.input.vehicle.wheelFriction);
  for (const each of mass.values) requirePositive("vehicle.mass", each);
  const held = heldX || heldY ? heldMargins(of, friction.values) : null;
  for (let row = 0; row < rows; row++)
    for (let col = 0; col < columns; col++) {
      const from = (heldY ? 0 : row) * across + (heldX ? 0 : col);
      const part = parts[owner[from]];
      const i = source[from];
      const cell = row * columns + col;
      field.winding[cell] = part.winding[i];
      field.burst[cell] = part.burst[i];
      field.time[cell] = part.time[i];
      field.margin[cell] = held
        ? held(part.suction[i], mass.values[mass.place(col, row)], friction.place(col, row))
        : part.margin[i];
    }
  return field;
}
