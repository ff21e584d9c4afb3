import type { Build } from "../model/build.ts";
import type { StoredOf } from "../model/record.ts";
import { openCircuitVoltage } from "../physics/pack.ts";
import type { PredictInput, SkirtInput } from "../physics/predict.ts";
import { type Bench, findById } from "./bench.ts";
import { type CellVoltages, cutOffVoltage } from "./cellVoltages.ts";
import { type FrictionBasis, skirtFriction, wheelFriction } from "./frictionBasis.ts";
import { type LeakBasis, leakBasis } from "./leakBasis.ts";
import type { Missing } from "./missing.ts";
import { type MotorBasis, motorBasis } from "./motorBasis.ts";
import { nearestTested, type RotorBasis, rotorBasis, testedAt } from "./rotorBasis.ts";

export type { Bench } from "./bench.ts";
export type { Missing } from "./missing.ts";

/** The gap and what it rests on. */
export interface GapBasis {
  readonly basis: "set" | "what-if";
  /** stand-off without the surface's roughness [m] */
  readonly value: number;
  /** standard uncertainty [m]; null where none is stated */
  readonly uncertainty: number | null;
}

/** A build made into numbers, and what each rests on; `input` is null where something essential is missing. */
export interface Resolved {
  readonly input: PredictInput | null;
  readonly missing: readonly Missing[];
  readonly rotor: RotorBasis | null;
  /** nearest tested size where the build's own was not tested [m]; null where it was */
  readonly scaledFrom: number | null;
  readonly motor: MotorBasis | null;
  readonly gap: GapBasis;
  readonly friction: FrictionBasis | null;
  readonly skirtFriction: FrictionBasis | null;
  /** a leak test in the gap's place; null: the lip-gap law */
  readonly leak: LeakBasis | null;
  readonly cellVoltage: CellVoltages | null;
  /** every test that the figures rest on */
  readonly tests: readonly string[];
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

function missingParts(parts: Parts): Missing[] {
  return Object.entries(parts).flatMap(([path, part]) =>
    part ? [] : [{ path, message: `The build's ${path} is not in the book.` }],
  );
}

function gapOf(build: Build, skirt: StoredOf<"skirts"> | null): GapBasis {
  const uncertainty = build.uncertainty["skirt.gap"] ?? skirt?.data.uncertainty.gap ?? null;
  const whatIf = build.overrides.gap;
  if (whatIf !== undefined) return { basis: "what-if", value: whatIf, uncertainty };
  return { basis: "set", value: skirt?.data.gap ?? 0, uncertainty };
}

function skirtInput(
  skirt: StoredOf<"skirts">,
  surface: StoredOf<"surfaces">,
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
    roughness: surface.data.roughness,
    measuredLeak: leak?.leak ?? null,
  };
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
 * @param bench - the whole bench book
 * @param build - a stored build, or one changed by what-if handles
 * @returns input for {@link predict} (null where something essential is missing), the basis of each part, the tests used
 * @throws {OutOfRangeError} on a number in the book that can't be
 */
export function resolveBuild(bench: Bench, build: Build): Resolved {
  const parts = partsOf(bench, build);
  const gap = gapOf(build, parts.skirt);
  const rotorAnswer = parts.rotor && rotorBasis(bench, build.rotor);
  const rotor = rotorAnswer && rotorAnswer.basis !== "missing" ? rotorAnswer : null;
  const motor = motorBasis(bench, build.motor);
  const frictionAnswer = parts.surface && wheelFriction(bench, parts.surface, build.overrides.wheelFriction);
  const friction = frictionAnswer && frictionAnswer.basis !== "missing" ? frictionAnswer : null;
  const missing = [
    ...missingParts(parts),
    ...(rotorAnswer?.basis === "missing" ? [rotorAnswer.missing] : []),
    ...(rotor ? rotorMissing(rotor) : []),
    ...(frictionAnswer?.basis === "missing" ? [frictionAnswer.missing] : []),
  ];
  const nearest = rotor && nearestTested(rotor, build.diameter);
  const ofSkirt = parts.skirt && parts.surface ? skirtFriction(bench, parts.surface, parts.skirt) : null;
  const leak = leakBasis(bench, build.skirt, build.surface, gap.value);
  const input = inputOf(build, parts, { rotor, motor, gap, friction, ofSkirt, leak });
  const used = [rotor, motor, friction, ofSkirt, leak].flatMap((basis) => basis?.testIds ?? []);
  return {
    input,
    missing,
    rotor,
    scaledFrom: nearest !== null && Math.abs(nearest / build.diameter - 1) > SAME_SIZE ? nearest : null,
    motor,
    gap,
    friction,
    skirtFriction: ofSkirt,
    leak,
    cellVoltage: input && parts.pack && cellVoltages(input, build, parts.pack),
    tests: [...new Set(used)],
  };
}

function cellVoltages(input: PredictInput, build: Build, pack: StoredOf<"packs">): CellVoltages {
  const { cell } = pack.data;
  return {
    full: openCircuitVoltage(cell.curve, 1),
    rest: openCircuitVoltage(cell.curve, build.charge),
    cutOff: cutOffVoltage(input, cell),
  };
}

interface Bases {
  readonly rotor: RotorBasis | null;
  readonly motor: MotorBasis | null;
  readonly gap: GapBasis;
  readonly friction: FrictionBasis | null;
  readonly ofSkirt: FrictionBasis | null;
  readonly leak: LeakBasis | null;
}

function inputOf(build: Build, parts: Parts, bases: Bases): PredictInput | null {
  const { rotor, motor, gap, friction, ofSkirt, leak } = bases;
  const { pack, skirt, surface } = parts;
  if (!rotor?.lambda || !motor || !pack || !skirt || !surface || !friction || !ofSkirt || !parts.motor)
    return null;
  const { psi, lambda, phiMin, phiMax } = rotor;
  return {
    air: build.air,
    rotor: {
      diameter: build.diameter,
      psi,
      lambda,
      phiMin,
      phiMax,
      sizeCorrection: testedAt(rotor, build.diameter),
    },
    motor: { ...motor.constants, thermalResistance: parts.motor.data.thermalResistance ?? null },
    pack: {
      series: build.overrides.series ?? pack.data.series,
      parallel: pack.data.parallel,
      openCircuitVoltage: openCircuitVoltage(pack.data.cell.curve, build.charge),
      cellResistance: pack.data.cell.resistance,
      wireResistance: pack.data.wireResistance,
    },
    supply: build.supply,
    skirt: skirtInput(skirt, surface, gap.value, leak),
    vehicle: {
      ...build.vehicle,
      wheelFriction: friction.value,
      skirtFriction: ofSkirt.value,
      skirtShare: skirt.data.share,
    },
  };
}
