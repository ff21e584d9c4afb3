/** What can burn, burst or run empty, in the order of a reading. */
export type LimitKey =
  | "winding"
  | "motor-voltage"
  | "motor-current"
  | "cell-current"
  | "cell-voltage"
  | "rotor-speed";

export type Nearness = "within" | "near" | "beyond" | "unknown";

/** Which caution of the trade belongs to a limit. */
export type CautionKey = "motor" | "cells" | "rotor" | "fall";

/** One figure against what it must not pass. */
export interface Limit {
  readonly key: LimitKey;
  /** as it is, SI; null where it isn't known */
  readonly value: number | null;
  /** what it must not pass, SI; null where it isn't known */
  readonly limit: number | null;
  /** how much of the way to the limit is used; 1 at the limit [-]; null where either isn't known */
  readonly ratio: number | null;
  readonly verdict: Nearness;
  /** what gives what isn't known, one sentence; null where all is */
  readonly missing: string | null;
  readonly caution: CautionKey;
  readonly estimated: boolean;
}

/** From this share of the way to a limit on it is near. A choice, as a maker keeps a fifth in hand; common practice, no source. */
export const NEAR = 0.8;

/** A limit before it is judged. */
export type Judged = Omit<Limit, "ratio" | "verdict"> & {
  /** value and limit, turned into the share of the way that is used [-] */
  readonly share?: (value: number, limit: number) => number;
};

/**
 * Judges a figure against its limit.
 *
 *     ratio = value/limit unless told otherwise;  near from 0.8, beyond above 1
 *
 * @param judged - value and limit [SI], null where not known; its share of the way [-]
 * @returns the limit with ratio [-] and verdict
 *
 * Valid for limits that are approached from below, by their share. Source: docs/method/limits.md
 */
export function judge({ share = (value, limit) => value / limit, ...limit }: Judged): Limit {
  if (limit.value === null || limit.limit === null) return { ...limit, ratio: null, verdict: "unknown" };
  const ratio = share(limit.value, limit.limit);
  return { ...limit, ratio, verdict: nearness(ratio), missing: null };
}

function nearness(ratio: number): Nearness {
  if (ratio > 1) return "beyond";
  return ratio >= NEAR ? "near" : "within";
}
