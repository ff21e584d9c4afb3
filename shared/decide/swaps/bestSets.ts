import { NoConvergenceError } from "../../numeric/errors.ts";
import { type Bounds, boundsFrom, type Option } from "./bounds.ts";
import { type Asked, type Level, NOTHING_CHOSEN, nextLevel } from "./level.ts";

/** One option for each line. */
export interface ChosenSet {
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

const best = (sets: readonly ChosenSet[], wanted: number): ChosenSet[] =>
  [...sets].sort((a, b) => a.cost - b.cost || a.mass - b.mass).slice(0, wanted);

/** The sets so far and those of a pass, each once, the best of them. */
function joined(known: readonly ChosenSet[], found: readonly ChosenSet[], wanted: number): ChosenSet[] {
  const isSame = (one: ChosenSet, other: ChosenSet) =>
    one.options.every((option, i) => option === other.options[i]);
  return best([...known, ...found.filter((set) => !known.some((other) => isSame(set, other)))], wanted);
}

/**
 * The cheapest sets of options, one for each line, that weigh no more than allowed.
 *
 *     min Σ cost  subject to  Σ mass ≤ allowed: a multiple-choice knapsack; of equal cost the lighter first
 *
 * @param lines - options of each line [steps of a grid]
 * @param allowed - greatest mass of all lines together [steps of a grid]
 * @param wanted - how many sets, at least 1 [-]
 * @returns the best sets, best first, fewer where there are fewer; their options in the order of the lines [steps of a grid]
 * @throws {NoConvergenceError} where more choices lie within the bounds than can be kept
 *
 * Valid for costs of 0 or more. Exact: dynamic programming over the lines with dominance, within the bounds of {@link boundsFrom}.
 * Source: Kellerer, Pferschy & Pisinger, Knapsack Problems (2004) ch. 11; docs/method/mass.md, Swaps
 */
export function bestSets(
  lines: readonly (readonly Option[])[],
  allowed: number,
  wanted: number,
): ChosenSet[] {
  // Lines that change most come first: what is left then is small, and so is what the bounds leave open.
  const order = lines.map((_, i) => i).sort((a, b) => range(lines[b]) - range(lines[a]));
  const ordered = order.map((i) => lines[i]);
  const place = lines.map((_, i) => order.indexOf(i));
  const bounds = boundsFrom(ordered);
  let sets: ChosenSet[] = [];
  for (const width of WIDTHS) {
    const beaten = sets.length === wanted ? sets[wanted - 1] : null;
    const pass = sweep(ordered, bounds, { allowed, wanted, beaten, width });
    const found = pass.sets.map((set) => ({ ...set, options: place.map((to) => set.options[to]) }));
    sets = joined(sets, found, wanted);
    if (!pass.wasCut) return sets;
  }
  throw new NoConvergenceError(SO_ALIKE, WIDTHS.length);
}

/** One pass over all lines. @returns the best sets among the choices kept, and whether some were left out for room */
function sweep(
  lines: readonly (readonly Option[])[],
  bounds: readonly Bounds[],
  asked: Omit<Asked, "bounds">,
): { readonly sets: readonly ChosenSet[]; readonly wasCut: boolean } {
  const levels: Level[] = [];
  let wasCut = false;
  for (const [i, options] of lines.entries()) {
    const { level, isCut } = nextLevel(levels[i - 1] ?? NOTHING_CHOSEN, options, {
      ...asked,
      bounds: bounds[i + 1],
    });
    levels.push(level);
    wasCut ||= isCut;
    if (wasCut && asked.width === WIDEST) return { sets: [], wasCut };
  }
  const { size, cost, mass } = levels[levels.length - 1];
  const sets = Array.from({ length: Math.min(size, asked.wanted) }, (_, at) => ({
    cost: cost[at],
    mass: mass[at],
    options: traced(levels, lines, at),
  }));
  return { sets, wasCut };
}
