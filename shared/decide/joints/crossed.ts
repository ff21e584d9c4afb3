import { type JointWay, type SurfaceJoint, skirtOver, waysMet } from "../../physics/joints.ts";
import { type PredictInput, type Prediction, predict } from "../../physics/predict.ts";

/** A joint as a sentence names it. */
export interface NamedJoint extends SurfaceJoint {
  /** "the glazing bar" */
  readonly name: string;
  /** standard uncertainties of its sizes [m]; absent: they are certain */
  readonly uncertain?: Readonly<Record<JointSize, number>>;
}

/** What is measured of a joint. */
export type JointSize = "depth" | "width";

/** The joints of a build's surface, and how much of the lip stands over one that is met along. */
export interface JointsUnder {
  readonly joints: readonly NamedJoint[];
  /** s [m] */
  readonly span: number;
  /** standard uncertainty of the lip's law over a joint beside a measured leak, of loss and friction [-]; 0 unless given */
  readonly lipLaw?: number;
}

/** A build as it stands over one joint, met in the worse of its ways. */
export interface CrossedJoint {
  readonly joint: NamedJoint;
  readonly way: JointWay;
  /** the build over it, SI */
  readonly build: PredictInput;
  readonly prediction: Prediction;
}

const leastMargin = ({ worst: { parked, driving } }: Prediction): number =>
  Math.min(parked.margin ?? Number.POSITIVE_INFINITY, driving.margin ?? Number.POSITIVE_INFINITY);

/** @returns the build standing over a joint */
export function buildOver(build: PredictInput, { span }: JointsUnder, joint: SurfaceJoint, way: JointWay) {
  return { ...build, skirt: skirtOver(build.skirt, joint, way, span) };
}

/**
 * What a build holds while it crosses each joint of its surface.
 *
 *     the prediction with the lip over the joint;  of its ways the one with the least margin from floor to ceiling
 *
 * @param build - beside the joints, SI
 * @param under - joints [m] and span [m]
 * @param angles - attitudes to answer for [°]
 * @returns one a joint, the least margin first [SI]
 * @throws {OutOfRangeError} {NotEnoughDataError} as {@link predict}
 *
 * Valid for one joint at a time, the vehicle at rest over it or in slow motion. Source: docs/method/holding.md
 */
export function crossedJoints(
  build: PredictInput,
  under: JointsUnder,
  angles: readonly number[],
): CrossedJoint[] {
  const each = under.joints.map((joint) =>
    waysMet(joint)
      .map((way): CrossedJoint => {
        const over = buildOver(build, under, joint, way);
        return { joint, way, build: over, prediction: predict(over, angles) };
      })
      .reduce((worse, one) => (leastMargin(one.prediction) < leastMargin(worse.prediction) ? one : worse)),
  );
  return each.sort((a, b) => leastMargin(a.prediction) - leastMargin(b.prediction));
}
