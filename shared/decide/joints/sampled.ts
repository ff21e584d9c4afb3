import type { AnyPredictInput } from "../../physics/predictAny.ts";
import { isPropeller } from "../../physics/predictAny.ts";
import {
  type AttitudeUncertainty,
  type StatedUncertainty,
  type Uncertainty,
  uncertaintyOf,
} from "../uncertainty.ts";
import { type CrossedJoint, crossedJoints, type JointsUnder, type NamedJoint } from "./crossed.ts";
import { uncertainOver } from "./uncertain.ts";

/** What sampling says of a build over the hardest joint of its surface. */
export interface OverJointUncertainty {
  readonly joint: NamedJoint;
  /** those of the build */
  readonly attitudes: readonly AttitudeUncertainty[];
  /** on the attitudes that are worst over it */
  readonly worst: { readonly parked: AttitudeUncertainty; readonly driving: AttitudeUncertainty };
  /** of the variance of the worst driving margin over it, largest first */
  readonly shares: Uncertainty["shares"];
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

/** A build over the hardest joint of its surface, and what is uncertain in it there. */
export interface OverHardest {
  readonly hardest: CrossedJoint;
  readonly asked: StatedUncertainty;
}

/** @returns the build over its hardest joint with what is uncertain there; null without a joint @throws as {@link crossedJoints} */
export function overHardest({ build, joints }: ToSample, asked: StatedUncertainty): OverHardest | null {
  if (!joints || isPropeller(build)) return null;
  const [hardest] = crossedJoints(build, joints, []);
  return hardest ? { hardest, asked: uncertainOver(hardest, asked, joints.lipLaw) } : null;
}

function sampledOver(of: ToSample, asked: StatedUncertainty): OverJointUncertainty | null {
  const over = overHardest(of, asked);
  if (!over) return null;
  const { hardest } = over;
  const { parked, driving } = hardest.prediction.worst;
  const angles = [...new Set(asked.angles ?? [])];
  const { attitudes, shares } = uncertaintyOf(hardest.build, {
    ...over.asked,
    angles: [...angles, parked.angle, driving.angle],
  });
  const [worstParked, worstDriving] = attitudes.slice(-2);
  return {
    joint: hardest.joint,
    attitudes: attitudes.slice(0, -2),
    worst: { parked: worstParked, driving: worstDriving },
    shares,
  };
}

/**
 * Samples a build, and the same samples over the hardest joint of its surface.
 *
 *     as {@link uncertaintyOf}, twice from one seed;  over the joint with what {@link uncertainOver} adds
 *
 * @param of - build and joints [SI]
 * @param asked - what is uncertain, by path [unit of each number]
 * @returns spreads of its margins [-], and those over the joint
 * @throws {OutOfRangeError} {NotEnoughDataError} as {@link uncertaintyOf}
 *
 * Valid as it. Source: docs/method/uncertainty.md
 */
export function sampledWithJoints(of: ToSample, asked: StatedUncertainty): SampledUncertainty {
  return { ...uncertaintyOf(of.build, asked), over: sampledOver(of, asked) };
}
