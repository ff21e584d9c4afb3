import type { Chunk } from "./columns.ts";
import { type Judged, writeAllowed, writeValues } from "./limits.ts";
import { writeDigits } from "./places.ts";
import type { Prepared } from "./prepare.ts";
import { LIMITS } from "./result.ts";

/** One stored combination, read again: its digits, its stored numbers, what it has of each limit and what is allowed. */
export interface Reading {
  readonly judged: { -readonly [K in keyof Judged]: number };
  /** by place of LIMITS [SI] */
  readonly values: Float64Array;
  readonly allowed: Float64Array;
}

/** @returns memory for reading combinations one after another */
export function createReading(): Reading {
  return {
    judged: {
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
 * Reads one stored combination.
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
  const { judged, values, allowed } = reading;
  const { motor, pack } = judged;
  writeDigits(prepared.radix, chunk.from + at, judged);
  judged.flags = chunk.flags[at];
  judged.speed = chunk.speed[at];
  judged.parked = chunk.parked[at];
  judged.driving = chunk.driving[at];
  judged.crossing = chunk.crossing[at];
  judged.windingTemperature = chunk.windingTemperature[at];
  judged.packCurrent = chunk.packCurrent[at];
  judged.time = chunk.time[at];
  judged.keptTime = chunk.keptTime[at];
  if (judged.motor !== motor || judged.pack !== pack)
    writeAllowed(prepared, judged.motor, judged.pack, allowed);
  writeValues(prepared, judged, values);
}
