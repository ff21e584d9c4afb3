import { cellAt } from "../../physics/cells/cell.ts";
import type { PredictInput } from "../../physics/predict.ts";
import type { PropellerPredictInput } from "../../physics/propeller.ts";
import { motorInput, packInput } from "../buildInput.ts";
import type { FrictionBasis } from "../frictionBasis.ts";
import type { GapBasis } from "../gapBasis.ts";
import type { LeakBasis } from "../leakBasis.ts";
import type { BuildWithMass } from "../mass/withMass.ts";
import type { MotorBasis } from "../motorBasis.ts";
import type { PackBasis } from "../packBasis.ts";
import type { PartialBases } from "../partial.ts";
import { type PropellerBasis, powerOf } from "../propellerBasis.ts";
import type { PullFactorBasis } from "../pullFactorBasis.ts";
import { type RotorBasis, testedAt } from "../rotorBasis.ts";
import type { SurfaceRoughness } from "../roughnessBasis.ts";
import { skirtInput } from "../skirtInput.ts";
import type { StiffnessBasis } from "../stiffnessBasis.ts";
import type { Parts } from "./parts.ts";

/** What each number of a build rests on. */
export interface Bases {
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
  readonly stiffness: StiffnessBasis;
  readonly pullFactor: PullFactorBasis;
}

/** Null where the book lacks what the vehicle stands on. */
export function partialBases(build: BuildWithMass, parts: Parts, bases: Bases): PartialBases | null {
  const { skirt } = parts;
  const { onSurface } = bases;
  if (!onSurface || (build.skirt && !skirt)) return null;
  return {
    ...bases,
    skirtFriction: bases.ofSkirt,
    storedPack: parts.pack,
    skirt: skirt && skirtInput(skirt, onSurface.value, bases.gap.value, bases.leak?.leak ?? null),
    skirtShare: skirt?.data.share ?? 0,
  };
}

/** Numbers that a build has whatever moves its air; null where one of them is missing. */
function commonInput(build: BuildWithMass, parts: Parts, bases: Bases) {
  const { motor, pack: known, friction, ofSkirt, stiffness } = bases;
  const { pack, skirt } = parts;
  if (!motor || !pack || !known || !parts.surface || !friction || !parts.motor) return null;
  return {
    air: build.air,
    motor: motorInput(motor),
    pack: packInput(pack, build, cellAt(known.cell, build.charge)),
    supply: build.supply,
    vehicle: {
      ...build.vehicle,
      wheelFriction: friction.value,
      skirtFriction: ofSkirt?.value ?? 0,
      skirtShare: skirt?.data.share ?? 0,
      verticalStiffness: stiffness.value,
    },
  };
}

/** A propeller presses with or without a skirt; one that is there rubs with its share of the load. */
export function propellerInput(
  build: BuildWithMass,
  parts: Parts,
  bases: Bases,
): PropellerPredictInput | null {
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

/** A rotor in a duct pulls through a skirt. */
export function inputOf(build: BuildWithMass, parts: Parts, bases: Bases): PredictInput | null {
  const { rotor, gap, leak, onSurface, pullFactor } = bases;
  const { skirt } = parts;
  const common = commonInput(build, parts, bases);
  if (!common || !rotor?.lambda || !skirt || !onSurface) return null;
  const { psi, lambda, phiMin, phiMax } = rotor;
  const sizeCorrection = testedAt(rotor, build.diameter);
  return {
    ...common,
    vehicle: { ...common.vehicle, pullFactor: pullFactor.value },
    rotor: {
      diameter: build.diameter,
      psi,
      lambda,
      psiCovariance: rotor.fit?.covariance,
      phiMin,
      phiMax,
      sizeCorrection: sizeCorrection && { ...sizeCorrection, applied: 1 },
    },
    skirt: skirtInput(skirt, onSurface.value, gap.value, leak?.leak ?? null),
  };
}
