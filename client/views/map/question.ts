import { findById } from "../../../shared/book/book.ts";
import { rotorBody } from "../../../shared/book/limitsInput.ts";
import { type Book, solvable } from "../../../shared/book/resolve.ts";
import { correctionAt } from "../../../shared/book/testedSizes.ts";
import { burstSpeedOf } from "../../../shared/decide/limits/rotor.ts";
import type { MapQuestion } from "../../../shared/decide/map/grid.ts";
import {
  MAP_KEYS,
  type MapBuild,
  type MapKey,
  type MapRotor,
  movedTo,
  type Place,
} from "../../../shared/decide/map/place.ts";
import { WINDING_ALARM } from "../../../shared/physics/point/notes.ts";
import { isPropeller } from "../../../shared/physics/predictAny.ts";
import type { Outcome } from "../../state/outcome.ts";
import { type Asked, freeKey } from "./asked.ts";
import { axisValues, settingBy } from "./settings.ts";

/** Where the build stands by each setting that moves it, SI: a propeller has no gap. */
export type Stands = Readonly<Partial<Record<MapKey, number>>>;

/** @returns where a solved build stands; null where it has no numbers */
export function standsOf({ build, resolved }: Outcome): Stands | null {
  const input = resolved && solvable(resolved);
  if (!input) return null;
  return {
    diameter: input.rotor.diameter,
    kv: input.motor.kv,
    series: input.pack.series,
    ...(isPropeller(input) ? {} : { gap: input.skirt.gap }),
    mass: input.vehicle.mass,
    duty: input.supply.duty,
    charge: build.charge,
    wheelFriction: input.vehicle.wheelFriction,
  };
}

/** @returns where a build stands by a setting that moves it [SI] */
export function standsAt(stands: Stands, key: MapKey): number {
  return stands[key] ?? Number.NaN;
}

/** @returns the settings that move a build, in the order of the menus */
export function movable(stands: Stands): MapKey[] {
  return MAP_KEYS.filter((key) => stands[key] !== undefined);
}

/** @returns what is asked, with what doesn't move this build left out: a setting that does stands in its place */
export function askedOf(stands: Stands, asked: Asked): Asked {
  const keys = movable(stands);
  const taken: MapKey[] = [];
  const place = (wanted: MapKey): MapKey => {
    const key = keys.includes(wanted) && !taken.includes(wanted) ? wanted : freeKey(taken, keys);
    taken.push(key);
    return key;
  };
  const [x, y, third] = [place(asked.x), place(asked.y), place(asked.third)];
  const moved = Object.fromEntries(
    Object.entries(asked.moved).filter(([key]) => keys.includes(key as MapKey)),
  );
  return { ...asked, x, y, third, moved };
}

/** @returns a build ready to be moved over maps, its rotor at the diameters asked for [m]; null as {@link standsOf} */
export function mapBuildOf(
  book: Book,
  { build, resolved }: Outcome,
  diameters: readonly number[],
): MapBuild | null {
  const rotor = findById(book.rotors, build.rotor)?.data;
  const input = resolved && solvable(resolved);
  if (!input || !resolved.pack || !rotor) return null;
  const sizes = resolved.rotor?.sizes ?? null;
  const at = (diameter: number): MapRotor => {
    const body = sizes && rotorBody(rotor, diameter);
    return {
      diameter,
      sizeCorrection: sizes && correctionAt(sizes, diameter),
      burstSpeed: body && burstSpeedOf(body, diameter),
    };
  };
  const motor = findById(book.motors, build.motor)?.data;
  return {
    input,
    cell: resolved.pack.cell,
    charge: build.charge,
    rotors: [...diameters, build.diameter].map(at),
    attitudes: [
      { angle: "worst", mode: "parked" },
      { angle: "worst", mode: "driving" },
    ],
    target: build.targetMargin,
    windingLimit: motor?.windingLimit ?? WINDING_ALARM,
  };
}

/**
 * The map that is asked for, as the engine takes it.
 *
 * @param book - the whole bench book
 * @param outcome - the build as it is stored, solved
 * @param asked - axes and what is moved
 * @param count - points along each axis [-]
 * @returns the question; null where the build has no numbers
 * @throws {OutOfRangeError} on a place that can't be
 */
export function questionOf(book: Book, outcome: Outcome, asked: Asked, count: number): MapQuestion | null {
  const stands = standsOf(outcome);
  if (!stands) return null;
  const own = askedOf(stands, asked);
  const axis = (key: MapKey) => ({ key, values: axisValues(settingBy(key), standsAt(stands, key), count) });
  const [x, y] = [axis(own.x), axis(own.y)];
  const others: Place = { ...own.moved, [own.x]: undefined, [own.y]: undefined };
  const diameters = [x, y].flatMap(({ key, values }) => (key === "diameter" ? values : []));
  const moved = others.diameter === undefined ? [] : [others.diameter];
  const of = mapBuildOf(book, outcome, [...diameters, ...moved]);
  return of && { of: movedTo(of, others), x, y, timed: own.shown === "minutes" };
}
