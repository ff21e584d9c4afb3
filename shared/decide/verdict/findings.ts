import type { Mode } from "../../physics/hold/holdAt.ts";
import type { Prediction } from "../../physics/predict.ts";
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
}

/** @returns what an angle is called: as the user's own attitude there, else "the overhang" */
export function nameOf(attitudes: readonly NamedAngle[], angle: number): string {
  return attitudes.find((each) => Math.abs(each.angle - angle) < SAME_ANGLE)?.name ?? worstName(angle);
}

/** @returns the least margin from floor to ceiling, parked and driving, of equal ones the parked one; null where no suction is needed */
export function leastOf({
  worst: { parked, driving },
  attitudes,
}: Pick<Findings, "worst" | "attitudes">): Least | null {
  const of = (margin: number | null) => margin ?? Number.POSITIVE_INFINITY;
  const drives = of(driving.margin) < of(parked.margin);
  const { angle, margin, governs } = drives ? driving : parked;
  return margin === null ? null : { name: nameOf(attitudes, angle), angle, margin, driving: drives, governs };
}
