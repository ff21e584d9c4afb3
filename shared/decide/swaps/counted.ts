import { type Prepared, preparedLines } from "./bestSets.ts";
import type { Bounds, Option } from "./bounds.ts";
import { decimalGrid, type Grid } from "./grid.ts";
import type { SwapAim, SwapLine } from "./swaps.ts";

/** Of the allowed mass, by the factors it was made of [-]. */
const LIMIT_ROUNDING = 1e-12;

/** The lines in whole steps: every sum is exact, and equal sums tie. */
export interface Counted {
  readonly lines: readonly (readonly Option[])[];
  readonly masses: Grid;
  readonly prices: Grid;
}

/** A line as it is: a piece of it costs nothing. */
const asItIs = ({ mass }: SwapLine) => ({ mass, price: 0 });

/** The grid of what all pieces of a line come to, whichever is taken. */
function gridOf(
  lines: readonly SwapLine[],
  of: (one: { mass: number; price: number }) => number,
  times = 1,
): Grid {
  const amounts = lines.map((line) =>
    [asItIs(line), ...line.alternatives].map((one) => line.quantity * of(one)),
  );
  const total = amounts.reduce((sum, each) => sum + Math.max(...each), 0);
  return decimalGrid(amounts.flat(), total * times);
}

function counted(lines: readonly SwapLine[]): Counted {
  const masses = gridOf(lines, ({ mass }) => mass);
  const prices = gridOf(lines, ({ price }) => price, lines.length + 1);
  const options = lines.map(({ quantity, mass, alternatives }): Option[] => [
    { cost: 0, mass: Math.round(masses.toSteps(quantity * mass)), alternative: null },
    ...alternatives.map((each, alternative) => ({
      cost: Math.round(prices.toSteps(quantity * each.price)),
      mass: Math.round(masses.toSteps(quantity * each.mass)),
      alternative,
    })),
  ]);
  return { lines: options, masses, prices };
}

const priceOfAll = (lines: readonly (readonly Option[])[]): number =>
  lines.reduce((total, each) => total + Math.max(...each.map(({ cost }) => cost)), 0);

const priced = (lines: readonly (readonly Option[])[], perSwap: number): Option[][] =>
  lines.map((options) =>
    options.map((one) => (one.alternative === null ? one : { ...one, cost: perSwap + one.cost })),
  );

/** What can be had by a day. */
export interface ByDay {
  /** lead time [days] */
  readonly day: number;
  readonly prepared: Prepared;
  /** of the lightest options that are there by then [steps] */
  readonly leastMass: number;
}

/** Lines made ready for one aim, once for any limit. */
export interface Ready extends Counted {
  readonly by: SwapAim;
  /** what a swap costs beside its price: more than the price of all where swaps are counted, else nothing [steps] */
  readonly perSwap: number;
  /** by that cost */
  readonly prepared: Prepared;
  /** the lightest of each line, of those the cheapest */
  readonly lightest: readonly Option[];
  /** of these [steps] */
  readonly leastMass: number;
  /** what can be had by each day on which something comes, the first first; made when it is asked for, once */
  readonly days: () => readonly ByDay[];
}

/** @returns lead time of an option [days] */
export const leadOf = ({ alternatives }: SwapLine, { alternative }: Option): number =>
  alternative === null ? 0 : alternatives[alternative].leadTime;

function daysOf(lines: readonly SwapLine[], counts: Counted): ByDay[] {
  const days = lines.flatMap(({ alternatives }) => alternatives.map(({ leadTime }) => leadTime));
  return [...new Set([0, ...days])]
    .sort((a, b) => a - b)
    .map((day) => {
      const there = counts.lines.map((options, i) =>
        options.filter((option) => leadOf(lines[i], option) <= day),
      );
      const leastMass = there.reduce((sum, each) => sum + Math.min(...each.map(({ mass }) => mass)), 0);
      return { day, prepared: preparedLines(there), leastMass };
    });
}

/** @returns lines made ready for one aim; by lead time they are ready for the cheapest, whichever the day */
export function readyFor(lines: readonly SwapLine[], by: SwapAim): Ready {
  const at = counted(lines);
  const perSwap = by === "count" ? priceOfAll(at.lines) + 1 : 0;
  const prepared = preparedLines(priced(at.lines, perSwap));
  const lightest = at.lines.map(
    (options) => [...options].sort((a, b) => a.mass - b.mass || a.cost - b.cost)[0],
  );
  let known: readonly ByDay[] | null = null;
  const days = () => {
    known ??= daysOf(lines, at);
    return known;
  };
  return { ...at, by, perSwap, prepared, lightest, leastMass: massOf(lightest), days };
}

/** @returns what options weigh together [steps] */
export const massOf = (options: readonly Option[]): number =>
  options.reduce((sum, { mass }) => sum + mass, 0);

/** Steps by which a sum may be off, each of its amounts rounded to one; 0 on a grid that has them all. */
const slack = ({ lines }: Ready, { isExact }: Grid): number => (isExact ? 0 : lines.length);

/**
 * @param ready - from {@link readyFor}
 * @param allowed - greatest mass of the lines; below 0 none is light enough [kg]
 * @param whole - what that was made from by subtraction, if anything [kg]
 * @returns the same in steps; rounding counts as nothing: that of the limit, and that of each line where the grid has not all of them
 */
export function limitOf(ready: Ready, allowed: number, whole = allowed): number {
  const limit = ready.masses.toSteps(allowed);
  const rounding = ready.masses.isExact
    ? ready.masses.toSteps(Math.abs(whole)) * LIMIT_ROUNDING
    : slack(ready, ready.masses);
  return Math.floor(limit + rounding);
}

/** What a set of swaps is judged by: its aim, then its price. */
export interface Worth {
  readonly aim: number;
  readonly price: number;
}

/** @returns what no set within a limit can better, by the linear relaxation; null where there is none. By lead time it says nothing of the days */
export function leastWorth(ready: Ready, limit: number): Worth | null {
  if (ready.leastMass > limit) return null;
  const [all]: readonly Bounds[] = ready.prepared.bounds;
  const least = all.leastCost(limit);
  const swaps = ready.by === "count" ? Math.floor(least / ready.perSwap) : 0;
  const steps = Math.max(0, least - swaps * ready.perSwap - slack(ready, ready.prices));
  const price = ready.prices.toAmount(steps);
  return { price, aim: ready.by === "price" ? price : swaps };
}

/** @returns the largest cost that a set may have and still be no worse; by lead time of those that come as late [steps] */
export function dearestOf(ready: Ready, { aim, price }: Worth): number {
  const steps = Math.ceil(ready.prices.toSteps(price)) + 1 + slack(ready, ready.prices);
  return ready.by === "count" ? aim * ready.perSwap + steps : steps;
}
