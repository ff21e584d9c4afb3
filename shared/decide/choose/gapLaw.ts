import { type FastCase, writeFastCase } from "../../physics/point/fastCase.ts";
import { writeLeakAtGap } from "../../physics/point/leakAtGap.ts";
import { solveSealedCase, WARM, WARM_RESULT } from "../../physics/point/newtonWarm.ts";
import type { FittedSkirt, PlacedSkirt } from "./fittedSkirt.ts";
import type { Prepared } from "./prepare.ts";
import { fastSuction } from "./pullOf.ts";
import { isProven, solveFrom } from "./solveCombination.ts";
import type { Work } from "./work.ts";

/** A skirt of a combination in one place, whose gap the load moves. */
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

/** F_s with the lip on the surface: what else leaks is all that leaks. The next start is left as it was. */
function suctionTouching({ prepared, fitted, place, work }: MovingGap): number {
  const { c, aside } = work;
  const { phi, gapVelocity, speed } = WARM_RESULT;
  const start = [phi, gapVelocity, speed].map((slot) => [slot, aside[slot]] as const);
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
 * F_s of a combination at another gap, from the solution that lies aside.
 *
 *     the one crossing there by Newton's steps
 *
 * @param moving - the combination, its skirt and place
 * @param gap - h_set [m]; with the roughness 0 the lip touches
 * @returns F_s, 0 where it would push off [N]; NaN where one crossing is not proven or the steps don't settle: then ask the general solver
 *
 * Valid for {@link isMovable} skirts; allocates nothing. Source: docs/method/holding.md
 */
export function suctionAtGap(moving: MovingGap, gap: number): number {
  const { prepared, fitted, place, fast } = moving;
  const { c, aside } = moving.work;
  if (!writeLeakAtGap(c, fast, place.skirt, gap)) return suctionTouching(moving);
  if (!(solveFrom(c, aside, place.lip) && isProven(prepared.sizedRotors[moving.work.sizedRotor], c, aside)))
    return Number.NaN;
  return Math.max(0, fastSuction(prepared, fitted, place, c, aside));
}

/** Puts the leak at the gap as set back into the case. */
export function writeGapAsSet({ work, fitted }: MovingGap): void {
  if (fitted.fast) writeFastCase(work.c, fitted.fast);
}
