import type { Build } from "../../model/build.ts";
import type { Book } from "../book.ts";
import type { BuildCalibration } from "../calibrated.ts";
import { coldNotes } from "../coldPack.ts";
import { withMass } from "../mass/withMass.ts";
import type { Missing } from "../missing.ts";
import { partialOf } from "../partial.ts";
import { tipClearanceNotes } from "../tipClearance.ts";
import { basesOf, testsBehind } from "./bases.ts";
import { blowerOf, scaledFrom } from "./blower.ts";
import { inputOf, partialBases, propellerInput } from "./inputs.ts";
import { missingParts, partsOf } from "./parts.ts";
import type { Resolved } from "./resolved.ts";

/** What two figures lack is said once. */
function once(missing: readonly Missing[]): Missing[] {
  return [...new Map(missing.map((each) => [each.message, each])).values()];
}

/**
 * A build made into numbers, its gap and friction by a calibration where there is one.
 *
 * @param book - the whole bench book
 * @param given - a stored build, one changed by what-if handles, or a rig as one
 * @param calibration - what pull and leak tests tell of gap and friction; null: as set, tilted or stated
 * @returns input and bases
 * @throws {OutOfRangeError} on a number in the book that can't be
 */
export function resolveWith(book: Book, given: Build, calibration: BuildCalibration | null): Resolved {
  const build = withMass(book, given);
  const parts = partsOf(book, build);
  const blower = blowerOf(book, build, parts);
  const { bases, lacks } = basesOf(book, build, { parts, blower, calibration });
  const { rotor, thrust, motor, pack, gap, friction, ofSkirt, leak, stiffness, pullFactor } = bases;
  const input = inputOf(build, parts, bases);
  const propeller = propellerInput(build, parts, bases);
  const either = input ?? propeller;
  const roughness = rotor && parts.skirt && !leak ? bases.onSurface : null;
  const from = scaledFrom(blower, build.diameter);
  return {
    input,
    propeller,
    missing: once([...missingParts(build, parts), ...blower.missing, ...lacks]),
    partial: either ? null : partialOf(build, partialBases(build, parts, bases)),
    rotor,
    thrust,
    scaledFrom: from,
    motor,
    pack,
    gap,
    calibration,
    pullFactor,
    friction,
    skirtFriction: ofSkirt,
    leak,
    roughness,
    stiffness,
    notes: [
      ...tipClearanceNotes(parts.rotor?.data ?? null, build.diameter, from),
      ...(motor?.notes ?? []),
      ...(pack ? coldNotes(pack, build.air.temperature) : []),
    ],
    tests: testsBehind(bases, roughness),
  };
}

/**
 * A build with the gap as set and friction as tilted or stated: what a calibration compares its tests with.
 *
 * @param book - the whole bench book
 * @param build - a stored build, or a rig as one
 * @returns input and bases, none of them from pull tests
 * @throws {OutOfRangeError} on a number in the book that can't be
 */
export function resolveAsSet(book: Book, build: Build): Resolved {
  return resolveWith(book, build, null);
}
