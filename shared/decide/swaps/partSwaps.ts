import { type SwapAim, type SwapLine, type SwapSet, solveSwaps } from "./swaps.ts";

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

/** All swaps of the lines with one way to have the parts. */
function setsWith({ lines, parts, by, solutions }: PartSwapsRequest, place: number) {
  const { mass, uncertainty, price, leadTime, count, allowed } = parts[place];
  const most = allowed();
  const own = { quantity: 1, mass: Math.max(0, mass), uncertainty, alternatives: [] };
  const swaps = solveSwaps({
    lines: [...withinLead(lines, leadTime), own],
    // Lines that come to more than the whole leave that much less for all.
    allowed: Math.max(0, most - Math.min(0, mass)),
    by,
    solutions,
  });
  const joined = (set: SwapSet): PartSwapSet => ({
    ...set,
    choices: set.choices.slice(0, -1),
    mass: set.mass + Math.min(0, mass),
    price: set.price + price,
    leadTime: Math.max(set.leadTime, leadTime),
    count: set.count + count,
    parts: place,
    allowed: most,
  });
  return { solutions: swaps.solutions.map(joined), lightest: joined(swaps.lightest) };
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
 * Valid for prices and lead times of 0 or more. Exact: ways are taken in the order of what they cost by themselves, until none that is left can be among the sets.
 * Ties: the cheaper, then the lighter. Source: {@link solveSwaps}; docs/method/mass.md, Swaps
 */
export function solvePartSwaps(request: PartSwapsRequest): PartSwaps {
  const { parts, by, solutions } = request;
  const order = parts.map((_, place) => place).sort((a, b) => parts[a][by] - parts[b][by]);
  const better = compare(by);
  let sets: PartSwapSet[] = [];
  let nearest: PartSwapSet | null = null;
  for (const place of order) {
    if (sets.length === solutions && parts[place][by] > sets[solutions - 1][by]) break;
    const found = setsWith(request, place);
    nearest = nearer(nearest, found.lightest);
    sets = [...sets, ...found.solutions].sort(better).slice(0, solutions);
  }
  if (nearest === null) throw new RangeError("There is no way to have the parts.");
  return { solutions: sets, nearest };
}
