import type { Mode } from "../../physics/hold/holdAt.ts";
import type { JointWay } from "../../physics/joints.ts";
import type { Prediction } from "../../physics/predict.ts";
import type { NamedJoint } from "../joints/crossed.ts";
import type { Limit } from "../limits/limit.ts";
import type { RotorFigures } from "../limits/rotor.ts";
import { SAME_ANGLE, worstName } from "./attitudeWords.ts";

/** An attitude that a build must hold, as a sentence names it. */
export interface NamedAngle {
  /** "the wall", "the roof pane" */
  readonly name: string;
  /** θ [°] */
  readonly angle: number;
}

/** Its margins there; null where no suction is needed. */
export interface HeldAttitude extends NamedAngle {
  readonly parked: number | null;
  readonly driving: number | null;
}

/** What a build holds while it crosses a joint, met in the worse way. */
export interface Crossing {
  readonly joint: NamedJoint;
  readonly way: JointWay;
  readonly attitudes: readonly HeldAttitude[];
  readonly worst: Prediction["worst"];
}

/** Least chance of holding over the attitudes, parked and driving. */
export interface Chance extends NamedAngle {
  /** share of samples that hold [-] */
  readonly holds: number;
  /** margin that 95 % of the samples reach; null where no suction is needed [-] */
  readonly margin5: number | null;
}

/** All that a verdict is made from, and nothing else. */
export interface Findings {
  /** false: the rotor stands still, or comes to no steady speed */
  readonly turns: boolean;
  /** F_s, or a propeller's thrust, never below 0 [N] */
  readonly suction: number;
  /** every attitude that must hold, the floor left out */
  readonly attitudes: readonly HeldAttitude[];
  /** anywhere from floor to ceiling */
  readonly worst: Prediction["worst"];
  /** over each joint of the surface, the least margin first */
  readonly crossings: readonly Crossing[];
  /** margin that is wanted [-] */
  readonly target: number;
  /** each at its hardest moment */
  readonly limits: readonly Limit[];
  readonly rotor: RotorFigures;
  /** charge that the limits' hardest moments begin at; null where the pack's voltage is given as it is [-] */
  readonly fromCharge: number | null;
  /** from cold to the winding's limit, the supply held; null where it isn't worked out, or not reached [s] */
  readonly burnsAfter: number | null;
  /** null where it isn't known, or not yet */
  readonly chance: Chance | null;
  /** tests in use that speak against each other or the model, in words */
  readonly contradictions: readonly string[];
}

/** The least margin there is, and where. */
export interface Least extends NamedAngle {
  /** [-] */
  readonly margin: number;
  readonly driving: boolean;
  readonly governs: readonly Mode[];
  /** joint that it stands over; null: beside any */
  readonly over: NamedJoint | null;
}

/** @returns what an angle is called: as the user's own attitude there, else "the overhang" */
export function nameOf(attitudes: readonly NamedAngle[], angle: number): string {
  return attitudes.find((each) => Math.abs(each.angle - angle) < SAME_ANGLE)?.name ?? worstName(angle);
}

function leastIn(
  worst: Prediction["worst"],
  attitudes: readonly NamedAngle[],
  over: NamedJoint | null,
): Least | null {
  const of = (margin: number | null) => margin ?? Number.POSITIVE_INFINITY;
  const drives = of(worst.driving.margin) < of(worst.parked.margin);
  const { angle, margin, governs } = drives ? worst.driving : worst.parked;
  if (margin === null) return null;
  const name = nameOf(attitudes, angle) + (over ? ` over ${over.name}` : "");
  return { name, angle, margin, driving: drives, governs, over };
}

/**
 * The least margin from floor to ceiling, and where.
 *
 *     the least over parked and driving, beside the joints of the surface and over them
 *
 * @param findings - margins [-]
 * @returns of equal ones the parked one, beside a joint rather than over it; null where no suction is needed [-, °]
 *
 * Valid for any findings
 */
export function leastOf({
  worst,
  attitudes,
  crossings,
}: Pick<Findings, "worst" | "attitudes" | "crossings">): Least | null {
  const beside = leastIn(worst, attitudes, null);
  const [hardest] = crossings;
  const over = hardest ? leastIn(hardest.worst, attitudes, hardest.joint) : null;
  return over && (!beside || over.margin < beside.margin) ? over : beside;
}
