import { predictAny } from "../../physics/predictAny.ts";
import {
  type AttitudeUncertainty,
  type Spread,
  type StatedUncertainty,
  uncertaintyOf,
} from "../uncertainty.ts";
import { inputOf } from "./input.ts";
import { placesOf } from "./places.ts";
import type { Prepared } from "./prepare.ts";
import type { WantedAttitude } from "./problem.ts";

/** What the uncertainty of a set's numbers makes of its margin. */
export interface SetUncertainty {
  readonly index: number;
  /** least P(hold) of the wanted attitudes, each by itself [-] */
  readonly chance: number;
  /** least 5 % margin of them [-]; null: no suction needed */
  readonly margin5: number | null;
  /** standard deviation of the margin that is least at 5 % [-] */
  readonly deviation: number;
}

/** 5 and 95 % of a normal distribution lie this many standard deviations apart. */
const DEVIATIONS_APART = 2 * 1.6448536269514722;

const largest = (value: number | null): number => value ?? Number.POSITIVE_INFINITY;

function deviationOf({ p5, p95 }: Spread): number {
  return p5 === null || p95 === null ? 0 : (p95 - p5) / DEVIATIONS_APART;
}

function anglesOf(prepared: Prepared, index: number): number[] {
  const { attitudes } = prepared.problem.wants;
  const fixed = attitudes.flatMap(({ angle }) => (angle === "worst" ? [] : [angle]));
  if (fixed.length === attitudes.length) return fixed;
  const { worst } = predictAny(inputOf(prepared.problem, placesOf(prepared.radix, index)), []);
  const moving = attitudes.flatMap(({ angle, mode }) => (angle === "worst" ? [worst[mode].angle] : []));
  return [...fixed, ...moving];
}

/** Spread of each wanted attitude; "worst" is the set's own worst angle as stated. */
function spreadsOf(
  wanted: readonly WantedAttitude[],
  attitudes: readonly AttitudeUncertainty[],
  inOrder: readonly number[],
): Spread[] {
  const sorted = [
    ...wanted.filter(({ angle }) => angle !== "worst"),
    ...wanted.filter(({ angle }) => angle === "worst"),
  ];
  return sorted.flatMap(({ mode }, i) => {
    const found = attitudes.find(({ angle }) => angle === inOrder[i]);
    return found ? [found[mode]] : [];
  });
}

/**
 * P(hold) and the 5 % margin of one set: for a shortlist, since each takes thousands of solves.
 *
 *     doubtOf at every wanted attitude; the least of each
 *
 * @param prepared - the question
 * @param index - of the set [-]
 * @param asked - standard uncertainties by path, correlations, samples, seed
 * @returns chance and margins [-]
 * @throws {OutOfRangeError} as {@link uncertaintyOf}
 * @throws {NotEnoughDataError} as {@link uncertaintyOf}
 *
 * Valid as {@link uncertaintyOf}; all attitudes together hold no more often than the least of them. Source: docs/method/uncertainty.md
 */
export function setUncertainty(
  prepared: Prepared,
  index: number,
  asked: Omit<StatedUncertainty, "angles">,
): SetUncertainty {
  const input = inputOf(prepared.problem, placesOf(prepared.radix, index));
  const angles = anglesOf(prepared, index);
  const doubt = uncertaintyOf(input, { ...asked, angles: [...new Set(angles)] });
  const spreads = spreadsOf(prepared.problem.wants.attitudes, doubt.attitudes, angles);
  const [least] = [...spreads].sort((a, b) => largest(a.p5) - largest(b.p5));
  return {
    index,
    chance: spreads.reduce((chance, { holds }) => Math.min(chance, holds), 1),
    margin5: least?.p5 ?? null,
    deviation: least ? deviationOf(least) : 0,
  };
}

/** A set in a ranking, with the uncertainty of what it is ranked by. */
export interface Ranked {
  readonly index: number;
  readonly value: number;
  /** standard deviation of the value, ≥ 0 [same unit] */
  readonly deviation: number;
}

/**
 * Places of ranked sets, ties sharing one.
 *
 *     a tie with the first of its place: |v − v₁| ≤ √(s² + s₁²)
 *
 * @param ranked - sets in the order of their rank, best first
 * @returns the place of each, from 1 up; sets that differ from the first of a place by less than their uncertainty share it [-]
 *
 * Valid for independent uncertainties; sets that share parts differ by less uncertainty than this says, so it calls a tie too often rather than too seldom
 */
export function placesWithTies(ranked: readonly Ranked[]): number[] {
  let first = ranked[0];
  let place = 1;
  return ranked.map((set, i) => {
    const apart = Math.abs(set.value - first.value);
    if (apart > Math.hypot(set.deviation, first.deviation)) {
      first = set;
      place = i + 1;
    }
    return place;
  });
}
