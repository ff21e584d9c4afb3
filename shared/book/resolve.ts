import type { Build } from "../model/build.ts";
import type { StoredOf } from "../model/record.ts";
import { openCircuitVoltage } from "../physics/pack.ts";
import type { PredictInput, SkirtInput } from "../physics/predict.ts";
import type { AnyPredictInput } from "../physics/predictAny.ts";
import type { PropellerPredictInput } from "../physics/propeller.ts";
import { type Bench, findById } from "./bench.ts";
import { motorInput, packInput } from "./buildInput.ts";
import { type BuildCalibration, calibrationOf } from "./calibration.ts";
import { type CellVoltages, cutOffVoltage } from "./cellVoltages.ts";
import { calibratedFriction, type FrictionBasis, skirtFriction, wheelFriction } from "./frictionBasis.ts";
import { type GapBasis, gapBasis } from "./gapBasis.ts";
import { type LeakBasis, leakBasis } from "./leakBasis.ts";
import type { Missing } from "./missing.ts";
import { type MotorBasis, motorBasis } from "./motorBasis.ts";
import { type PackBasis, packBasis } from "./packBasis.ts";
import { type PartialBases, type PartialBuild, partialOf } from "./partial.ts";
import { type PropellerBasis, powerMissing, powerOf, propellerBasis } from "./propellerBasis.ts";
import { nearestTested, type RotorBasis, rotorBasis, testedAt } from "./rotorBasis.ts";
import { type SurfaceRoughness, surfaceRoughness } from "./roughnessBasis.ts";

export type { Bench } from "./bench.ts";
export type { GapBasis } from "./gapBasis.ts";
export type { Missing } from "./missing.ts";
export type { PartialBuild, Unknown } from "./partial.ts";

/** A build made into numbers, and what each rests on; `input` and `propeller` are both null where something essential is missing. */
export interface Resolved {
  /** of a build with a ducted rotor */
  readonly input: PredictInput | null;
  /** of a build that an open propeller presses on */
  readonly propeller: PropellerPredictInput | null;
  readonly missing: readonly Missing[];
  /** what can be said all the same where something essential is missing; null where nothing is missing, or nothing can be said */
  readonly partial: PartialBuild | null;
  /** of a ducted rotor */
  readonly rotor: RotorBasis | null;
  /** of an open propeller */
  readonly thrust: PropellerBasis | null;
  /** nearest tested size where the build's own was not tested [m]; null where it was */
  readonly scaledFrom: number | null;
  readonly motor: MotorBasis | null;
  /** the pack's cell; null where its voltage by charge isn't known */
  readonly pack: PackBasis | null;
  readonly gap: GapBasis;
  /** gap and friction as pull and leak tests tell them together, with their covariance; null where they don't, or were not asked */
  readonly calibration: BuildCalibration | null;
  readonly friction: FrictionBasis | null;
  readonly skirtFriction: FrictionBasis | null;
  /** a leak test in the gap's place; null: the lip-gap law */
  readonly leak: LeakBasis | null;
  /** allowance on the surface that the lip-gap law adds to the gap; null where no law is used */
  readonly roughness: SurfaceRoughness | null;
  readonly cellVoltage: CellVoltages | null;
  /** every test that the figures rest on */
  readonly tests: readonly string[];
}

/** @returns the numbers of a build of either kind; null where something essential is missing */
export function solvable(resolved: Resolved): AnyPredictInput | null {
  return resolved.input ?? resolved.propeller;
}

interface Parts {
  readonly rotor: StoredOf<"rotors"> | null;
  readonly motor: StoredOf<"motors"> | null;
  readonly pack: StoredOf<"packs"> | null;
  readonly skirt: StoredOf<"skirts"> | null;
  readonly surface: StoredOf<"surfaces"> | null;
}

const SAME_SIZE = 1e-3;

function partsOf(bench: Bench, build: Build): Parts {
  return {
    rotor: findById(bench.rotors, build.rotor),
    motor: findById(bench.motors, build.motor),
    pack: findById(bench.packs, build.pack),
    skirt: findById(bench.skirts, build.skirt),
    surface: findById(bench.surfaces, build.surface),
  };
}

const isPropellerBuild = ({ rotor }: Parts): boolean => rotor?.data.kind === "propeller";

function missingParts(build: Build, parts: Parts): Missing[] {
  return Object.entries(parts).flatMap(([path, part]) => {
    if (part) return [];
    if (path !== "skirt" || build.skirt)
      return [{ path, message: `The build's ${path} is not in the book.` }];
    if (!parts.rotor || isPropellerBuild(parts)) return [];
    return [{ path, message: "A ducted rotor pulls through a skirt, and this build has none: choose one." }];
  });
}

/** @returns a skirt at one gap on a surface of some roughness, a measured leak in its place where there is one, SI */
export function skirtInput(
  skirt: StoredOf<"skirts">,
  { value: roughness }: Pick<SurfaceRoughness, "value">,
  gap: number,
  leak: LeakBasis | null,
): SkirtInput {
  const { perimeter, area, land, edge, lossSum, openings } = skirt.data;
  return {
    perimeter,
    area,
    land,
    edge,
    lossSum,
    openings,
    gap,
    roughness,
    measuredLeak: leak?.leak ?? null,
  };
}

interface Blower {
  readonly rotor: RotorBasis | null;
  readonly thrust: PropellerBasis | null;
  readonly missing: readonly Missing[];
}

/** What moves the air, by its tests, and what they lack. */
function blowerOf(bench: Bench, build: Build, parts: Parts): Blower {
  if (!parts.rotor) return { rotor: null, thrust: null, missing: [] };
  if (isPropellerBuild(parts)) {
    const answer = propellerBasis(bench, build.rotor);
    if (answer.basis === "missing") return { rotor: null, thrust: null, missing: [answer.missing] };
    const lacks = powerMissing(bench, answer);
    return { rotor: null, thrust: answer, missing: lacks ? [lacks] : [] };
  }
  const answer = rotorBasis(bench, build.rotor);
  if (answer.basis === "missing") return { rotor: null, thrust: null, missing: [answer.missing] };
  return { rotor: answer, thrust: null, missing: rotorMissing(answer) };
}

/** The nearest tested size [m], where the build's own was not tested. */
function scaledFrom({ rotor, thrust }: Blower, diameter: number): number | null {
  const nearest = nearestTested({ testedDiameters: (rotor ?? thrust)?.testedDiameters ?? [] }, diameter);
  return nearest !== null && Math.abs(nearest / diameter - 1) > SAME_SIZE ? nearest : null;
}

function rotorMissing(rotor: RotorBasis): Missing[] {
  if (rotor.lambda) return [];
  const message =
    "The rotor's power is not known: log the motor's current in its curve tests and name the motor, so that shaft power follows.";
  return [{ path: "rotor.lambda", message, test: "curve" }];
}

/**
 * Turns a build of the book into the numbers that a prediction takes, and says what each rests on.
 *
 *     gap and friction: tried in the build, else calibrated by pull and leak tests, else as {@link resolveAsSet}
 *
 * @param bench - the whole bench book
 * @param build - a stored build, or one changed by what-if handles
 * @returns input for {@link predict} (null where something essential is missing), the basis of each part, the tests used
 * @throws {OutOfRangeError} on a number in the book that can't be
 */
export function resolveBuild(bench: Bench, build: Build): Resolved {
  return resolved(bench, build, calibrationOf(bench, build));
}

/**
 * As {@link resolveBuild}, with the gap as set and friction as tilted or stated: what a calibration compares its tests with.
 *
 * @param bench - the whole bench book
 * @param build - a stored build, or a rig as one
 * @returns input and bases, none of them from pull tests
 * @throws {OutOfRangeError} on a number in the book that can't be
 */
export function resolveAsSet(bench: Bench, build: Build): Resolved {
  return resolved(bench, build, null);
}

function resolved(bench: Bench, build: Build, calibration: BuildCalibration | null): Resolved {
  const parts = partsOf(bench, build);
  const gap = gapBasis(build, parts.skirt, calibration);
  const blower = blowerOf(bench, build, parts);
  const { rotor, thrust } = blower;
  const motor = motorBasis(bench, build.motor);
  const packAnswer = packBasis(bench, build.pack);
  const pack = packAnswer && packAnswer.basis !== "missing" ? packAnswer : null;
  const frictionAnswer =
    calibratedFriction(build.overrides.wheelFriction, calibration) ??
    (parts.surface && wheelFriction(bench, parts.surface, build.overrides.wheelFriction));
  const friction = frictionAnswer && frictionAnswer.basis !== "missing" ? frictionAnswer : null;
  const missing = [
    ...missingParts(build, parts),
    ...blower.missing,
    ...(packAnswer?.basis === "missing" ? [packAnswer.missing] : []),
    ...(frictionAnswer?.basis === "missing" ? [frictionAnswer.missing] : []),
  ];
  const ofSkirt = parts.skirt && parts.surface ? skirtFriction(bench, parts.surface, parts.skirt) : null;
  const leak = rotor && build.skirt ? leakBasis(bench, build.skirt, build.surface, gap) : null;
  const onSurface = parts.surface && surfaceRoughness(bench, parts.surface);
  const bases = { rotor, thrust, motor, pack, gap, friction, ofSkirt, leak, onSurface };
  const input = inputOf(build, parts, bases);
  const propeller = propellerInput(build, parts, bases);
  const either = input ?? propeller;
  const roughness = rotor && parts.skirt && !leak ? onSurface : null;
  const used = [rotor, thrust, motor, pack, rotor && gap, friction, ofSkirt, leak, roughness].flatMap(
    (basis) => basis?.testIds ?? [],
  );
  return {
    input,
    propeller,
    missing,
    partial: either ? null : partialOf(build, partialBases(build, parts, bases)),
    rotor,
    thrust,
    scaledFrom: scaledFrom(blower, build.diameter),
    motor,
    pack,
    gap,
    calibration,
    friction,
    skirtFriction: ofSkirt,
    leak,
    roughness,
    cellVoltage: either && pack && cellVoltages(either, build, pack),
    tests: [...new Set([...used, ...(thrust?.motorTestIds ?? [])])],
  };
}

function cellVoltages(input: AnyPredictInput, build: Build, { cell }: PackBasis): CellVoltages {
  return {
    full: openCircuitVoltage(cell.curve, 1),
    rest: openCircuitVoltage(cell.curve, build.charge),
    cutOff: cutOffVoltage(input, cell),
  };
}

interface Bases {
  readonly rotor: RotorBasis | null;
  readonly thrust: PropellerBasis | null;
  readonly motor: MotorBasis | null;
  readonly pack: PackBasis | null;
  readonly gap: GapBasis;
  readonly friction: FrictionBasis | null;
  readonly ofSkirt: FrictionBasis | null;
  readonly leak: LeakBasis | null;
  /** how rough the surface is */
  readonly onSurface: SurfaceRoughness | null;
}

/** Null where the book lacks what the vehicle stands on. */
function partialBases(build: Build, parts: Parts, bases: Bases): PartialBases | null {
  const { skirt } = parts;
  const { onSurface } = bases;
  if (!onSurface || (build.skirt && !skirt)) return null;
  return {
    ...bases,
    skirtFriction: bases.ofSkirt,
    storedPack: parts.pack,
    skirt: skirt && skirtInput(skirt, onSurface, bases.gap.value, bases.leak),
    skirtShare: skirt?.data.share ?? 0,
  };
}

/** Numbers that a build has whatever moves its air; null where one of them is missing. */
function commonInput(build: Build, parts: Parts, { motor, pack: known, friction, ofSkirt }: Bases) {
  const { pack, skirt } = parts;
  if (!motor || !pack || !known || !parts.surface || !friction || !parts.motor) return null;
  return {
    air: build.air,
    motor: motorInput(motor),
    pack: packInput(pack, build, {
      openCircuitVoltage: openCircuitVoltage(known.cell.curve, build.charge),
      cellResistance: known.cell.resistance,
    }),
    supply: build.supply,
    vehicle: {
      ...build.vehicle,
      wheelFriction: friction.value,
      skirtFriction: ofSkirt?.value ?? 0,
      skirtShare: skirt?.data.share ?? 0,
    },
  };
}

/** A propeller presses with or without a skirt; one that is there rubs with its share of the load. */
function propellerInput(build: Build, parts: Parts, bases: Bases): PropellerPredictInput | null {
  const common = commonInput(build, parts, bases);
  const power = bases.thrust && powerOf(bases.thrust);
  if (!common || !bases.thrust || !power || (build.skirt && !parts.skirt)) return null;
  const { fit, chordRatio } = bases.thrust;
  const rotor = {
    kind: "propeller",
    diameter: build.diameter,
    thrust: fit.thrust,
    power,
    referenceReynolds: fit.referenceReynolds,
    chord: chordRatio * build.diameter,
    testedReynolds: fit.testedReynolds,
  } as const;
  return { ...common, rotor };
}

function inputOf(build: Build, parts: Parts, bases: Bases): PredictInput | null {
  const { rotor, gap, leak, onSurface } = bases;
  const { skirt } = parts;
  const common = commonInput(build, parts, bases);
  if (!common || !rotor?.lambda || !skirt || !onSurface) return null;
  const { psi, lambda, phiMin, phiMax } = rotor;
  const sizeCorrection = testedAt(rotor, build.diameter);
  return {
    ...common,
    rotor: { diameter: build.diameter, psi, lambda, phiMin, phiMax, sizeCorrection },
    skirt: skirtInput(skirt, onSurface, gap.value, leak),
  };
}
