import { findById } from "../../../shared/book/book.ts";
import { rotorBody } from "../../../shared/book/limitsInput.ts";
import type { Book } from "../../../shared/book/resolve.ts";
import { testedSizes } from "../../../shared/book/rotorBasis.ts";
import { correctionAt } from "../../../shared/book/testedSizes.ts";
import { burstSpeedOf } from "../../../shared/decide/limits/rotor.ts";
import type { MapQuestion } from "../../../shared/decide/map/grid.ts";
import {
  type MapBuild,
  type MapKey,
  type MapRotor,
  movedTo,
  type Place,
} from "../../../shared/decide/map/place.ts";
import { WINDING_ALARM } from "../../../shared/physics/point/notes.ts";
import type { Outcome } from "../../state/outcome.ts";
import type { Asked } from "./asked.ts";
import { axisValues, settingBy } from "./settings.ts";

/** Where the build stands by each setting, SI. */
export type Stands = Readonly<Record<MapKey, number>>;

/** @returns where a solved build stands; null where it has no numbers, or an open propeller */
export function standsOf({ build, resolved }: Outcome): Stands | null {
  const input = resolved?.input;
  if (!input) return null;
  return {
    diameter: input.rotor.diameter,
    kv: input.motor.kv,
    series: input.pack.series,
    gap: input.skirt.gap,
    mass: input.vehicle.mass,
    duty: input.supply.duty,
    charge: build.charge,
    wheelFriction: input.vehicle.wheelFriction,
  };
}

/** @returns a build ready to be moved over maps, its rotor at the diameters asked for [m]; null as {@link standsOf} */
export function mapBuildOf(
  book: Book,
  { build, resolved }: Outcome,
  diameters: readonly number[],
): MapBuild | null {
  const rotor = findById(book.rotors, build.rotor)?.data;
  if (!resolved?.input || !resolved.pack || !rotor || !resolved.rotor) return null;
  const sizes = testedSizes(resolved.rotor);
  const at = (diameter: number): MapRotor => {
    const body = rotorBody(rotor, diameter);
    return {
      diameter,
      sizeCorrection: correctionAt(sizes, diameter),
      burstSpeed: body && burstSpeedOf(body, diameter),
    };
  };
  const motor = findById(book.motors, build.motor)?.data;
  return {
    input: resolved.input,
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
 * @returns the question; null where the build has no numbers, or an open propeller
 * @throws {OutOfRangeError} on a place that can't be
 */
export function questionOf(book: Book, outcome: Outcome, asked: Asked, count: number): MapQuestion | null {
  const stands = standsOf(outcome);
  if (!stands) return null;
  const axis = (key: MapKey) => ({ key, values: axisValues(settingBy(key), stands[key], count) });
  const [x, y] = [axis(asked.x), axis(asked.y)];
  const others: Place = { ...asked.moved, [asked.x]: undefined, [asked.y]: undefined };
  const diameters = [x, y].flatMap(({ key, values }) => (key === "diameter" ? values : []));
  const moved = others.diameter === undefined ? [] : [others.diameter];
  const of = mapBuildOf(book, outcome, [...diameters, ...moved]);
  return of && { of: movedTo(of, others), x, y, timed: asked.shown === "minutes" };
}
