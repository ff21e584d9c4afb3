import { leastWorth, limitOf, type Ready, readyFor, type Worth } from "./counted.ts";
import {
  checkLines,
  lightestWithin,
  type SwapAim,
  type SwapLine,
  type SwapSet,
  setsWithin,
  type Within,
} from "./swaps.ts";

/** One way to have the parts of the book, with all that goes with it and can't be swapped line by line. */
export interface PartChoice {
  /** of the parts that are exchanged [any currency] */
  readonly price: number;
  /** until the last of them is there [days] */
  readonly leadTime: number;
  /** parts exchanged [-] */
  readonly count: number;
  /** of everything but the lines [kg]; below 0 where lines come to more than the whole */
  readonly mass: number;
  /** standard, of that mass [kg] */
  readonly uncertainty: number;
  /** greatest mass of the whole with these parts, by the full model [kg]; worked out when it is asked for */
  readonly allowed: () => number;
}

export interface PartSwapsRequest {
  readonly lines: readonly SwapLine[];
  /** as they are first; at least that one */
  readonly parts: readonly PartChoice[];
  readonly by: SwapAim;
  /** how many sets, best first [-] */
  readonly solutions: number;
}

/** A set of swaps with the parts it is made with; mass, price, lead time and count of both together. */
export interface PartSwapSet extends SwapSet {
  /** place among the ways to have the parts */
  readonly parts: number;
  /** greatest mass with these parts [kg] */
  readonly allowed: number;
}

export interface PartSwaps {
  readonly solutions: readonly PartSwapSet[];
  /** the set with most to spare, or least missing, of those the cheapest */
  readonly nearest: PartSwapSet;
}

const SAME = 1e-12;

/** Best first: by the aim, then the cheaper, then the lighter. */
function compare(by: SwapAim): (a: PartSwapSet, b: PartSwapSet) => number {
  return (a, b) => {
    const first = a[by] - b[by];
    const scale = Math.max(Math.abs(a[by]), Math.abs(b[by]), SAME);
    if (Math.abs(first) > SAME * scale) return first;
    return a.price - b.price || a.mass - b.mass;
  };
}

/** Lines that are there no later than the parts cost no time of their own. */
function withinLead(lines: readonly SwapLine[], leadTime: number): SwapLine[] {
  return lines.map((line) => ({
    ...line,
    alternatives: line.alternatives.map((each) => ({
      ...each,
      leadTime: each.leadTime <= leadTime ? 0 : each.leadTime,
    })),
  }));
}

/** Lines made ready, for each lead time of parts once. */
function readyLines({ lines, by }: PartSwapsRequest) {
  const known = new Map<number, { readonly lines: SwapLine[]; readonly ready: Ready }>();
  return ({ leadTime }: PartChoice) => {
    // Only where the soonest are wanted does it matter what comes with the parts.
    const key = by === "leadTime" ? leadTime : 0;
    const own = known.get(key);
    if (own) return own;
    const made = withinLead(lines, leadTime);
    const found = { lines: made, ready: readyFor(made, by) };
    known.set(key, found);
    return found;
  };
}

/** A way to have the parts that is still to be looked at, with what none of its sets can better. */
interface Open extends Worth {
  readonly place: number;
  /** greatest mass of the whole; null: not asked for yet [kg] */
  readonly allowed: number | null;
}

/** Of several, the one that may have the best set. */
function foremost(open: readonly Open[]): number {
  let best = 0;
  for (let i = 1; i < open.length; i++) {
    const first = open[i].aim - open[best].aim || open[i].price - open[best].price;
    if (first < 0) best = i;
  }
  return best;
}

/** Whether none of a way's sets can be among the best, ties included. */
function isWorse({ aim, price }: Worth, worst: PartSwapSet, by: SwapAim): boolean {
  const scale = Math.max(Math.abs(aim), Math.abs(worst[by]), Math.abs(worst.price), SAME);
  const first = aim - worst[by];
  return first > SAME * scale || (first > -SAME * scale && price - worst.price > SAME * scale);
}

/** What a set of the lines must be no worse than, where the parts bring their share. */
function besideParts(worst: PartSwapSet, part: PartChoice, by: SwapAim): Worth {
  const price = worst.price - part.price;
  if (by !== "leadTime") return { aim: worst[by] - part[by], price };
  // Lines that are there with the parts take no time of their own.
  return { aim: worst.leadTime > part.leadTime ? worst.leadTime : 0, price };
}

/** A set of the lines with the parts that it is made with. */
function withParts(
  set: SwapSet,
  { mass, price, leadTime, count }: PartChoice,
  of: Pick<PartSwapSet, "parts" | "allowed">,
): PartSwapSet {
  return {
    ...set,
    ...of,
    mass: set.mass + mass,
    price: set.price + price,
    leadTime: Math.max(set.leadTime, leadTime),
    count: set.count + count,
  };
}

const spare = ({ allowed, mass }: PartSwapSet): number => allowed - mass;

function nearer(best: PartSwapSet | null, set: PartSwapSet): PartSwapSet {
  if (best === null) return set;
  const more = spare(set) - spare(best);
  return more > 0 || (more === 0 && set.price < best.price) ? set : best;
}

/**
 * The best swaps where parts of the book may be exchanged too, each with the mass that the full model allows it.
 *
 *     min over ways p to have the parts of aim(p) ⊕ aim(lines);  Σ q·m ≤ m_allowed(p)
 *
 * @param request - lines with masses [kg], prices and lead times [days]; ways to have the parts, each with its allowed mass [kg]; the aim; how many sets [-]
 * @returns the sets, best first [kg, days, -], none where none is light enough; the set with most to spare or least missing
 * @throws {OutOfRangeError} as {@link solveSwaps}
 * @throws {NoConvergenceError} as {@link solveSwaps}
 *
 * Valid for prices and lead times of 0 or more. Exact: best first, the way whose sets may be the best by the linear relaxation, until none that is left can be among the sets.
 * Ties: the cheaper, then the lighter. Source: {@link solveSwaps}; docs/method/mass.md, Swaps
 */
export function solvePartSwaps(request: PartSwapsRequest): PartSwaps {
  const { lines, parts, by, solutions } = request;
  checkLines(lines);
  const readyWith = readyLines(request);
  const better = compare(by);
  const open = parts.map((part, place): Open => ({ place, aim: part[by], price: part.price, allowed: null }));
  let sets: PartSwapSet[] = [];
  let nearest: PartSwapSet | null = null;
  while (open.length > 0) {
    const [next] = open.splice(foremost(open), 1);
    const worst = sets.length === solutions ? sets[solutions - 1] : null;
    if (worst && isWorse(next, worst, by)) break;
    const part = parts[next.place];
    const { lines: own, ready } = readyWith(part);
    const whole = next.allowed ?? part.allowed();
    const within: Within = {
      allowed: whole - part.mass,
      whole,
      uncertainty: part.uncertainty,
      wanted: solutions,
      worst: worst ? besideParts(worst, part, by) : undefined,
    };
    const joined = (set: SwapSet) => withParts(set, part, { parts: next.place, allowed: whole });
    if (next.allowed === null) {
      nearest = nearer(nearest, joined(lightestWithin(own, ready, within)));
      const least = leastWorth(ready, limitOf(ready, within.allowed, whole));
      if (least)
        open.push({ ...next, aim: part[by] + least.aim, price: part.price + least.price, allowed: whole });
      continue;
    }
    sets = [...sets, ...setsWithin(own, ready, within).map(joined)].sort(better).slice(0, solutions);
  }
  if (nearest === null) throw new RangeError("There is no way to have the parts.");
  return { solutions: sets, nearest };
}
