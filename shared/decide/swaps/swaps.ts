import { requireNonNegative, requirePositive } from "../../numeric/errors.ts";
import { normalCdf } from "../../numeric/normal.ts";
import { bestSets, type ChosenSet } from "./bestSets.ts";
import type { Option } from "./bounds.ts";
import { decimalGrid, type Grid } from "./grid.ts";

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
/** Of the allowed mass, by the factors it was made of [-]. */
const LIMIT_ROUNDING = 1e-12;

/** The lines in whole steps: every sum is exact, and equal sums tie. */
interface Counted {
  readonly lines: readonly (readonly Option[])[];
  readonly allowed: number;
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

/** Each swap counts for more than the price of all. */
function countedFirst(lines: readonly (readonly Option[])[]): Option[][] {
  const dearest = lines.reduce((total, each) => total + Math.max(...each.map(({ cost }) => cost)), 0);
  return lines.map((options) =>
    options.map((one) => (one.alternative === null ? one : { ...one, cost: dearest + 1 + one.cost })),
  );
}

function counted({ lines, allowed }: SwapsRequest): Counted {
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
  const limit = masses.toSteps(allowed);
  // Rounding counts as nothing: that of the limit itself, and that of each line where the grid has not all of them.
  const rounding = masses.isExact ? limit * LIMIT_ROUNDING : lines.length;
  return { lines: options, allowed: Math.floor(limit + rounding), masses, prices };
}

/** What a set comes to, in the units of the request. */
function setOf(request: SwapsRequest, at: Counted, options: readonly Option[]): SwapSet {
  const choices = options.map(({ alternative }) => alternative);
  const chosen = request.lines.map((line, i) => {
    const choice = choices[i];
    return choice === null ? null : line.alternatives[choice];
  });
  const steps = options.reduce((sum, { mass }) => sum + mass, 0);
  const mass = at.masses.toAmount(steps);
  const uncertainty = Math.hypot(
    ...request.lines.map((line, i) => line.quantity * ((chosen[i] ?? line).uncertainty ?? 0)),
  );
  const spend = options.reduce(
    (sum, { alternative }, i) => sum + (alternative === null ? 0 : at.lines[i][alternative + 1].cost),
    0,
  );
  return {
    choices,
    mass,
    uncertainty,
    price: at.prices.toAmount(spend),
    leadTime: Math.max(0, ...chosen.map((each) => each?.leadTime ?? 0)),
    count: chosen.filter((each) => each !== null).length,
    chance: uncertainty > 0 ? normalCdf((request.allowed - mass) / uncertainty) : Number(steps <= at.allowed),
  };
}

const lightestOf = (lines: readonly (readonly Option[])[]): Option[] =>
  lines.map((options) => [...options].sort((a, b) => a.mass - b.mass || a.cost - b.cost)[0]);

const massOf = (options: readonly Option[]) => options.reduce((sum, { mass }) => sum + mass, 0);

/** The soonest first: of the sets that are there by a day, those that need that very day, cheapest first; then the next day's. */
function soonest(request: SwapsRequest, at: Counted, wanted: number): ChosenSet[] {
  const { lines } = request;
  const days = lines.flatMap(({ alternatives }) => alternatives.map(({ leadTime }) => leadTime));
  const leadOf = (i: number, { alternative }: Option) =>
    alternative === null ? 0 : lines[i].alternatives[alternative].leadTime;
  const found: ChosenSet[] = [];
  for (const day of [...new Set([0, ...days])].sort((a, b) => a - b)) {
    const there = at.lines.map((options, i) => options.filter((option) => leadOf(i, option) <= day));
    if (massOf(lightestOf(there)) > at.allowed) continue;
    const sets = bestSets(there, at.allowed, wanted);
    found.push(...sets.filter(({ options }) => options.some((each, i) => leadOf(i, each) === day)));
    if (found.length >= wanted) break;
  }
  return found.slice(0, wanted);
}

function check({ lines, allowed }: SwapsRequest): void {
  requireNonNegative("allowed", allowed);
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
  check(request);
  const wanted = request.solutions ?? USUAL_SOLUTIONS;
  const at = counted(request);
  const lightest = lightestOf(at.lines);
  const sets =
    request.by === "leadTime"
      ? soonest(request, at, wanted)
      : bestSets(request.by === "count" ? countedFirst(at.lines) : at.lines, at.allowed, wanted);
  return {
    reachable: massOf(lightest) <= at.allowed,
    solutions: sets.map(({ options }) => setOf(request, at, options)),
    lightest: setOf(request, at, lightest),
  };
}
