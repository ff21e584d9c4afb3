import { keptTimeAlone, timeAlone } from "./alone.ts";
import { type Column, FLAG, STORED } from "./columns.ts";
import { familyOf, massOf, standOf } from "./input.ts";
import { createReading, type Reading, read } from "./judged.ts";
import { breaks, brokenLimits, PLACE } from "./limits.ts";
import { placesOf } from "./places.ts";
import type { Prepared } from "./prepare.ts";
import type { Combination } from "./result.ts";
import { trustOf } from "./trust.ts";
import { placeIn, type Results } from "./values.ts";

const finite = (value: number): number | null => (Number.isFinite(value) ? value : null);

const STANDS = FLAG.noPoint | FLAG.unsolved;

/**
 * Writes a reading's times: as stored, found now where they were not and the motor turns.
 *
 *     as {@link timeAlone}, and as {@link keptTimeAlone} where keeping the margin is a wish
 *
 * @param prepared - the question
 * @param index - of the combination [-]
 * @param reading - of it; its values are written, times [s]
 * @returns bits of the limits of time that it breaks [-]
 * @throws {OutOfRangeError} on an index that counts no combination
 *
 * Valid as the two
 */
export function writeTimes(prepared: Prepared, index: number, { judged, values, allowed }: Reading): number {
  const stands = (judged.flags & STANDS) !== 0;
  const found = (stored: number, alone: typeof timeAlone) =>
    stands || !Number.isNaN(stored) ? stored : alone(prepared, index);
  values[PLACE.time] = found(judged.time, timeAlone);
  if (allowed[PLACE.keptTime] > Number.NEGATIVE_INFINITY)
    values[PLACE.keptTime] = found(judged.keptTime, keptTimeAlone);
  return [PLACE.time, PLACE.keptTime].reduce(
    (bits, place) => (breaks(place, values[place], allowed[place]) ? bits | (1 << place) : bits),
    0,
  );
}

/**
 * One combination in full: its parts, its numbers, how far they can be trusted, and why it is out.
 *
 *     "why not?": the limits it breaks in the order of LIMITS, the first one first
 *
 * @param prepared - the question
 * @param results - solved combinations
 * @param index - of the combination [-]
 * @returns the combination, SI; null for what is infinite or not known
 * @throws {OutOfRangeError} on an index that was not solved
 *
 * Valid for any results; a time that was not stored is found here
 */
export function detailOf(prepared: Prepared, results: Results, index: number): Combination {
  const { problem, radix } = prepared;
  const { chunk, at } = placeIn(results, index);
  const reading = createReading();
  read(prepared, chunk, at, reading);
  const { judged, values, allowed } = reading;
  const late = writeTimes(prepared, index, reading);
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
      time: finite(values[PLACE.time]),
      keptTime: finite(values[PLACE.keptTime]),
      margin: finite(Math.min(judged.parked, judged.driving)),
      mass: massOf(problem, places),
      rotorFactor: finite(values[PLACE.rotorFactor]),
      height: values[PLACE.height],
      price: finite(values[PLACE.price]),
    } as Record<Column, number | null>,
    trust: trustOf(rotor, diameter, judged.speed, judged.flags),
    broken: brokenLimits(chunk.broken[at] | late, values, allowed),
  };
}
