import { WINDING_ALARM } from "../../physics/point/notes.ts";
import { STANDARD_ANGLES } from "../../physics/predict.ts";
import {
  type AnyPredictInput,
  type AnyPrediction,
  isPropeller,
  predictAny,
} from "../../physics/predictAny.ts";
import { crossedJoints, type JointsUnder } from "../joints/crossed.ts";
import type { SampledUncertainty } from "../joints/sampled.ts";
import { underExtremes } from "../limits/extremes.ts";
import { type Hardest, hardestLimits } from "../limits/hardest.ts";
import type { LimitsInput } from "../limits/input.ts";
import { warmUp } from "../limits/warmUp.ts";
import type { AttitudeUncertainty, Uncertainty } from "../uncertainty.ts";
import {
  type Chance,
  type Crossing,
  type Findings,
  type HeldAttitude,
  type NamedAngle,
  nameOf,
} from "./findings.ts";

/** A build as a verdict looks at it; plain data, fit for another thread. */
export interface Case {
  /** at the charge that its figures are shown at */
  readonly build: AnyPredictInput;
  /** the same build with its cell, at that charge, and what its makers allow */
  readonly limits: LimitsInput;
  /** charge that a run begins at; null: the voltage is given as it is, and that is all there is [-] */
  readonly full: number | null;
  /** attitudes that must hold, by name */
  readonly attitudes: readonly NamedAngle[];
  /** joints of the surface that it must cross; null: none, or no skirt to cross them with */
  readonly joints: JointsUnder | null;
  /** margin that is wanted [-] */
  readonly target: number;
  /** tests in use that speak against each other or the model, in words */
  readonly contradictions: readonly string[];
}

/** @returns the attitudes that a prediction answers for [°] */
export function anglesOf({ attitudes }: Pick<Case, "attitudes">): number[] {
  return [...new Set([...STANDARD_ANGLES, ...attitudes.map(({ angle }) => angle)])];
}

/** @returns the limits of a case, each at its hardest moment */
export function hardestOf({ limits, full }: Pick<Case, "limits" | "full">): Hardest {
  return hardestLimits(limits, full ?? limits.build.startCharge);
}

/** What it holds over each joint, the least margin first. */
function crossingsOf(of: Case): Crossing[] {
  if (!of.joints || isPropeller(of.build)) return [];
  return crossedJoints(of.build, of.joints, anglesOf(of)).map(({ joint, way, prediction }) => ({
    joint,
    way,
    attitudes: heldIn(of, prediction),
    worst: prediction.worst,
  }));
}

function heldIn({ attitudes }: Pick<Case, "attitudes">, prediction: AnyPrediction): HeldAttitude[] {
  return attitudes.flatMap(({ name, angle }) => {
    const held = prediction.attitudes.find((each) => each.angle === angle);
    return held ? [{ name, angle, parked: held.parked.margin, driving: held.driving.margin }] : [];
  });
}

/**
 * What is found of a build, for its verdict.
 *
 *     margins of a prediction, limits at their hardest moments
 *
 * @param of - the build as a case [SI]
 * @param prediction - of the case's build, with its attitudes [SI]
 * @returns findings without chance and without the seconds until the winding burns, which take longer
 * @throws {OutOfRangeError} with the path of a number that can't be
 * @throws {NotEnoughDataError} where the rotor's curve does not reach down to the leak
 *
 * Valid as prediction and limits. Source: docs/method/verdict.md
 */
export function findingsOf(of: Case, prediction: AnyPrediction): Findings {
  const { limits, rotor } = hardestOf(of);
  return {
    turns: prediction.point !== null,
    suction: Math.max(0, prediction.suction),
    attitudes: heldIn(of, prediction),
    worst: prediction.worst,
    crossings: crossingsOf(of),
    target: of.target,
    limits,
    rotor,
    fromCharge: of.full,
    burnsAfter: null,
    chance: null,
    contradictions: of.contradictions,
  };
}

/**
 * Predicts a build and finds what its verdict is made from.
 *
 *     as {@link findingsOf}
 *
 * @param of - the build as a case [SI]
 * @returns findings
 * @throws {OutOfRangeError} {NotEnoughDataError} as {@link findingsOf}
 *
 * Valid and source: as {@link findingsOf}
 */
export function found(of: Case): Findings {
  return findingsOf(of, predictAny(of.build, anglesOf(of)));
}

/**
 * Seconds from a cold start until the winding passes its limit.
 *
 *     τ_th·dT/dt = I²·R_m(T)·R_th − (T − T_a) at the hardest supply, held
 *
 * @param of - the build as a case [SI]
 * @returns time [s]; null where it never gets there, or R_th or τ_th isn't known
 * @throws {OutOfRangeError} with the path of a number that can't be
 *
 * Valid and source: as {@link warmUp}
 */
export function burnsAfter(of: Pick<Case, "limits" | "full">): number | null {
  const { build, motor } = of.limits;
  const { light } = underExtremes(build);
  const { settled } = hardestOf(of);
  return warmUp(light, settled, motor.windingLimit ?? WINDING_ALARM)?.timeToLimit ?? null;
}

/**
 * The least chance of holding that sampling found.
 *
 *     least chance of holding over the attitudes, parked and driving, beside the joints of the surface and over the hardest
 *
 * @param doubt - from {@link uncertaintyOf}; null where nothing is uncertain or it isn't known yet
 * @param attitudes - by name [°]
 * @returns where and how likely it holds [°, -], with the margin that 95 % of the samples reach; null without sampling
 *
 * Valid for each attitude by itself: all of them together hold no more often. Source: docs/method/uncertainty.md
 */
export function chanceOf(
  doubt: (Pick<Uncertainty, "attitudes"> & Partial<Pick<SampledUncertainty, "over">>) | null,
  attitudes: readonly NamedAngle[],
): Chance | null {
  const chances = (of: readonly AttitudeUncertainty[], where: string): Chance[] =>
    of.flatMap(({ angle, parked, driving }) =>
      [parked, driving].map(({ holds, p5 }) => ({
        name: nameOf(attitudes, angle) + where,
        angle,
        holds,
        margin5: p5,
      })),
    );
  const over = doubt?.over ?? null;
  const onJoint = over ? [...over.attitudes, over.worst.parked, over.worst.driving] : [];
  const each = [
    ...chances(doubt?.attitudes ?? [], ""),
    ...chances(onJoint, over ? ` over ${over.joint.name}` : ""),
  ];
  const margin = ({ margin5 }: Chance) => margin5 ?? Number.POSITIVE_INFINITY;
  return each.reduce<Chance | null>((least, one) => {
    if (!least || one.holds < least.holds) return one;
    return one.holds === least.holds && margin(one) < margin(least) ? one : least;
  }, null);
}
