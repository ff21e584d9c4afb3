import type { Chunk } from "./columns.ts";
import { type Judged, writeAllowed, writeValues } from "./limits.ts";
import { writeDigits } from "./places.ts";
import type { Prepared } from "./prepare.ts";
import { LIMITS } from "./result.ts";

/** One stored set, read again: its digits, its stored numbers, what it has of each limit and what is allowed. */
export interface Reading {
  readonly set: { -readonly [K in keyof Judged]: number };
  /** by place of LIMITS [SI] */
  readonly values: Float64Array;
  readonly allowed: Float64Array;
}

/** @returns memory for reading sets one after another */
export function createReading(): Reading {
  return {
    set: {
      motor: -1,
      sizedRotor: 0,
      pack: -1,
      duty: 0,
      fittedSkirt: 0,
      flags: 0,
      speed: 0,
      parked: 0,
      driving: 0,
      crossing: 0,
      windingTemperature: 0,
      packCurrent: 0,
      time: 0,
      keptTime: 0,
    },
    values: new Float64Array(LIMITS.length),
    allowed: new Float64Array(LIMITS.length),
  };
}

/**
 * Reads one stored set.
 *
 *     its digits from the index, values and allowed values of every limit from its numbers
 *
 * @param prepared - the question
 * @param chunk - that holds it
 * @param at - place in the chunk [-]
 * @param reading - written
 * @returns nothing
 *
 * Valid for chunks of the question; allocates nothing
 */
export function read(prepared: Prepared, chunk: Chunk, at: number, reading: Reading): void {
  const { set, values, allowed } = reading;
  const { motor, pack } = set;
  writeDigits(prepared.radix, chunk.from + at, set);
  set.flags = chunk.flags[at];
  set.speed = chunk.speed[at];
  set.parked = chunk.parked[at];
  set.driving = chunk.driving[at];
  set.crossing = chunk.crossing[at];
  set.windingTemperature = chunk.windingTemperature[at];
  set.packCurrent = chunk.packCurrent[at];
  set.time = chunk.time[at];
  set.keptTime = chunk.keptTime[at];
  if (set.motor !== motor || set.pack !== pack) writeAllowed(prepared, set.motor, set.pack, allowed);
  writeValues(prepared, set, values);
}
