import type { Build } from "../../model/build.ts";
import { openCircuitVoltage } from "../../physics/pack.ts";
import type { AnyPredictInput } from "../../physics/predictAny.ts";
import type { Book } from "../book.ts";
import type { BuildCalibration } from "../calibrated.ts";
import { type CellVoltages, cutOffVoltage } from "../cellVoltages.ts";
import { coldNotes, packInAir } from "../coldPack.ts";
import { calibratedFriction, skirtFriction, wheelFriction } from "../frictionBasis.ts";
import { gapBasis } from "../gapBasis.ts";
import { leakBasis } from "../leakBasis.ts";
import { withMass } from "../mass/withMass.ts";
import type { Missing } from "../missing.ts";
import { motorAnswer } from "../motorBasis.ts";
import { type PackBasis, packBasis } from "../packBasis.ts";
import { partialOf } from "../partial.ts";
import { pullFactorBasis } from "../pullFactorBasis.ts";
import { surfaceRoughness } from "../roughnessBasis.ts";
import { stiffnessBasis } from "../stiffnessBasis.ts";
import { tipClearanceNotes } from "../tipClearance.ts";
import { blowerOf, scaledFrom } from "./blower.ts";
import { inputOf, partialBases, propellerInput } from "./inputs.ts";
import { missingParts, partsOf } from "./parts.ts";
import type { Resolved } from "./resolved.ts";

function cellVoltages(input: AnyPredictInput, build: Build, { cell }: PackBasis): CellVoltages {
  return {
    full: openCircuitVoltage(cell.curve, 1),
    rest: openCircuitVoltage(cell.curve, build.charge),
    cutOff: cutOffVoltage(input, cell),
  };
}

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
  const gap = gapBasis(build, parts.skirt, calibration);
  const blower = blowerOf(book, build, parts);
  const { rotor, thrust } = blower;
  const motorFound = motorAnswer(book, build.motor);
  const motor = motorFound && motorFound.basis !== "missing" ? motorFound : null;
  const packAnswer = packBasis(book, build.pack);
  const { temperature } = build.air;
  const pack = packAnswer && packAnswer.basis !== "missing" ? packInAir(packAnswer, temperature) : null;
  const frictionAnswer =
    calibratedFriction(build.overrides.wheelFriction, calibration) ??
    (parts.surface && wheelFriction(book, parts.surface, build.overrides.wheelFriction));
  const friction = frictionAnswer && frictionAnswer.basis !== "missing" ? frictionAnswer : null;
  const missing = [
    ...missingParts(build, parts),
    ...blower.missing,
    ...(motorFound?.basis === "missing" ? [motorFound.missing] : []),
    ...(packAnswer?.basis === "missing" ? [packAnswer.missing] : []),
    ...(frictionAnswer?.basis === "missing" ? [frictionAnswer.missing] : []),
  ];
  const ofSkirt = parts.skirt && parts.surface ? skirtFriction(book, parts.surface, parts.skirt) : null;
  const leak = rotor && build.skirt ? leakBasis(book, build.skirt, build.surface, gap) : null;
  const onSurface = parts.surface && surfaceRoughness(book, parts.surface);
  const stiffness = stiffnessBasis(book, build);
  const pullFactor = pullFactorBasis(calibration);
  const bases = {
    rotor,
    thrust,
    motor,
    pack,
    gap,
    friction,
    ofSkirt,
    leak,
    onSurface,
    stiffness,
    pullFactor,
  };
  const input = inputOf(build, parts, bases);
  const propeller = propellerInput(build, parts, bases);
  const either = input ?? propeller;
  const roughness = rotor && parts.skirt && !leak ? onSurface : null;
  const from = scaledFrom(blower, build.diameter);
  const used = [
    ...[rotor, thrust, motor, pack, rotor && gap, friction, ofSkirt, leak, roughness],
    rotor && stiffness,
    rotor && pullFactor,
  ].flatMap((basis) => basis?.testIds ?? []);
  return {
    input,
    propeller,
    missing: once(missing),
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
    cellVoltage: either && pack && cellVoltages(either, build, pack),
    notes: [
      ...tipClearanceNotes(parts.rotor?.data ?? null, build.diameter, from),
      ...(motor?.notes ?? []),
      ...(pack ? coldNotes(pack, temperature) : []),
    ],
    tests: [...new Set([...used, ...(thrust?.motorTestIds ?? [])])],
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
