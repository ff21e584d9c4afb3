import type { AnyPrediction } from "../../physics/predictAny.ts";
import { deviationOf, type Spread } from "../spread.ts";
import type { AttitudeUncertainty } from "../uncertainty.ts";
import type { WantedAttitude } from "./problem.ts";

/** A wanted attitude, the angle of "worst" found. */
export interface PlacedAttitude {
  /** θ [°] */
  readonly angle: number;
  readonly mode: WantedAttitude["mode"];
}

/** A wanted attitude and what was sampled on it. */
export interface WantedSpread extends PlacedAttitude {
  readonly spread: Spread;
}

/** What a combination's uncertainty leaves of what is wanted of it. */
export interface WantedLeast {
  /** least chance of holding of the wanted attitudes, each by itself [-] */
  readonly chance: number;
  /** least 5 % margin of them [-]; null: no suction needed */
  readonly margin5: number | null;
  /** standard deviation of the margin that is least at 5 % [-] */
  readonly deviation: number;
}

const largest = (value: number | null): number => value ?? Number.POSITIVE_INFINITY;

/** @returns wanted attitudes by their angles; "worst" is the one that is worst of the build as stated, in that mode */
export function placed(
  wanted: readonly WantedAttitude[],
  worst: () => AnyPrediction["worst"],
): PlacedAttitude[] {
  return wanted.map(({ angle, mode }) => ({ mode, angle: angle === "worst" ? worst()[mode].angle : angle }));
}

/** @returns each wanted attitude with what was sampled on it */
export function spreadsOf(
  wanted: readonly PlacedAttitude[],
  sampled: readonly AttitudeUncertainty[],
): WantedSpread[] {
  return wanted.flatMap(({ angle, mode }) => {
    const found = sampled.find((each) => each.angle === angle);
    return found ? [{ angle, mode, spread: found[mode] }] : [];
  });
}

/**
 * The least of what was sampled on the wanted attitudes.
 *
 *     chance = min P(hold), margin5 = min of the 5 % margins; deviation = (p95 − p5)/3.29 of the attitude with that margin
 *
 * @param spreads - of the wanted attitudes [-]
 * @returns chance, margin and deviation [-]; 1, null and 0 where no attitude is wanted
 *
 * Valid for each attitude by itself: all of them together hold no more often than the least. Source: docs/method/choosing.md
 */
export function leastOf(spreads: readonly WantedSpread[]): WantedLeast {
  const [least] = [...spreads].sort((a, b) => largest(a.spread.p5) - largest(b.spread.p5));
  return {
    chance: spreads.reduce((chance, { spread }) => Math.min(chance, spread.holds), 1),
    margin5: least?.spread.p5 ?? null,
    deviation: least ? deviationOf(least.spread) : 0,
  };
}
