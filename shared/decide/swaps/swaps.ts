import { requireNonNegative, requirePositive } from "../../numeric/errors.ts";
import { normalCdf } from "../../numeric/normal.ts";
import { bestSets, type ChosenSwaps } from "./bestSets.ts";
import type { Option } from "./bounds.ts";
import { dearestOf, leadOf, limitOf, massOf, type Ready, readyFor, type Worth } from "./counted.ts";

/** What a line may be exchanged for. */
export interface Alternative {
  /** of one piece [kg] */
  readonly mass: number;
  /** of one piece [any currency] */
  readonly price: number;
  /** until it is there [days] */
  readonly leadTime: number;
  /** standard, of one piece's mass; 0 unless given [kg] */
  readonly uncertainty?: number;
}

/** A line of a vehicle's masses. */
export interface SwapLine {
  /** pieces, all of one make [-] */
  readonly quantity: number;
  /** of one piece [kg] */
  readonly mass: number;
  /** standard, of one piece's mass; 0 unless given [kg] */
  readonly uncertainty?: number;
  readonly alternatives: readonly Alternative[];
}

/** What a set of swaps is to have least of. */
export type SwapAim = "price" | "leadTime" | "count";

export interface SwapsRequest {
  readonly lines: readonly SwapLine[];
  /** greatest mass of all lines together [kg] */
  readonly allowed: number;
  readonly by: SwapAim;
  /** how many sets, best first; 3 unless given [-] */
  readonly solutions?: number;
}

/** One set of swaps and what it comes to. */
export interface SwapSet {
  /** for each line the place of the alternative taken; null: stays as it is */
  readonly choices: readonly (number | null)[];
  /** of all lines [kg] */
  readonly mass: number;
  /** standard, of that mass [kg] */
  readonly uncertainty: number;
  /** of all that is bought [any currency] */
  readonly price: number;
  /** of what comes last [days] */
  readonly leadTime: number;
  /** lines swapped [-] */
  readonly count: number;
  /** that the mass is no more than allowed [-] */
  readonly chance: number;
}

export interface Swaps {
  /** whether any set is light enough */
  readonly reachable: boolean;
  readonly solutions: readonly SwapSet[];
  /** the lightest set of all, of those the cheapest */
  readonly lightest: SwapSet;
}

const USUAL_SOLUTIONS = 3;
/** What sets of ready lines must be. */
export interface Within {
  /** greatest mass of the lines [kg] */
  readonly allowed: number;
  /** what that was made from by subtraction, if anything [kg] */
  readonly whole?: number;
  /** standard uncertainty of what else is on board; 0 unless given [kg] */
  readonly uncertainty?: number;
  /** how many sets, best first [-] */
  readonly wanted: number;
  /** worse ones are of no interest */
  readonly worst?: Worth;
}

/** What a set comes to, in the units of the request. */
function setOf(
  lines: readonly SwapLine[],
  ready: Ready,
  within: Within,
  options: readonly Option[],
): SwapSet {
  const choices = options.map(({ alternative }) => alternative);
  const chosen = lines.map((line, i) => {
    const choice = choices[i];
    return choice === null ? null : line.alternatives[choice];
  });
  const steps = massOf(options);
  const mass = ready.masses.toAmount(steps);
  const uncertainty = Math.hypot(
    within.uncertainty ?? 0,
    ...lines.map((line, i) => line.quantity * ((chosen[i] ?? line).uncertainty ?? 0)),
  );
  const spend = options.reduce(
    (sum, { alternative }, i) => sum + (alternative === null ? 0 : ready.lines[i][alternative + 1].cost),
    0,
  );
  const { allowed, whole } = within;
  return {
    choices,
    mass,
    uncertainty,
    price: ready.prices.toAmount(spend),
    leadTime: Math.max(0, ...chosen.map((each) => each?.leadTime ?? 0)),
    count: chosen.filter((each) => each !== null).length,
    chance:
      uncertainty > 0
        ? normalCdf((allowed - mass) / uncertainty)
        : Number(steps <= limitOf(ready, allowed, whole)),
  };
}

/** The soonest first: of the sets that are there by a day, those that need that very day, cheapest first; then the next day's. */
function soonest(
  lines: readonly SwapLine[],
  ready: Ready,
  limit: number,
  { wanted, worst }: Within,
): ChosenSwaps[] {
  const found: ChosenSwaps[] = [];
  for (const { day, prepared, leastMass } of ready.days()) {
    if (worst && day > worst.aim) break;
    if (leastMass > limit) continue;
    const dearest = worst && day === worst.aim ? dearestOf(ready, worst) : undefined;
    const sets = bestSets(prepared, { allowed: limit, wanted, dearest });
    const needs = ({ options }: ChosenSwaps) =>
      Math.max(0, ...options.map((each, i) => leadOf(lines[i], each))) === day;
    found.push(...sets.filter(needs));
    if (found.length >= wanted) break;
  }
  return found.slice(0, wanted);
}

/**
 * The best sets of swaps of lines that are ready.
 *
 *     as {@link solveSwaps}, of lines that are solved for one limit after the other
 *
 * @param lines - with quantity [-], mass and standard uncertainty of a piece [kg], alternatives
 * @param ready - the same, from {@link readyFor} [steps of a grid]
 * @param within - what they may weigh [kg], how many sets [-], what is too bad to be of interest
 * @returns the sets, best first [kg, days, -]; none where none is light enough; some worse than wanted may be among them
 * @throws {NoConvergenceError} as {@link solveSwaps}
 *
 * Valid and source: as {@link solveSwaps}
 */
export function setsWithin(lines: readonly SwapLine[], ready: Ready, within: Within): SwapSet[] {
  const { allowed, whole, wanted, worst } = within;
  const limit = limitOf(ready, allowed, whole);
  if (ready.leastMass > limit) return [];
  const sets =
    ready.by === "leadTime"
      ? soonest(lines, ready, limit, within)
      : bestSets(ready.prepared, { allowed: limit, wanted, dearest: worst && dearestOf(ready, worst) });
  return sets.map(({ options }) => setOf(lines, ready, within, options));
}

/** @returns the lightest set of ready lines, of those the cheapest [kg, days, -] */
export const lightestWithin = (lines: readonly SwapLine[], ready: Ready, within: Within): SwapSet =>
  setOf(lines, ready, within, ready.lightest);

/** @throws {OutOfRangeError} on a number of the lines that can't be */
export function checkLines(lines: readonly SwapLine[]): void {
  lines.forEach(({ quantity, alternatives, ...line }, i) => {
    requirePositive(`lines.${i}.quantity`, quantity);
    for (const [at, one] of [
      ["", line] as const,
      ...alternatives.map((each, j) => [`.alternatives.${j}`, each] as const),
    ])
      for (const [key, value] of Object.entries(one))
        if (typeof value === "number") requireNonNegative(`lines.${i}${at}.${key}`, value);
  });
}

/**
 * The swaps that make a vehicle light enough: the cheapest, the soonest or the fewest, and the next-best sets.
 *
 *     Σ q·m ≤ allowed;  u = √Σ(q·u_line)²;  chance = Φ((allowed − Σ q·m)/u)
 *
 * @param request - lines with quantity [-], mass and standard uncertainty of a piece [kg], alternatives with price [any currency] and lead time [days]; allowed mass [kg]; what to have least of
 * @returns the sets, best first, with mass and uncertainty [kg], price, lead time [days], chance [-]; none where no set is light enough; the lightest of all
 * @throws {OutOfRangeError} on a quantity that is not above 0, on any other number below 0 or not finite
 * @throws {NoConvergenceError} on more alternatives, more alike, than can be ranked
 *
 * Valid for lines that change only the mass. Exact, ties included: by price the lighter, by lead time and by count the cheaper first. All of a line's pieces share one error.
 * Source: {@link bestSets}; docs/method/mass.md, Swaps
 */
export function solveSwaps(request: SwapsRequest): Swaps {
  requireNonNegative("allowed", request.allowed);
  checkLines(request.lines);
  const { lines, allowed, by, solutions: wanted = USUAL_SOLUTIONS } = request;
  const ready = readyFor(lines, by);
  const within = { allowed, wanted };
  return {
    reachable: ready.leastMass <= limitOf(ready, allowed),
    solutions: setsWithin(lines, ready, within),
    lightest: lightestWithin(lines, ready, within),
  };
}
