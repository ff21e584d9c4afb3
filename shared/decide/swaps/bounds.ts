/** One way to have a line: as it is, or with one of its alternatives. Whole numbers of {@link decimalGrid} steps. */
export interface Option {
  readonly cost: number;
  readonly mass: number;
  /** place in the line's list of alternatives; null: as it is */
  readonly alternative: number | null;
}

/** A step from one option to a lighter one, on the line's lower convex hull. */
interface Step {
  readonly saved: number;
  readonly cost: number;
}

/** What the lines from one on can do at best, split options allowed: bounds of what they do with whole ones. */
export interface Bounds {
  /** least cost at which they weigh no more than this; ∞ where they can't */
  readonly leastCost: (mass: number) => number;
  /** least mass for no more than this cost; ∞ where they cost more in any case */
  readonly leastMass: (cost: number) => number;
}

/** Relative rounding of a split option's share, amply. */
const ROUNDING = 1e-14;

const cheapestFirst = (a: Option, b: Option) => a.cost - b.cost || a.mass - b.mass;

/** Steps of a line's lower convex hull, from its cheapest option on: each saves less for its cost than the one before. */
function stepsOf(options: readonly Option[]): { readonly cheapest: Option; readonly steps: readonly Step[] } {
  const [cheapest, ...others] = [...options].sort(cheapestFirst);
  const hull = [cheapest];
  for (const each of others) {
    if (each.mass >= hull[hull.length - 1].mass) continue;
    while (hull.length > 1 && !isBelow(hull[hull.length - 2], hull[hull.length - 1], each)) hull.pop();
    hull.push(each);
  }
  const steps = hull.slice(1).map(({ cost, mass }, i) => ({
    saved: hull[i].mass - mass,
    cost: cost - hull[i].cost,
  }));
  return { cheapest, steps };
}

/** Whether `middle` lies below the line from `first` to `last`. */
const isBelow = (first: Option, middle: Option, last: Option): boolean =>
  (middle.cost - first.cost) / (first.mass - middle.mass) <
  (last.cost - middle.cost) / (middle.mass - last.mass);

/** Sums of the steps, the most saved for its cost first. */
function sums(steps: readonly Step[], of: (step: Step) => number): Float64Array {
  const found = new Float64Array(steps.length + 1);
  steps.forEach((step, i) => {
    found[i + 1] = found[i] + of(step);
  });
  return found;
}

/** @returns the first place whose sum is at least `least`; the sums rise */
function firstPlace(rising: Float64Array, least: number): number {
  let [low, high] = [0, rising.length];
  while (low < high) {
    const middle = (low + high) >> 1;
    if (rising[middle] < least) low = middle + 1;
    else high = middle;
  }
  return low;
}

function boundsOf(base: { readonly cost: number; readonly mass: number }, steps: readonly Step[]): Bounds {
  const saved = sums(steps, (step) => step.saved);
  const paid = sums(steps, (step) => step.cost);
  const between = (from: Float64Array, to: Float64Array, at: number, place: number) =>
    to[place - 1] + ((at - from[place - 1]) * (to[place] - to[place - 1])) / (from[place] - from[place - 1]);
  return {
    leastCost: (mass) => {
      const needed = base.mass - mass;
      if (needed <= 0) return base.cost;
      const place = firstPlace(saved, needed);
      if (place === saved.length) return Number.POSITIVE_INFINITY;
      const cost = between(saved, paid, needed, place);
      return base.cost + Math.ceil(cost * (1 - ROUNDING));
    },
    leastMass: (cost) => {
      const spare = cost - base.cost;
      if (spare < 0) return Number.POSITIVE_INFINITY;
      const place = firstPlace(paid, spare);
      if (place === 0) return base.mass;
      if (place === paid.length) return base.mass - saved[place - 1];
      return base.mass - Math.floor(between(paid, saved, spare, place) * (1 + ROUNDING));
    },
  };
}

/**
 * Bounds of what the lines from each one on can do, by the linear relaxation.
 *
 *     steps of every line's lower convex hull, taken by their cost for each gram saved, the last one in part
 *
 * @param lines - options of each line, one of which is taken [steps of a grid]
 * @returns for each line, and for none left at the end, the bounds of all lines from there on [steps of a grid]
 *
 * Valid for costs of 0 or more. Source: Sinha & Zoltners, The multiple-choice knapsack problem, Oper. Res. 27 (1979) 503–515
 */
export function boundsFrom(lines: readonly (readonly Option[])[]): Bounds[] {
  let base = { cost: 0, mass: 0 };
  let steps: Step[] = [];
  const found = [boundsOf(base, steps)];
  for (const options of [...lines].reverse()) {
    const own = stepsOf(options);
    base = { cost: base.cost + own.cheapest.cost, mass: base.mass + own.cheapest.mass };
    steps = [...steps, ...own.steps].sort((a, b) => a.cost * b.saved - b.cost * a.saved);
    found.unshift(boundsOf(base, steps));
  }
  return found;
}
