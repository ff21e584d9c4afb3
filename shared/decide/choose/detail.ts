import { type Column, FLAG, STORED } from "./columns.ts";
import { familyOf, massOf, standOf } from "./input.ts";
import { createReading, read } from "./judged.ts";
import { breaks, brokenLimits, PLACE } from "./limits.ts";
import { placesOf } from "./places.ts";
import type { Prepared } from "./prepare.ts";
import type { ChosenSet } from "./result.ts";
import { timeAlone } from "./solveChunk.ts";
import { trustOf } from "./trust.ts";
import { placeIn, type Results } from "./values.ts";

const finite = (value: number): number | null => (Number.isFinite(value) ? value : null);

/** The time as stored, found now where it was not and the motor turns. */
function timeOf(prepared: Prepared, index: number, stored: number, flags: number): number {
  if (!Number.isNaN(stored) || flags & (FLAG.noPoint | FLAG.unsolved)) return stored;
  return timeAlone(prepared, index);
}

/**
 * One set in full: its parts, its numbers, how far they can be trusted, and why it is out.
 *
 *     "why not?": the limits it breaks in the order of LIMITS, the first one first
 *
 * @param prepared - the question
 * @param results - solved sets
 * @param index - of the set [-]
 * @returns the set, SI; null for what is infinite or not known
 * @throws {OutOfRangeError} on an index that was not solved
 *
 * Valid for any results; a time that was not stored is found here
 */
export function detailOf(prepared: Prepared, results: Results, index: number): ChosenSet {
  const { problem, radix } = prepared;
  const { chunk, at } = placeIn(results, index);
  const reading = createReading();
  read(prepared, chunk, at, reading);
  const { set, values, allowed } = reading;
  const time = timeOf(prepared, index, chunk.time[at], set.flags);
  values[PLACE.time] = time;
  const late = breaks(PLACE.time, time, allowed[PLACE.time]) ? 1 << PLACE.time : 0;
  const places = placesOf(radix, index);
  const rotor = familyOf(problem, places);
  const { diameter } = rotor.sizes[places.size];
  const stored = Object.fromEntries(STORED.map((name) => [name, finite(chunk[name][at])]));
  return {
    index,
    places,
    parts: {
      motor: problem.motors[places.motor].id,
      rotor: rotor.id,
      pack: problem.packs[places.pack].id,
      skirt: standOf(problem, places).id,
    },
    diameter,
    gap: places.open ? null : problem.skirts[places.skirt].gaps[places.gap],
    duty: problem.duties[places.duty],
    values: {
      ...stored,
      time: finite(time),
      margin: finite(Math.min(set.parked, set.driving)),
      mass: massOf(problem, places),
      rotorFactor: finite(values[PLACE.rotorFactor]),
      height: values[PLACE.height],
      price: finite(values[PLACE.price]),
    } as Record<Column, number | null>,
    trust: trustOf(rotor, diameter, set.speed, set.flags),
    broken: brokenLimits(chunk.broken[at] | late, values, allowed),
  };
}
