import type { Build } from "../model/build.ts";
import type { StoredOf } from "../model/record.ts";
import { type CellState, cellAt } from "../physics/cells/cell.ts";
import { RPM } from "../physics/motor.ts";
import type { AtSpeeds, Coupled, PartialInput, PartialVehicle } from "../physics/partial/input.ts";
import type { AnyPredictInput } from "../physics/predictAny.ts";
import type { SkirtInput } from "../physics/skirt.ts";
import { motorInput, packInput } from "./buildInput.ts";
import type { FrictionBasis } from "./frictionBasis.ts";
import type { BuildWithMass } from "./mass/withMass.ts";
import type { MotorBasis } from "./motorBasis.ts";
import type { PackBasis } from "./packBasis.ts";
import { type PropellerBasis, powerOf } from "./propellerBasis.ts";
import type { PullFactorBasis } from "./pullFactorBasis.ts";
import { nearestTested, type RotorBasis, testedAt } from "./rotorBasis.ts";
import type { StiffnessBasis } from "./stiffnessBasis.ts";

/** What an answer has to do without: friction of the wheels, the cells' voltage by charge, the speed at which the motor turns the rotor. */
export type Unknown = "friction" | "charge" | "speed";

/** What is known of a build that lacks something, apart from {@link Resolved.input}, so that nothing takes it for the whole. */
export interface PartialBuild {
  readonly input: PartialInput;
  readonly unknown: readonly Unknown[];
}

/** What partial numbers are made from; null is what the book does not give. */
export interface PartialBases {
  readonly rotor: RotorBasis | null;
  readonly thrust: PropellerBasis | null;
  readonly motor: MotorBasis | null;
  readonly pack: PackBasis | null;
  readonly storedPack: StoredOf<"packs"> | null;
  readonly skirt: SkirtInput | null;
  /** σ_s of the skirt [-] */
  readonly skirtShare: number;
  readonly friction: FrictionBasis | null;
  readonly skirtFriction: FrictionBasis | null;
  readonly stiffness: StiffnessBasis;
  readonly pullFactor: PullFactorBasis;
}

/** Speeds shown of a sweep, at most. */
const MOST_SPEEDS = 5;
/** Speeds closer than this are one [-]. */
const SAME_SPEED = 0.02;

interface Turned {
  readonly testId: string;
  readonly rpm: number;
  readonly setAside: string | null;
}

/** Rising; of those that lie close, the first. */
function distinct(rpms: readonly number[]): number[] {
  const kept: number[] = [];
  for (const rpm of [...rpms].sort((a, b) => a - b))
    if (rpm > (kept.at(-1) ?? 0) * (1 + SAME_SPEED)) kept.push(rpm);
  return kept;
}

function thinned(rpms: readonly number[]): number[] {
  if (rpms.length <= MOST_SPEEDS) return [...rpms];
  const last = MOST_SPEEDS - 1;
  return Array.from({ length: MOST_SPEEDS }, (_, i) => rpms[Math.round((i * (rpms.length - 1)) / last)]);
}

function middle(values: readonly number[]): number {
  return [...values].sort((a, b) => a - b)[Math.floor(values.length / 2)];
}

/** Of each curve test the middle of its speeds: along one curve the rotor slows a little as it opens. */
function curveSpeeds(points: readonly Turned[]): number[] {
  const tests = [...new Set(points.map(({ testId }) => testId))];
  return tests.map((id) => middle(points.filter(({ testId }) => testId === id).map(({ rpm }) => rpm)));
}

/** Of the tested size that is nearest: another one's speeds are not its own. */
function speedsOf({ rotor, thrust }: PartialBases, diameter: number): number[] {
  const basis = rotor ?? thrust;
  const size = basis && nearestTested(basis, diameter);
  const points: readonly Turned[] = (basis?.points ?? []).filter(
    (point) => point.setAside === null && point.diameter === size,
  );
  const rpms = rotor ? curveSpeeds(points) : points.map(({ rpm }) => rpm);
  return thinned(distinct(rpms)).map((rpm) => rpm * RPM);
}

function propellerCurve({ fit, chordRatio }: PropellerBasis, diameter: number) {
  const { thrust, referenceReynolds, testedReynolds } = fit;
  return {
    kind: "propeller",
    diameter,
    thrust,
    referenceReynolds,
    chord: chordRatio * diameter,
    testedReynolds,
  } as const;
}

function atSpeeds(build: Build, bases: PartialBases): AtSpeeds | null {
  const { rotor, thrust, skirt } = bases;
  const speeds = speedsOf(bases, build.diameter);
  if (speeds.length === 0) return null;
  const { air, diameter } = build;
  if (thrust)
    return {
      turnedBy: "tests",
      speeds,
      air,
      rotor: { kind: "propeller", curve: propellerCurve(thrust, diameter) },
    };
  if (!rotor || !skirt) return null;
  const { psi, phiMin, phiMax } = rotor;
  return {
    turnedBy: "tests",
    speeds,
    air,
    rotor: { kind: "ducted", curve: { diameter, psi, phiMin, phiMax }, skirt },
  };
}

/** Without a curve: at the least voltage that a cell may show under load, behind which no resistance is left. */
function cellOf(build: Build, pack: PackBasis | null, stored: StoredOf<"packs">): CellState {
  if (!pack) return { voltage: stored.data.cell.minimumVoltage, resistance: 0 };
  return cellAt(pack.cell, build.charge);
}

function coupled(build: Build, bases: PartialBases): Coupled | null {
  const { rotor, thrust, motor, pack, storedPack, skirt } = bases;
  if (!motor || !storedPack) return null;
  const { air, supply, diameter } = build;
  const drive = {
    air,
    motor: motorInput(motor),
    pack: packInput(storedPack, build, cellOf(build, pack, storedPack)),
    supply,
  };
  const power = thrust && powerOf(thrust);
  if (thrust && power)
    return {
      turnedBy: "motor",
      machine: { ...drive, rotor: { ...propellerCurve(thrust, diameter), power } },
    };
  if (!rotor?.lambda || !skirt) return null;
  const { psi, lambda, phiMin, phiMax } = rotor;
  const sizeCorrection = testedAt(rotor, diameter);
  return {
    turnedBy: "motor",
    machine: {
      ...drive,
      rotor: { diameter, psi, lambda, psiCovariance: rotor.fit?.covariance, phiMin, phiMax, sizeCorrection },
      skirt,
    },
  };
}

function vehicleOf(build: BuildWithMass, bases: PartialBases): PartialVehicle {
  const { friction, skirtFriction, skirtShare, stiffness, pullFactor, thrust } = bases;
  return {
    ...build.vehicle,
    ...(thrust ? {} : { pullFactor: pullFactor.value }),
    verticalStiffness: stiffness.value,
    wheelFriction: friction?.value ?? null,
    skirtFriction: skirtFriction?.value ?? 0,
    skirtShare,
  };
}

/**
 * What is known of a build that lacks friction, the cells' curve, or what turns its rotor.
 *
 *     motor, pack and λ: coupled, the cells at their minimum voltage under load where their curve isn't known;  else the rotor at the speeds of its tests
 *
 * @param build - the build
 * @param bases - what the book gives
 * @returns numbers and what they do without; null where nothing can be said: no curve, no skirt under a ducted rotor, nothing that turns it
 * @throws {OutOfRangeError} on a number in the book that can't be
 *
 * Valid as what it rests on. Source: docs/method/operating-point.md
 */
export function partialOf(build: BuildWithMass, bases: PartialBases | null): PartialBuild | null {
  const blower = bases && (coupled(build, bases) ?? atSpeeds(build, bases));
  if (!bases || !blower) return null;
  const unknown: Unknown[] = [
    ...(blower.turnedBy === "tests" ? ["speed" as const] : []),
    ...(bases.pack ? [] : ["charge" as const]),
    ...(bases.friction ? [] : ["friction" as const]),
  ];
  return { input: { blower, vehicle: vehicleOf(build, bases) }, unknown };
}

/** @returns numbers of a build whose cells' curve alone isn't known, whole once a voltage read at the terminals takes its cells' place; null where more is missing */
export function readyForVoltage(partial: PartialBuild | null): AnyPredictInput | null {
  if (!partial || partial.unknown.some((each) => each !== "charge")) return null;
  const { blower, vehicle } = partial.input;
  const { wheelFriction } = vehicle;
  if (blower.turnedBy !== "motor" || wheelFriction === null) return null;
  return { ...blower.machine, vehicle: { ...vehicle, wheelFriction } };
}
