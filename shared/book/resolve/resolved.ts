import type { Note } from "../../physics/note.ts";
import type { PredictInput } from "../../physics/predict.ts";
import type { AnyPredictInput } from "../../physics/predictAny.ts";
import type { PropellerPredictInput } from "../../physics/propeller.ts";
import type { BuildCalibration } from "../calibrated.ts";
import type { FrictionBasis } from "../frictionBasis.ts";
import type { GapBasis } from "../gapBasis.ts";
import type { LeakBasis } from "../leakBasis.ts";
import type { Missing } from "../missing.ts";
import type { MotorBasis } from "../motorBasis.ts";
import type { PackBasis } from "../packBasis.ts";
import type { PartialBuild } from "../partial.ts";
import type { PropellerBasis } from "../propellerBasis.ts";
import type { PullFactorBasis } from "../pullFactorBasis.ts";
import type { RotorBasis } from "../rotorBasis.ts";
import type { SurfaceRoughness } from "../roughnessBasis.ts";
import type { StiffnessBasis } from "../stiffnessBasis.ts";

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
  /** what the skirt pulls over what the model says; a propeller has none */
  readonly pullFactor: PullFactorBasis;
  readonly friction: FrictionBasis | null;
  readonly skirtFriction: FrictionBasis | null;
  /** a leak test in the gap's place; null: the lip-gap law */
  readonly leak: LeakBasis | null;
  /** allowance on the surface that the lip-gap law adds to the gap; null where no law is used */
  readonly roughness: SurfaceRoughness | null;
  /** how the gap gives under load; a propeller's thrust doesn't ask */
  readonly stiffness: StiffnessBasis;
  /** what the records and tests of rotor and motor say against the figures */
  readonly notes: readonly Note[];
  /** every test that the figures rest on */
  readonly tests: readonly string[];
}

/** @returns the numbers of a build of either kind; null where something essential is missing */
export function solvable(resolved: Resolved): AnyPredictInput | null {
  return resolved.input ?? resolved.propeller;
}
