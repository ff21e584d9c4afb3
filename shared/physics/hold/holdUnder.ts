import { minimiseScalar } from "../../numeric/minimiseScalar.ts";
import { createPchip } from "../../numeric/pchip.ts";
import { cosineOfDegrees, sineOfDegrees } from "./angle.ts";
import { type Hold, holdOf, MODES, type Mode, marginsToHold, PARKED_MODES } from "./holdAt.ts";
import { CONDITION_COUNT, CONDITIONS, type HoldLaw, neededSuction, weightIn } from "./law.ts";
import type { Giving, Pull } from "./pull.ts";
import { type Worst, worstAttitude, worstOf } from "./worst.ts";

/** A hold whose gap gives: with the stand-off at which each mode was judged. */
export interface GivingHold extends Hold {
  /** at the limit of each mode [m]; null where the mode needs no suction or none suffices */
  readonly gaps?: Readonly<Record<Mode, number | null>>;
}

/** Load on the vehicle where a mode lets go: N_lim = F_required + W cos θ [N]. */
const limitLoad = (law: HoldLaw, required: number, cosine: number): number =>
  required + weightIn(law) * cosine;

const isLimit = (required: number): boolean => required > 0 && required < Number.POSITIVE_INFINITY;

function givingHold(law: HoldLaw, set: number, giving: Giving, angle: number): GivingHold {
  const rigid = holdOf(law, set, angle);
  const cosine = cosineOfDegrees(angle);
  const each = (of: (load: number, mode: Mode) => number, otherwise: (mode: Mode) => number | null) =>
    Object.fromEntries(
      MODES.map((mode) => {
        const required = rigid.required[mode];
        return [mode, isLimit(required) ? of(limitLoad(law, required, cosine), mode) : otherwise(mode)];
      }),
    ) as Record<Mode, number | null>;
  const margins = each(
    (load, mode) => giving.at(giving.gapUnder(load)) / rigid.required[mode],
    (mode) => rigid.margins[mode],
  );
  const gaps = each(
    (load) => giving.gapUnder(load),
    () => null,
  );
  return { ...rigid, ...marginsToHold(margins), gaps };
}

/**
 * How a vehicle holds on one attitude, each mode judged at its own limit where the gap gives.
 *
 *     N_lim = F_required + W cos θ,  margin = F_s(h(N_lim))/F_required;  rigid: as {@link holdOf}
 *
 * @param law - from {@link compileHold} [-, N, N]
 * @param pull - rigid or giving [N]
 * @param angleDegrees - θ of the surface [°], 0…180
 * @returns angle [°], suction required [N] and margin [-] of each mode, the least parked and driving [-]; where the gap gives, the stand-off at each limit [m]
 * @throws {OutOfRangeError} on an angle beyond 0…180
 *
 * Valid for a slow change of load. Whether a condition that no suction helps is met is judged at the gap as set.
 * Source: it holds exactly where the equilibrium under load does, as F_s rises while the gap closes; docs/method/holding.md
 */
export function holdUnder(law: HoldLaw, pull: Pull, angleDegrees: number): GivingHold {
  const { set, giving } = pull;
  return giving ? givingHold(law, set, giving, angleDegrees) : holdOf(law, set, angleDegrees);
}

/** Modes of a state, by the number of its conditions. */
const modesOf = (conditions: number): readonly Mode[] =>
  conditions === CONDITION_COUNT ? MODES : PARKED_MODES;

/**
 * Least margin of a state on one attitude, each mode judged at its own limit where the gap gives.
 *
 *     as {@link holdUnder}
 *
 * @param law - from {@link compileHold} [-, N, N]
 * @param conditions - how many of its conditions count: those of parking, or all [-]
 * @param pull - rigid or giving [N]
 * @param sine - sin θ [-]
 * @param cosine - cos θ [-]
 * @returns margin [-]; infinite where nothing is needed, 0 where no suction suffices
 *
 * Valid and source: as {@link holdUnder}
 */
export function leastMarginUnder(
  law: HoldLaw,
  conditions: number,
  pull: Pull,
  sine: number,
  cosine: number,
): number {
  const { set, giving } = pull;
  let least = Number.POSITIVE_INFINITY;
  for (const mode of modesOf(conditions)) {
    const required = neededSuction(law, CONDITIONS[mode][0], CONDITIONS[mode][1], set, sine, cosine);
    if (required === Number.POSITIVE_INFINITY) return 0;
    if (!(required > 0)) continue;
    const made = giving ? giving.at(giving.gapUnder(limitLoad(law, required, cosine))) : set;
    least = Math.min(least, made / required);
  }
  return least;
}

/** Step in search of the worst attitude [°]. */
const STEP = 3;
const CEILING = 180;
/** Gaps between which a monotone cubic stands in for the pull while the worst attitude is looked for. */
const INTERVALS = 8;
/** Digits of the worst attitude, relative; its margin then has twice as many. */
const ANGLE_TOLERANCE = 1e-7;
/** The same where the exact margin may have a kink, as where the lip's flow turns turbulent: it then has as many. */
const KINK_TOLERANCE = 1e-9;

const scanned: readonly number[] = Array.from({ length: CEILING / STEP + 1 }, (_, i) => i * STEP);

/** Loads at the limits of a state's modes over all attitudes, least and greatest [N]; null where none is needed anywhere. */
function loadRange(law: HoldLaw, conditions: number, set: number): readonly [number, number] | null {
  let [least, most] = [Number.POSITIVE_INFINITY, Number.NEGATIVE_INFINITY];
  for (const angle of scanned) {
    const [sine, cosine] = [sineOfDegrees(angle), cosineOfDegrees(angle)];
    for (const mode of modesOf(conditions)) {
      const required = neededSuction(law, CONDITIONS[mode][0], CONDITIONS[mode][1], set, sine, cosine);
      if (!isLimit(required)) continue;
      const load = limitLoad(law, required, cosine);
      [least, most] = [Math.min(least, load), Math.max(most, load)];
    }
  }
  return most > Number.NEGATIVE_INFINITY ? [least, most] : null;
}

/**
 * A stand-in for a giving pull, for looks at many attitudes.
 *
 *     a monotone cubic through the pull at a few stand-offs, closer together the narrower they are, over all at which some mode lets go
 *
 * @param law - from {@link compileHold} [-, N, N]
 * @param conditions - how many of its conditions count: those of parking, or all [-]
 * @param pull - rigid or giving [N]
 * @returns the pull itself where it is rigid or none is needed, else one within about a thousandth of it [N]
 *
 * Valid for loads at which a mode of the state lets go; beyond them the last value is held. Source: docs/method/holding.md
 */
export function roughPull(law: HoldLaw, conditions: number, pull: Pull): Pull {
  const { set, giving } = pull;
  const range = giving && loadRange(law, conditions, set);
  if (!giving || !range) return pull;
  const [narrow, wide] = [giving.gapUnder(range[1]), giving.gapUnder(range[0])];
  if (!(wide > narrow)) return pull;
  const gaps = Array.from({ length: INTERVALS + 1 }, (_, i) =>
    i === INTERVALS ? wide : narrow + (wide - narrow) * (i / INTERVALS) ** 2,
  );
  const curve = createPchip(gaps, gaps.map(giving.at));
  const at = (gap: number) => curve.value(Math.min(wide, Math.max(narrow, gap)));
  return { set, giving: { gapUnder: giving.gapUnder, at } };
}

/**
 * The attitude on which a state holds worst, each mode judged at its own limit where the gap gives.
 *
 *     rigid: as {@link worstAttitude};  giving: scanned every 3° on a stand-in for the pull, narrowed there, then by a parabola on the pull itself
 *
 * @param law - from {@link compileHold} [-, N, N]
 * @param conditions - how many of its conditions count: those of parking, or all [-]
 * @param pull - rigid or giving [N]
 * @returns θ of the least margin, to about a thousandth of a degree [°]
 *
 * Valid for attitudes 0…180°; where no suction suffices somewhere, as {@link worstAttitude}. Source: Brent's minimum; docs/method/holding.md
 */
export function worstAttitudeUnder(law: HoldLaw, conditions: number, pull: Pull): number {
  const rigid = worstAttitude(law, conditions, pull.set);
  if (!pull.giving) return rigid;
  const at = (of: Pull) => (angle: number) =>
    leastMarginUnder(law, conditions, of, sineOfDegrees(angle), cosineOfDegrees(angle));
  const rough = leastAttitude(at(roughPull(law, conditions, pull)), STEP);
  return rough === null ? rigid : polished(at(pull), rough);
}

/** Half-widths of the parabolas through the exact margins, one after the other [°]: the last leaves none of the cubic term. */
const BESIDE = [0.5, 0.1] as const;
/** A smooth margin's least lies this near to that of the stand-in, and to that of the parabola before [°]; further, two modes meet in it, or its slope has a kink. */
const WIDEST_MOVES = [0.4, 0.05] as const;

/** What a parabola says of its least and what is there differ by more where the slope has a kink, relative [-]. */
export const SMOOTH = 5e-10;

/** @returns value at the vertex of the parabola through three places of one distance [any unit] */
export const leastOfParabola = (left: number, middle: number, right: number): number =>
  middle - (left - right) ** 2 / (8 * (left - 2 * middle + right));

/** The least of an exact margin next to a place that is nearly it. */
function polished(exact: (angle: number) => number, place: number): number {
  let [angle, told] = [place, Number.NaN];
  for (const [i, beside] of BESIDE.entries()) {
    if (!(angle >= beside && angle <= CEILING - beside)) return narrowed(exact, place, STEP, KINK_TOLERANCE);
    const [left, middle, right] = [angle - beside, angle, angle + beside].map(exact);
    const bend = left - 2 * middle + right;
    const move = (0.5 * beside * (left - right)) / bend;
    if (!(bend > 0 && Math.abs(move) <= WIDEST_MOVES[i])) return narrowed(exact, place, STEP, KINK_TOLERANCE);
    angle += move;
    told = leastOfParabola(left, middle, right);
  }
  if (!(Math.abs(exact(angle) - told) <= SMOOTH * told)) return narrowed(exact, place, STEP, KINK_TOLERANCE);
  return angle > CEILING - STEP && exact(CEILING) < exact(angle) ? CEILING : angle;
}

/** Part of a step within which a least counts as lying at the edge of where it was looked for [-]. */
const EDGE = 1e-4;

/** The least within a step of a place, the ends of the attitudes included; from an edge on, beyond it. */
function narrowed(
  marginAt: (angle: number) => number,
  place: number,
  step: number,
  tolerance = ANGLE_TOLERANCE,
): number {
  const [from, to] = [Math.max(0, place - step), Math.min(CEILING, place + step)];
  const { x, value } = minimiseScalar(marginAt, from, to, { tolerance });
  for (const edge of [from, to])
    if (edge > 0 && edge < CEILING && Math.abs(x - edge) <= EDGE * step && marginAt(edge) < value)
      return narrowed(marginAt, edge, step, tolerance);
  if (from === 0 && marginAt(0) < value) return 0;
  return to === CEILING && marginAt(CEILING) < value ? CEILING : x;
}

/**
 * The attitude of the least margin.
 *
 *     the least of a scan, narrowed between its neighbours
 *
 * @param marginAt - margin by attitude [°] → [-]
 * @param step - of the scan [°], a whole part of 180
 * @returns θ, to 1e-7 of it [°]; null where no suction suffices somewhere, or none is needed anywhere
 *
 * Valid for one valley between three neighbours of the scan. Source: {@link minimiseScalar}
 */
export function leastAttitude(marginAt: (angle: number) => number, step: number): number | null {
  let [place, least] = [0, Number.POSITIVE_INFINITY];
  for (let angle = 0; angle <= CEILING; angle += step) {
    const margin = marginAt(angle);
    if (margin < least) [place, least] = [angle, margin];
  }
  if (!(least > 0 && least < Number.POSITIVE_INFINITY)) return null;
  return narrowed(marginAt, place, step);
}

/**
 * The attitude on which a vehicle holds worst, parked and driving, each mode judged at its own limit where the gap gives.
 *
 *     rigid: as {@link worstOf};  giving: by {@link worstAttitudeUnder}
 *
 * @param law - from {@link compileHold} [-, N, N]
 * @param pull - rigid or giving [N]
 * @returns angle [°], margin [-] and the modes that set it, for parking and for driving nose uphill
 *
 * Valid and source: as {@link worstAttitudeUnder}
 */
export function worstUnder(law: HoldLaw, pull: Pull): Worst {
  if (!pull.giving) return worstOf(law, pull.set);
  const [parkedAt, drivingAt] = [CONDITIONS.tip[1], CONDITION_COUNT].map((conditions) =>
    worstAttitudeUnder(law, conditions, pull),
  );
  return {
    parked: { angle: parkedAt, ...holdUnder(law, pull, parkedAt).parked },
    driving: { angle: drivingAt, ...holdUnder(law, pull, drivingAt).driving },
  };
}
