import { answerOrNull } from "../../numeric/errors.ts";
import { type Setting, settingOf, withSetting } from "./change.ts";
import type { Chance, Findings } from "./findings.ts";
import { type Case, found } from "./judge.ts";
import { isDestroyed, rankOf, type VerdictState } from "./states.ts";
import { SURE, type Verdict, verdictOf } from "./verdict.ts";

/** One setting's nearest value at which the verdict is better, and what it then is. */
export interface WayOut {
  readonly setting: Setting;
  /** at which the search ended, in whole steps of what a maker sets [-, kg or m] */
  readonly value: number;
  /** margin that was looked for; null: that the rotor turns, limits are kept, or the chance is there [-] */
  readonly wanted: number | null;
  readonly verdict: Verdict;
  /** ω that the rotor would reach there, from a full charge, cold [rad/s] */
  readonly speed: number;
}

/** What a maker sets: whole per cent, cells, grams, hundredths of a millimetre. */
const STEP: Readonly<Record<Setting, number>> = { throttle: 0.01, cells: 1, mass: 1e-3, gap: 1e-5 };
/** Cells looked at beyond the present ones. Our choice. */
const MORE_CELLS = 3;
/** Of the present mass. Our choice, as in the ways to hold. */
const LIGHTEST = 0.2;
/** Keeps a value that lies on its grid there in spite of rounding [-]. */
const GRID_SLACK = 1e-9;

interface Tried {
  readonly verdict: Verdict;
  readonly findings: Findings;
}

/** What a value comes to; null where there is no answer. */
function tried(of: Case, setting: Setting, value: number): Tried | null {
  return answerOrNull(() => {
    const findings = found(withSetting(of, setting, value));
    return { findings, verdict: verdictOf(findings) };
  });
}

/** Steps between the present value, not included, and an end, nearest first. */
function stepsTo(now: number, end: number, step: number): number {
  return Math.max(0, Math.floor((Math.abs(now - end) / step) * (1 + GRID_SLACK)));
}

/** The k-th value of a setting's grid from the present one on. */
function valueAt(now: number, step: number, towards: 1 | -1, k: number): number {
  const grid = now / step;
  const first = towards < 0 ? Math.ceil(grid - GRID_SLACK) - 1 : Math.floor(grid + GRID_SLACK) + 1;
  return Number(((first + towards * (k - 1)) * step).toPrecision(12));
}

type Clears = (verdict: Verdict) => boolean;

interface Search {
  readonly setting: Setting;
  readonly end: number;
  readonly towards: 1 | -1;
  readonly wanted: number | null;
  /** the cause is gone: from some step on, and so to the end */
  readonly clears: Clears;
  /** what must hold besides where the cause is gone */
  readonly keeps: Clears;
}

type Direction = Pick<Search, "setting" | "end" | "towards">;

/** The nearest step at which the cause is gone, by halving: the cause gives way in one direction. */
function nearestStep(of: Case, search: Search): WayOut | null {
  const { setting, end, towards, wanted, clears, keeps } = search;
  const now = settingOf(of, setting);
  if (now === null) return null;
  const step = STEP[setting];
  const look = (k: number) => {
    const at = tried(of, setting, valueAt(now, step, towards, k));
    return at && clears(at.verdict) ? at : null;
  };
  let high = stepsTo(now, end, step);
  let best = high > 0 ? look(high) : null;
  if (!best) return null;
  let low = 0;
  while (high - low > 1) {
    const middle = (low + high) >> 1;
    const at = look(middle);
    if (at) [high, best] = [middle, at];
    else low = middle;
  }
  if (!keeps(best.verdict)) return null;
  const value = valueAt(now, step, towards, high);
  return { setting, value, wanted, verdict: best.verdict, speed: best.findings.rotor.speed };
}

const PAST_LIMITS: readonly VerdictState[] = ["bursts", "burns", "over-rating"];
/** A verdict of "falls" hides a rating that is passed as well, so the limits are asked one by one. */
const keepsLimits: Clears = ({ state, passed }) => !isDestroyed(state) && passed.length === 0;
const reaches =
  (margin: number): Clears =>
  ({ least, reason }) =>
    reason.kind !== "standing" && (least === null || least.margin >= margin);
/** Nothing is destroyed for it, and no rating passed that wasn't before. */
const passesNoMore =
  (before: Verdict): Clears =>
  ({ state, passed }) =>
    !isDestroyed(state) && passed.length <= before.passed.length;

function searchesFor(of: Case, before: Verdict): Search[] {
  const { supply, pack, vehicle } = of.build;
  const { state, reason } = before;
  const each = (directions: Direction[], clears: Clears, wanted: number | null) =>
    directions.map((direction) => ({ ...direction, clears, wanted, keeps: passesNoMore(before) }));
  const less: Direction[] = [
    { setting: "throttle", end: STEP.throttle, towards: -1 },
    { setting: "cells", end: 1, towards: -1 },
  ];
  if (PAST_LIMITS.includes(state)) return each(less, keepsLimits, null);
  if (state !== "falls" && state !== "tight") return [];
  const lighter: Direction[] = [
    { setting: "mass", end: LIGHTEST * vehicle.mass, towards: -1 },
    { setting: "gap", end: 0, towards: -1 },
  ];
  const stronger: Direction[] = [
    ...(supply.duty < 1 ? [{ setting: "throttle", end: 1, towards: 1 } as const] : []),
    ...(state === "falls" ? [{ setting: "cells", end: pack.series + MORE_CELLS, towards: 1 } as const] : []),
  ];
  const directions = reason.kind === "standing" ? stronger : [...lighter, ...stronger];
  const margins = state === "falls" && of.target > 1 ? [1, of.target] : [of.target];
  return margins.flatMap((margin) => each(directions, reaches(margin), margin));
}

/**
 * The nearest values of one setting alone at which a verdict's cause is gone, best first.
 *
 *     bursts, burns, over a rating: throttle or cells down until every limit is kept;  falls, tight: mass or gap down, throttle or cells up, until the margin is there and no limit passed
 *
 * @param of - the build as a case [SI]
 * @param verdict - of that case
 * @returns ways whose own verdict is better than the present one; none where no value of one setting alone is [-, kg, m; rad/s]
 * @throws {OutOfRangeError} with the path of a number that can't be
 *
 * Valid where limits ease and margins grow in one direction of each setting; every value is solved and judged as a build of its own. Source: docs/method/verdict.md
 */
export function waysOut(of: Case, verdict: Verdict): WayOut[] {
  const ways = searchesFor(of, verdict).flatMap((search) => nearestStep(of, search) ?? []);
  const better = ways.filter((way) => rankOf(way.verdict.state) > rankOf(verdict.state));
  return better.sort((a, b) => rankOf(b.verdict.state) - rankOf(a.verdict.state));
}

/** Rounds of sampling in search of a mass that is surely held. */
const ROUNDS = 5;

/**
 * The mass from which down an unsure build is sure.
 *
 *     m·q₅, as F_required ∝ m; sampled anew there, until chance of holding ≥ 0.95
 *
 * @param of - the build as a case [SI]
 * @param chance - of that case
 * @param sample - least chance of holding of a case, by sampling
 * @returns mass in whole grams with its verdict [kg]; null where none is found
 * @throws {OutOfRangeError} with the path of a number that can't be
 *
 * Valid for uncertainties that don't grow as the vehicle gets lighter. Source: docs/method/verdict.md
 */
export function surelyHeldMass(of: Case, chance: Chance, sample: (at: Case) => Chance | null): WayOut | null {
  let [mass, now] = [of.build.vehicle.mass, chance];
  for (let round = 0; round < ROUNDS && now.holds < SURE; round++) {
    if (now.margin5 === null || !(now.margin5 > 0)) return null;
    mass = valueAt(mass * Math.min(1, now.margin5), STEP.mass, -1, 1);
    if (!(mass >= LIGHTEST * of.build.vehicle.mass)) return null;
    now = sample(withSetting(of, "mass", mass)) ?? now;
  }
  if (now.holds < SURE) return null;
  const at = tried(of, "mass", mass);
  if (!at) return null;
  const verdict = verdictOf({ ...at.findings, chance: now });
  return { setting: "mass", value: mass, wanted: null, verdict, speed: at.findings.rotor.speed };
}
