import { type FastCase, writeFastCase } from "../../physics/point/fastCase.ts";
import { solveSealedCase, WARM, WARM_RESULT } from "../../physics/point/newtonWarm.ts";
import type { SkirtInput } from "../../physics/skirt.ts";
import type { FittedSkirt, PlacedSkirt } from "./fittedSkirt.ts";
import type { Prepared } from "./prepare.ts";
import { fastSuction } from "./pullOf.ts";
import { isProven, solveFrom } from "./solveSet.ts";
import type { Work } from "./work.ts";

/** Blasius: f·ℓ/(2h) at one velocity. */
const TURBULENT_POWER = -1.25;

/** A skirt of a set in one place, whose gap the load moves. */
export interface MovingGap {
  readonly prepared: Prepared;
  readonly work: Work;
  readonly fitted: FittedSkirt;
  readonly place: PlacedSkirt;
  /** its leak at the gap as set */
  readonly fast: FastCase;
}

/** @returns whether the fast solvers follow a skirt to any gap: as set, it leaks under a lip that stands off */
export function isMovable({ fast, sealed, skirt }: PlacedSkirt): boolean {
  return fast !== null && !sealed && skirt.gap + skirt.roughness > 0;
}

/**
 * Writes the leak at another gap into a case.
 *
 *     v through the lip: area ∝ h, laminar ∝ h^−2, turbulent ∝ h^−1.25, crossing ∝ h^−1;  a measured leak C_L ∝ h^(4x−1)
 *
 * @param c - the case, laid out as {@link WARM}, SI
 * @param moving - skirt and its leak at the gap as set, SI
 * @param gap - h_set [m]; with the roughness above 0
 * @returns nothing
 *
 * Valid for {@link isMovable} skirts; as `skirtAtGap` and `asFastCase` give it, to rounding; allocates nothing. Source: docs/method/restriction.md
 */
function writeGap(c: Float64Array, { fast, place: { skirt } }: MovingGap, gap: number): void {
  const [before, now] = [skirt.gap + skirt.roughness, gap + skirt.roughness];
  const ratio = now / before;
  c[WARM.gapArea] = fast.gapArea * ratio;
  c[WARM.gapLaminar] = fast.gapLaminar / (ratio * ratio);
  c[WARM.gapTurbulent] = fast.gapTurbulent * ratio ** TURBULENT_POWER;
  c[WARM.gapCrossing] = fast.gapCrossing / ratio;
  c[WARM.leakExponent] = fast.leakExponent;
  if (fast.leakCoefficient > 0)
    c[WARM.leakCoefficient] = fast.leakCoefficient * ratio ** (4 * fast.leakExponent - 1);
  writeJoint(c, fast, skirt, now);
}

function writeJoint(c: Float64Array, fast: FastCase, skirt: SkirtInput, height: number): void {
  if (fast.jointArea === 0) return;
  const depth = skirt.joint?.depth ?? 0;
  const over = (height + depth) / (skirt.gap + skirt.roughness + depth);
  c[WARM.jointArea] = fast.jointArea * over;
  c[WARM.jointLaminar] = fast.jointLaminar / (over * over);
  c[WARM.jointTurbulent] = fast.jointTurbulent * over ** TURBULENT_POWER;
  c[WARM.jointCrossing] = fast.jointCrossing / over;
}

/** F_s with the lip on the surface: what else leaks is all that leaks. The next start is left as it was. */
function suctionTouching({ prepared, fitted, place, work, fast }: MovingGap): number {
  const { c, aside } = work;
  const { phi, gapVelocity, speed } = WARM_RESULT;
  const start = [phi, gapVelocity, speed].map((slot) => [slot, aside[slot]] as const);
  c[WARM.gapArea] = 0;
  c[WARM.leakCoefficient] = 0;
  c[WARM.leakExponent] = 1;
  writeJoint(c, fast, place.skirt, 0);
  const leaks = c[WARM.openingConductance] > 0 || c[WARM.jointArea] > 0;
  aside[gapVelocity] = aside[WARM_RESULT.pressure];
  const solved = leaks ? solveFrom(c, aside, false) : solveSealedCase(c, aside);
  const suction =
    solved && isProven(prepared.sizedRotors[work.sizedRotor], c, aside)
      ? Math.max(0, fastSuction(prepared, fitted, { ...place, lip: false }, c, aside))
      : Number.NaN;
  for (const [slot, value] of start) aside[slot] = value;
  return suction;
}

/**
 * F_s of a set at another gap, from the solution that lies aside.
 *
 *     the one crossing there by Newton's steps
 *
 * @param moving - the set, its skirt and place
 * @param gap - h_set [m]; with the roughness 0 the lip touches
 * @returns F_s, 0 where it would push off [N]; NaN where one crossing is not proven or the steps don't settle: then ask the general solver
 *
 * Valid for {@link isMovable} skirts; allocates nothing. Source: docs/method/holding.md
 */
export function suctionAtGap(moving: MovingGap, gap: number): number {
  if (gap + moving.place.skirt.roughness === 0) return suctionTouching(moving);
  const { prepared, fitted, place } = moving;
  const { c, aside } = moving.work;
  writeGap(c, moving, gap);
  if (!(solveFrom(c, aside, place.lip) && isProven(prepared.sizedRotors[moving.work.sizedRotor], c, aside)))
    return Number.NaN;
  return Math.max(0, fastSuction(prepared, fitted, place, c, aside));
}

/** Puts the leak at the gap as set back into the case. */
export function writeGapAsSet({ work, fitted }: MovingGap): void {
  if (fitted.fast) writeFastCase(work.c, fitted.fast);
}
