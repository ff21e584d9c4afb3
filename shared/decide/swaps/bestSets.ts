import { NoConvergenceError } from "../../numeric/errors.ts";
import { type Bounds, boundsFrom, type Option } from "./bounds.ts";
import { type Asked, type Beaten, type Level, NOTHING_CHOSEN, nextLevel, Room } from "./level.ts";

/** One option for each line. */
export interface ChosenSwaps {
  readonly cost: number;
  readonly mass: number;
  readonly options: readonly Option[];
}

/** Choices kept side by side, pass after pass: a narrow one finds good sets, which then keep a wide one small. */
const WIDEST = 65_536;
const WIDTHS = [256, 4096, WIDEST];

const SO_ALIKE =
  "These alternatives are too many and too alike to be ranked exactly. Leave out lines or alternatives that hardly differ.";

const range = (options: readonly Option[]): number =>
  Math.max(...options.map(({ mass }) => mass)) - Math.min(...options.map(({ mass }) => mass));

/** @returns the options that lead to a place of the last level, line by line */
function traced(levels: readonly Level[], lines: readonly (readonly Option[])[], place: number): Option[] {
  const found: Option[] = [];
  let at = place;
  for (let i = levels.length - 1; i >= 0; i--) {
    found.unshift(lines[i][levels[i].option[at]]);
    at = levels[i].parent[at];
  }
  return found;
}

const best = (sets: readonly ChosenSwaps[], wanted: number): ChosenSwaps[] =>
  [...sets].sort((a, b) => a.cost - b.cost || a.mass - b.mass).slice(0, wanted);

/** The sets so far and those of a pass, each once, the best of them. */
function joined(known: readonly ChosenSwaps[], found: readonly ChosenSwaps[], wanted: number): ChosenSwaps[] {
  const isSame = (one: ChosenSwaps, other: ChosenSwaps) =>
    one.options.every((option, i) => option === other.options[i]);
  return best([...known, ...found.filter((set) => !known.some((other) => isSame(set, other)))], wanted);
}

/** Lines as {@link bestSets} goes through them. */
export interface Prepared {
  readonly lines: readonly (readonly Option[])[];
  /** place of each line, as it was given, among these */
  readonly place: readonly number[];
  /** of the lines from each one on, and of none */
  readonly bounds: readonly Bounds[];
}

/**
 * Lines made ready for {@link bestSets}, once for any limit.
 *
 *     those that change most come first: what is left then is small, and so is what the bounds leave open
 *
 * @param lines - options of each line [steps of a grid]
 * @returns the lines in that order, with the bounds of what follows each [steps of a grid]
 *
 * Valid for costs of 0 or more. Source: {@link boundsFrom}
 */
export function preparedLines(lines: readonly (readonly Option[])[]): Prepared {
  const order = lines.map((_, i) => i).sort((a, b) => range(lines[b]) - range(lines[a]));
  const ordered = order.map((i) => lines[i]);
  return { lines: ordered, place: lines.map((_, i) => order.indexOf(i)), bounds: boundsFrom(ordered) };
}

/** What sets must be. */
export interface Wish {
  /** greatest mass of all lines together [steps of a grid] */
  readonly allowed: number;
  /** how many, at least 1 [-] */
  readonly wanted: number;
  /** dearer ones are of no interest; any cost unless given [steps of a grid] */
  readonly dearest?: number;
}

/** What a set must beat: the worst of as many as are wanted, or what is too dear in any case. */
function toBeat(sets: readonly ChosenSwaps[], { wanted, dearest = Number.POSITIVE_INFINITY }: Wish): Beaten {
  const tooDear = { cost: dearest + 1, mass: 0 };
  const worst = sets.length === wanted ? sets[wanted - 1] : null;
  return worst && worst.cost < tooDear.cost ? worst : tooDear;
}

/**
 * The cheapest sets of options, one for each line, that weigh no more than allowed.
 *
 *     min Σ cost  subject to  Σ mass ≤ allowed: a multiple-choice knapsack; of equal cost the lighter first
 *
 * @param prepared - from {@link preparedLines} [steps of a grid]
 * @param wish - allowed mass, how many sets, the dearest of interest [steps of a grid]
 * @returns the best sets, best first, fewer where there are fewer; their options in the order of the lines as they were given [steps of a grid]
 * @throws {NoConvergenceError} where more choices lie within the bounds than can be kept
 *
 * Valid for costs of 0 or more. Exact: dynamic programming over the lines with dominance, within the bounds of {@link boundsFrom}.
 * Source: Kellerer, Pferschy & Pisinger, Knapsack Problems (2004) ch. 11; docs/method/mass.md, Swaps
 */
export function bestSets(prepared: Prepared, wish: Wish): ChosenSwaps[] {
  const { allowed, wanted } = wish;
  let sets: ChosenSwaps[] = [];
  for (const width of WIDTHS) {
    const pass = sweep(prepared, { allowed, wanted, beaten: toBeat(sets, wish), width });
    const found = pass.sets.map((set) => ({ ...set, options: prepared.place.map((to) => set.options[to]) }));
    sets = joined(sets, found, wanted);
    if (!pass.wasCut) return sets;
  }
  throw new NoConvergenceError(SO_ALIKE, WIDTHS.length);
}

/** One pass over all lines. @returns the best sets among the choices kept, and whether some were left out for room */
function sweep(
  { lines, bounds }: Prepared,
  asked: Omit<Asked, "bounds">,
): { readonly sets: readonly ChosenSwaps[]; readonly wasCut: boolean } {
  const levels: Level[] = [];
  const room = new Room(asked.width);
  let wasCut = false;
  for (const [i, options] of lines.entries()) {
    const before = levels[i - 1] ?? NOTHING_CHOSEN;
    const { level, isCut } = nextLevel(before, options, { ...asked, bounds: bounds[i + 1] }, room);
    levels.push(level);
    wasCut ||= isCut;
    if (level.size === 0 || (wasCut && asked.width === WIDEST)) return { sets: [], wasCut };
  }
  const { size, cost, mass } = levels[levels.length - 1] ?? NOTHING_CHOSEN;
  const sets = Array.from({ length: Math.min(size, asked.wanted) }, (_, at) => ({
    cost: cost[at],
    mass: mass[at],
    options: traced(levels, lines, at),
  }));
  return { sets, wasCut };
}
