import { minimiseScalar } from "../../numeric/minimiseScalar.ts";
import { findRoot } from "../../numeric/root.ts";

/** A handle as a line of numbers: where it stands and how far it goes. */
export interface Line {
  readonly now: number;
  /** both inclusive, `now` between them */
  readonly limits: readonly [number, number];
  /** whole numbers alone */
  readonly whole: boolean;
}

export interface Best {
  readonly value: number;
  /** null where no pull is needed there */
  readonly margin: number | null;
}

/** What a handle alone can do. */
export interface Reach {
  /** the target is met as it stands; by another value; by none */
  readonly state: "already" | "does" | "never";
  /** the nearest value at which the target is just met: how far it may go, or must; null where there is none */
  readonly value: number | null;
  readonly bound: "at-most" | "at-least" | null;
  /** where the target is met around the value; null: as far as the handle goes */
  readonly from: number | null;
  readonly to: number | null;
  readonly best: Best;
}

interface Place {
  readonly x: number;
  readonly margin: number;
}

interface Stretch {
  readonly from: number | null;
  readonly to: number | null;
}

/** Values looked at on either side, closer together near the present one. */
const SIDE = 32;
/** Digits of the value, and of the place of a peak. */
const [ROOT_TOLERANCE, PEAK_TOLERANCE] = [1e-12, 1e-7];

function sideOf(now: number, end: number): number[] {
  if (end === now) return [];
  const inner = Array.from({ length: SIDE - 1 }, (_, i) => now + (end - now) * ((i + 1) / SIDE) ** 2);
  return [...inner, end];
}

function valuesOf({ now, limits: [low, high], whole }: Line): number[] {
  if (whole) return Array.from({ length: high - low + 1 }, (_, i) => low + i);
  return [...sideOf(now, low).reverse(), now, ...sideOf(now, high)];
}

/** Peaks below the target and dips above it that may reach over it between the values looked at. */
function turns(margin: (x: number) => number, places: readonly Place[], target: number): Place[] {
  return places.slice(1, -1).flatMap(({ margin: middle }, i) => {
    const [before, after] = [places[i], places[i + 2]];
    if (![before.margin, middle, after.margin].every(Number.isFinite)) return [];
    const peak = middle < target && middle > before.margin && middle > after.margin;
    const dip = middle >= target && middle < before.margin && middle < after.margin;
    if (!peak && !dip) return [];
    const f = (x: number) => (peak ? -margin(x) : margin(x));
    const { x } = minimiseScalar(f, before.x, after.x, { tolerance: PEAK_TOLERANCE });
    return [{ x, margin: margin(x) }];
  });
}

/** The last value on the side that meets the target, between one that does and one that does not. */
function edgeOf(excess: (x: number) => number, meets: number, fails: number): number {
  const [low, high] = [Math.min(meets, fails), Math.max(meets, fails)];
  const { root } = findRoot(excess, low, high, { tolerance: ROOT_TOLERANCE });
  let step = ROOT_TOLERANCE * Math.max(Math.abs(root), ROOT_TOLERANCE);
  let x = root;
  while (!(excess(x) >= 0)) {
    x = meets > fails ? Math.min(meets, root + step) : Math.max(meets, root - step);
    step *= 2;
  }
  return x;
}

function stretchesOf(
  places: readonly Place[],
  target: number,
  edge: typeof edgeOf | null,
  excess: (x: number) => number,
): Stretch[] {
  const found: Stretch[] = [];
  let from: number | null = null;
  let open = false;
  places.forEach(({ x, margin }, i) => {
    const meets = margin >= target;
    const before = places[i - 1]?.x;
    if (meets && !open) from = before === undefined ? null : edge ? edge(excess, x, before) : x;
    if (!meets && open) found.push({ from, to: edge ? edge(excess, before, x) : before });
    open = meets;
  });
  return open ? [...found, { from, to: null }] : found;
}

function nearestEnd({ from, to }: Stretch, now: number): Pick<Reach, "value" | "bound"> {
  const [below, above] = [from, to].map((end) =>
    end === null ? Number.POSITIVE_INFINITY : Math.abs(end - now),
  );
  if (from === null && to === null) return { value: null, bound: null };
  return below < above ? { value: from, bound: "at-least" } : { value: to, bound: "at-most" };
}

/** The largest margin; among equals the value nearest to the present one. */
function bestOf(places: readonly Place[], now: number): Best {
  const nearer = (a: Place, b: Place) => a.margin === b.margin && Math.abs(a.x - now) < Math.abs(b.x - now);
  const { x, margin } = places.reduce((best, place) =>
    place.margin > best.margin || nearer(place, best) ? place : best,
  );
  return { value: x, margin: Number.isFinite(margin) ? margin : null };
}

/**
 * The value of one handle, nearest to the present one, at which a margin reaches its target.
 *
 *     m(x) = m_target, x between its limits;  the side on which m ≥ m_target
 *
 * @param marginAt - margin by the handle's value [-]; infinite where no pull is needed, NaN where there is no answer
 * @param line - present value and limits of the handle [any unit]
 * @param target - m_target [-], > 0
 * @returns whether it does, the value and its side, the stretch around it, the best margin and where [unit of the handle, -]
 * @throws {NoConvergenceError} where the search does not end
 *
 * Valid for margins that turn at most once between three neighbouring values of a scan of 65 (all of them, for whole numbers). A value without an answer counts as one that does not hold.
 * Source: docs/method/ways.md
 */
export function reach(marginAt: (x: number) => number, line: Line, target: number): Reach {
  const margin = (x: number) => {
    const value = marginAt(x);
    return Number.isNaN(value) ? 0 : value;
  };
  const scanned = valuesOf(line).map((x): Place => ({ x, margin: margin(x) }));
  const places = line.whole
    ? scanned
    : [...scanned, ...turns(margin, scanned, target)].sort((a, b) => a.x - b.x);
  const stretches = stretchesOf(places, target, line.whole ? null : edgeOf, (x) => margin(x) - target);
  return { ...choose(stretches, line.now, margin(line.now) >= target), best: bestOf(places, line.now) };
}

function choose(stretches: readonly Stretch[], now: number, met: boolean): Omit<Reach, "best"> {
  const { NEGATIVE_INFINITY: low, POSITIVE_INFINITY: high } = Number;
  const distance = ({ from, to }: Stretch) => Math.max((from ?? low) - now, now - (to ?? high), 0);
  const [nearest] = [...stretches].sort((a, b) => distance(a) - distance(b));
  if (!nearest) return { state: "never", value: null, bound: null, from: null, to: null };
  if (met) return { state: "already", ...nearestEnd(nearest, now), ...nearest };
  const above = (nearest.from ?? low) > now;
  return {
    state: "does",
    value: above ? nearest.from : nearest.to,
    bound: above ? "at-least" : "at-most",
    ...nearest,
  };
}
