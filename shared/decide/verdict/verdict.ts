import { WINDING_ALARM } from "../../physics/point/notes.ts";
import type { Limit, LimitKey } from "../limits/limit.ts";
import { SAME_ANGLE } from "./attitudeWords.ts";
import {
  type Chance,
  type Crossing,
  type Findings,
  type HeldAttitude,
  type Least,
  leastOf,
} from "./findings.ts";
import type { VerdictState } from "./states.ts";

/** Chance of holding from which on a build is sure. Common practice, no source. */
export const SURE = 0.95;

/** What decides a verdict, in figures. */
export type Reason =
  /** ω that it would reach and at which it bursts [rad/s], their ratio below 1 [-] */
  | {
      readonly kind: "burst";
      readonly speed: number;
      readonly burstSpeed: number;
      readonly share: number;
    }
  /** where it settles and what it takes [K]; usual: the limit is that of common wire, the motor states none; seconds from cold to it */
  | {
      readonly kind: "winding";
      readonly temperature: number;
      readonly limit: number;
      readonly usual: boolean;
      readonly after: number | null;
    }
  | { readonly kind: "standing" }
  /** attitudes lost parked, and those that it holds and can't drive up */
  | {
      readonly kind: "margins";
      readonly lost: readonly HeldAttitude[];
      readonly unclimbed: readonly HeldAttitude[];
      readonly kept: readonly HeldAttitude[];
    }
  /** those passed, the one passed furthest first */
  /** what it holds beside a joint and loses over it */
  | { readonly kind: "joint"; readonly crossing: Crossing; readonly least: Least }
  | { readonly kind: "ratings"; readonly limits: readonly Limit[] }
  | { readonly kind: "target"; readonly target: number }
  | { readonly kind: "contradiction"; readonly messages: readonly string[] }
  | { readonly kind: "chance"; readonly chance: Chance }
  | { readonly kind: "holds" };

/** What a build comes to, and why. */
export interface Verdict {
  readonly state: VerdictState;
  readonly reason: Reason;
  /** the least margin there is; null where no suction is needed */
  readonly least: Least | null;
  /** F_s [N] */
  readonly suction: number;
  readonly chance: Chance | null;
  /** the limit that comes nearest without being passed, among those that burn or burst by themselves */
  readonly nearest: Limit | null;
  /** ratings that are passed, whatever the state; the one passed furthest first */
  readonly passed: readonly Limit[];
  /** limits that nothing is known of */
  readonly notJudged: readonly LimitKey[];
  /** charge that the limits were judged from; null where the voltage is as given [-] */
  readonly fromCharge: number | null;
}

type Found = Pick<Verdict, "state" | "reason">;

const falls = (margin: number | null) => margin !== null && margin < 1;

function bursting({ rotor: { factor, speed, burstSpeed } }: Findings): Found | null {
  if (factor === null || burstSpeed === null || !(factor < 1)) return null;
  return { state: "bursts", reason: { kind: "burst", speed, burstSpeed, share: factor } };
}

function burning({ limits, burnsAfter }: Findings): Found | null {
  const winding = limits.find(({ key }) => key === "winding");
  if (!winding || winding.value === null) return null;
  const usual = winding.limit === null;
  const limit = winding.limit ?? WINDING_ALARM;
  const { value: temperature } = winding;
  if (!(temperature > limit)) return null;
  return { state: "burns", reason: { kind: "winding", temperature, limit, usual, after: burnsAfter } };
}

/** The attitudes, and the worst one where none of them is it. */
function withWorst({ attitudes, worst }: Findings, state: "parked" | "driving"): HeldAttitude[] {
  const { angle, margin } = worst[state];
  const named = attitudes.some((each) => Math.abs(each.angle - angle) < SAME_ANGLE);
  const own = { name: "", angle, parked: state === "parked" ? margin : null, driving: margin };
  return named ? [...attitudes] : [...attitudes, own];
}

function fallingOver(findings: Findings): Found | null {
  const least = leastOf(findings);
  const [crossing] = findings.crossings;
  if (!least?.over || !falls(least.margin)) return null;
  return { state: "falls", reason: { kind: "joint", crossing, least } };
}

function falling(findings: Findings): Found | null {
  if (!findings.turns && leastOf(findings) !== null) return { state: "falls", reason: { kind: "standing" } };
  const { worst } = findings;
  if (!falls(worst.parked.margin) && !falls(worst.driving.margin)) return fallingOver(findings);
  const lost = withWorst(findings, "parked").filter(({ parked }) => falls(parked));
  const unclimbed = withWorst(findings, "driving").filter(
    ({ parked, driving }) => !falls(parked) && falls(driving),
  );
  const kept = findings.attitudes.filter(({ parked }) => !falls(parked));
  const climbs = falls(worst.parked.margin) ? unclimbed.filter(({ name }) => name !== "") : unclimbed;
  return { state: "falls", reason: { kind: "margins", lost, unclimbed: climbs, kept } };
}

const ratioOf = ({ ratio }: Limit) => ratio ?? Number.NEGATIVE_INFINITY;

/** Ratings that are passed, the one passed furthest first. */
function passedOf({ limits }: Findings): Limit[] {
  const passed = limits.filter(({ key, verdict }) => key !== "winding" && verdict === "beyond");
  return passed.sort((a, b) => ratioOf(b) - ratioOf(a));
}

function overRating(findings: Findings): Found | null {
  const limits = passedOf(findings);
  return limits.length === 0 ? null : { state: "over-rating", reason: { kind: "ratings", limits } };
}

function tight({ target }: Findings, least: Least | null): Found | null {
  if (!least || !(least.margin < target)) return null;
  return { state: "tight", reason: { kind: "target", target } };
}

function unsure({ contradictions, chance }: Findings): Found | null {
  if (contradictions.length > 0)
    return { state: "unsure", reason: { kind: "contradiction", messages: contradictions } };
  if (!chance || chance.holds >= SURE) return null;
  return { state: "unsure", reason: { kind: "chance", chance } };
}

/** A voltage is a cause and acts through these; the cell's runs down in every run. */
const HURTS: readonly LimitKey[] = ["rotor-speed", "motor-current", "cell-current", "winding"];

function nearestOf({ limits }: Findings): Limit | null {
  const within = limits.filter(
    ({ key, ratio }) => HURTS.includes(key) && ratio !== null && Number.isFinite(ratio) && ratio <= 1,
  );
  return within.reduce<Limit | null>(
    (most, each) => (most && ratioOf(most) >= ratioOf(each) ? most : each),
    null,
  );
}

/**
 * What a build comes to: the worst of all that is found of it.
 *
 *     bursts: ω_burst < ω;  burns: T > T_limit;  falls: margin < 1;  over a rating: ratio > 1;  tight: margin < target;  unsure: contradicting tests, or chance of holding < 0.95;  holds
 *
 * @param findings - margins [-], limits with their ratios [-], rotor [rad/s], chance [-], contradictions
 * @returns the state with its reason in figures [rad/s, K, °, -], the least margin, the nearest limit, the limits not judged
 *
 * Valid as what it is made from; a winding without a stated limit is held against the 155 °C of common wire. Source: docs/method/verdict.md
 */
export function verdictOf(findings: Findings): Verdict {
  const least = leastOf(findings);
  const found = bursting(findings) ??
    burning(findings) ??
    falling(findings) ??
    overRating(findings) ??
    tight(findings, least) ??
    unsure(findings) ?? { state: "holds", reason: { kind: "holds" } };
  return {
    ...found,
    least,
    suction: findings.suction,
    chance: findings.chance,
    nearest: nearestOf(findings),
    passed: passedOf(findings),
    notJudged: findings.limits.filter(({ verdict }) => verdict === "unknown").map(({ key }) => key),
    fromCharge: findings.fromCharge,
  };
}
