import { minimiseScalar } from "../../numeric/minimiseScalar.ts";
import { STANDARD_GRAVITY } from "../../physics/constants.ts";
import { cosineOfDegrees, sineOfDegrees } from "../../physics/hold/angle.ts";
import { leastOfParabola, SMOOTH } from "../../physics/hold/holdUnder.ts";
import { weightIn } from "../../physics/hold/law.ts";
import { type MovingGap, suctionAtGap } from "./gapLaw.ts";
import {
  type GivingNeeds,
  LIFT_OFF,
  MODE_COUNT,
  neededBy,
  SCAN_STEP,
  SCANNED,
  type StateNeeds,
} from "./givingNeeds.ts";

/** Margins of a combination, one object a thread. */
export interface Margins {
  parked: number;
  driving: number;
}

/** Gaps through which the stand-in for the pull goes. */
const NODES = 5;
/** The stand-in may be this far off where it is compared, relative; else the general solver is asked. */
const OFF = 0.01;
/** What the stand-in has within this of the least is solved, relative. */
const WINDOW = 0.03;
/** Half-width of the parabola through margins next to the worst attitude [°], on the stand-in and on the pull itself. */
const [BESIDE, CLOSE] = [0.5, 0.1];
const MOST_STEPS = 12;
/** The stand-in's least may lie this far from that of the pull itself [°]. */
const FARTHEST = 12;
/** Steps this small on the stand-in, and on the pull itself, are the last of their kind [°]. */
const [NEARLY, NEAR] = [0.02, 0.02];
const CEILING = 180;
/** Digits of a worst attitude that the parabolas do not lead to, relative: at a kink its margin has no more. */
const ANGLE_TOLERANCE = 1e-9;

const xs = new Float64Array(NODES);
const ys = new Float64Array(NODES);
const scan = new Float64Array(MODE_COUNT * SCANNED);

/** A combination on running gear that gives: where its gap is by its load, and a stand-in for its pull. */
interface Giving {
  readonly moving: MovingGap;
  readonly needs: GivingNeeds;
  readonly mass: number;
  /** N₀ [N] and 1/k [m/N] */
  readonly load: number;
  readonly compliance: number;
}

const gapUnder = ({ moving, load, compliance }: Giving, on: number): number =>
  Math.max(0, moving.place.skirt.gap - (on - load) * compliance);

/** 1/F_s a polynomial through five gaps: Newton's divided differences. @returns whether it stands */
function standIn(giving: Giving, narrow: number, wide: number): boolean {
  for (let i = NODES - 1; i >= 0; i--) {
    xs[i] = narrow + ((wide - narrow) * i) / (NODES - 1);
    ys[i] = 1 / suctionAtGap(giving.moving, xs[i]);
    if (!(ys[i] < Number.POSITIVE_INFINITY)) return false;
  }
  for (let order = 1; order < NODES; order++)
    for (let i = NODES - 1; i >= order; i--) ys[i] = (ys[i] - ys[i - 1]) / (xs[i] - xs[i - order]);
  return true;
}

function roughSuction(gap: number): number {
  let inverse = ys[NODES - 1];
  for (let i = NODES - 2; i >= 0; i--) inverse = inverse * (gap - xs[i]) + ys[i];
  return 1 / inverse;
}

const roughMargin = (giving: Giving, required: number, load: number): number =>
  roughSuction(gapUnder(giving, load * giving.mass)) / (required * giving.mass);

/** NaN where the stand-in is too far off, or the pull has no fast answer. */
function exactMargin(giving: Giving, required: number, load: number): number {
  const gap = gapUnder(giving, load * giving.mass);
  const suction = suctionAtGap(giving.moving, gap);
  return Math.abs(roughSuction(gap) - suction) <= OFF * suction
    ? suction / (required * giving.mass)
    : Number.NaN;
}

type MarginLaw = typeof exactMargin;

function marginOn(giving: Giving, mode: number, angle: number, law: MarginLaw): number {
  const { unit } = giving.needs;
  const [sine, cosine] = [sineOfDegrees(angle), cosineOfDegrees(angle)];
  const required = neededBy(unit, mode, sine, cosine);
  if (!(required > 0)) return Number.POSITIVE_INFINITY;
  return law(giving, required, required + weightIn(unit) * cosine);
}

/** By parabolas, on the stand-in and then on the pull itself; NaN where they lead nowhere: the gap closes there, or an end is near. */
function steppedTo(giving: Giving, mode: number, from: number): number {
  let [angle, isExact] = [from, false];
  for (let step = 0; step < MOST_STEPS; step++) {
    const law = isExact ? exactMargin : roughMargin;
    const beside = isExact ? CLOSE : BESIDE;
    if (!(angle >= beside && angle <= CEILING - beside)) return Number.NaN;
    const left = marginOn(giving, mode, angle - beside, law);
    const middle = marginOn(giving, mode, angle, law);
    const right = marginOn(giving, mode, angle + beside, law);
    const bend = left - 2 * middle + right;
    const move = (0.5 * beside * (left - right)) / bend;
    if (!(bend > 0 && Math.abs(angle + move - from) <= FARTHEST)) return Number.NaN;
    angle += move;
    if (isExact && Math.abs(move) <= NEAR) {
      const there = marginOn(giving, mode, angle, exactMargin);
      const told = leastOfParabola(left, middle, right);
      return Math.abs(there - told) <= SMOOTH * told ? Math.min(middle, there) : Number.NaN;
    }
    isExact ||= Math.abs(move) <= NEARLY;
  }
  return Number.NaN;
}

/** Least margin of one mode within a step of an attitude. */
function leastNear(giving: Giving, mode: number, from: number): number {
  // under lift-off the load is none on any attitude: the ceiling needs most
  if (mode === LIFT_OFF) return marginOn(giving, mode, CEILING, exactMargin);
  const stepped = steppedTo(giving, mode, from);
  if (!Number.isNaN(stepped)) return stepped;
  const [low, high] = [Math.max(0, from - SCAN_STEP), Math.min(CEILING, from + SCAN_STEP)];
  let isSure = true;
  const at = (angle: number): number => {
    const margin = marginOn(giving, mode, angle, exactMargin);
    if (!Number.isNaN(margin)) return margin;
    isSure = false;
    return Number.POSITIVE_INFINITY;
  };
  const { value } = minimiseScalar(at, low, high, { tolerance: ANGLE_TOLERANCE });
  const [first, last] = [at(low), at(high)];
  // down to an edge, the least lies beyond it
  if ((low > 0 && first <= value) || (high < CEILING && last <= value) || !isSure) return Number.NaN;
  return Math.min(first, last, value);
}

/** The stand-in's margins over the attitudes, a mode after the other; infinite where none is needed. */
function writeScan(giving: Giving, scanned: readonly Float64Array[]): number {
  let [least, place] = [Number.POSITIVE_INFINITY, 0];
  for (const pairs of scanned)
    for (let i = 0; i < pairs.length; i += 2) {
      const margin = pairs[i] > 0 ? roughMargin(giving, pairs[i], pairs[i + 1]) : Number.POSITIVE_INFINITY;
      scan[place++] = margin;
      if (margin < least) least = margin;
    }
  return least;
}

/** Least over the attitudes, sought in each valley that reaches down far enough. */
function leastOverAll(giving: Giving, modes: number, limit: number): number {
  let least = Number.POSITIVE_INFINITY;
  for (let mode = 0; mode < modes; mode++)
    for (let i = 0; i < SCANNED; i++) {
      const at = mode * SCANNED + i;
      const isLow = (i === 0 || scan[at] <= scan[at - 1]) && (i === SCANNED - 1 || scan[at] < scan[at + 1]);
      if (isLow && scan[at] <= limit) least = Math.min(least, leastNear(giving, mode, i * SCAN_STEP));
    }
  return least;
}

/** Least margin over what one state wants; NaN where the fast way is not sure. */
function stateMargin(giving: Giving, { fixed, scanned }: StateNeeds): number {
  let rough = scanned ? writeScan(giving, scanned) : Number.POSITIVE_INFINITY;
  for (let i = 0; i < fixed.length; i += 2)
    rough = Math.min(rough, roughMargin(giving, fixed[i], fixed[i + 1]));
  // a stand-in that falls below nothing says nothing of where the least may lie
  if (!(rough > 0)) return Number.NaN;
  const limit = rough * (1 + WINDOW);
  let least = leastOverAll(giving, scanned?.length ?? 0, limit);
  for (let i = 0; i < fixed.length; i += 2)
    if (roughMargin(giving, fixed[i], fixed[i + 1]) <= limit)
      least = Math.min(least, exactMargin(giving, fixed[i], fixed[i + 1]));
  return least;
}

/**
 * Margins of a combination whose running gear gives, each mode judged at its own limit, by the fast solvers.
 *
 *     the least over the wanted attitudes: looked for on 1/F_s a polynomial in h through five gaps, solved where it may lie
 *
 * @param moving - the set, its skirt and place; its solution at the gap as set lies aside
 * @param mass - of the combination [kg]
 * @param out - written [-]; infinite where no suction is needed
 * @returns whether they are sure; where not, ask the general solver
 *
 * Valid for combinations of one proven crossing and {@link isMovable} skirts; agrees with the prediction to 1e-9. Source: docs/method/holding.md
 */
export function givingMargins(moving: MovingGap, mass: number, out: Margins): boolean {
  const needs = moving.fitted.giving;
  const { verticalStiffness, gapLoad } = moving.prepared.problem.fixed.vehicle;
  if (!needs || !verticalStiffness) return false;
  out.parked = Number.POSITIVE_INFINITY;
  out.driving = Number.POSITIVE_INFINITY;
  if (!needs.loads) return true;
  const load = gapLoad ?? mass * STANDARD_GRAVITY;
  const giving = { moving, needs, mass, load, compliance: 1 / verticalStiffness };
  const [narrow, wide] = [gapUnder(giving, needs.loads[1] * mass), gapUnder(giving, needs.loads[0] * mass)];
  if (!(wide > narrow) || !standIn(giving, narrow, wide)) return false;
  out.parked = stateMargin(giving, needs.parked);
  out.driving = stateMargin(giving, needs.driving);
  return !(Number.isNaN(out.parked) || Number.isNaN(out.driving));
}
