import type { AnyPredictInput } from "../../physics/predictAny.ts";
import { isPropeller } from "../../physics/predictAny.ts";
import {
  type AttitudeUncertainty,
  type StatedUncertainty,
  type Uncertainty,
  uncertaintyOf,
} from "../uncertainty.ts";
import { crossedJoints, type JointsUnder, type NamedJoint } from "./crossed.ts";

/** What sampling says of a build over the hardest joint of its surface. */
export interface OverJointUncertainty {
  readonly joint: NamedJoint;
  /** those of the build */
  readonly attitudes: readonly AttitudeUncertainty[];
  /** on the attitudes that are worst over it */
  readonly worst: { readonly parked: AttitudeUncertainty; readonly driving: AttitudeUncertainty };
}

/** Uncertainty of a build beside the joints of its surface, and over the hardest. */
export interface SampledUncertainty extends Uncertainty {
  /** null without a joint */
  readonly over: OverJointUncertainty | null;
}

/** A build to be sampled with the joints of its surface; plain data, fit for another thread. */
export interface ToSample {
  readonly build: AnyPredictInput;
  /** null: none */
  readonly joints: JointsUnder | null;
}

function overHardest({ build, joints }: ToSample, asked: StatedUncertainty): OverJointUncertainty | null {
  if (!joints || isPropeller(build)) return null;
  const [hardest] = crossedJoints(build, joints, []);
  if (!hardest) return null;
  const { parked, driving } = hardest.prediction.worst;
  const angles = [...new Set(asked.angles ?? [])];
  const { attitudes } = uncertaintyOf(hardest.build, {
    ...asked,
    angles: [...angles, parked.angle, driving.angle],
  });
  const [worstParked, worstDriving] = attitudes.slice(-2);
  return {
    joint: hardest.joint,
    attitudes: attitudes.slice(0, -2),
    worst: { parked: worstParked, driving: worstDriving },
  };
}

/**
 * Samples a build, and the same samples over the hardest joint of its surface.
 *
 *     as {@link uncertaintyOf}, twice from one seed
 *
 * @param of - build and joints [SI]
 * @param asked - what is uncertain, by path [unit of each number]
 * @returns spreads of its margins [-], and those over the joint
 * @throws {OutOfRangeError} {NotEnoughDataError} as {@link uncertaintyOf}
 *
 * Valid as it; depth and width of a joint are taken as stated. Source: docs/method/uncertainty.md
 */
export function sampledWithJoints(of: ToSample, asked: StatedUncertainty): SampledUncertainty {
  return { ...uncertaintyOf(of.build, asked), over: overHardest(of, asked) };
}
