import {
  NoAnswerError,
  NotEnoughDataError,
  OutOfRangeError,
  requireFinite,
  requirePositive,
} from "../../numeric/errors.ts";
import { combinationsIn, radixOf } from "./places.ts";
import { type Problem, sizesIn, skirtsIn } from "./problem.ts";

/** Most combinations of one question: 5 million take about 400 MB of results and some ten seconds. */
export const MOST_COMBINATIONS = 5_000_000;
/** Most values that a range may be cut into. */
const MOST_VALUES = 10_000;
/** A last value this close to the end of a range, in steps, is its end. */
const ROUNDING = 1e-9;

/** How many entries one list of parts to try brings, and its name. */
export interface ListToTry {
  readonly name: "motors" | "rotors" | "packs" | "duties" | "skirts";
  /** sizes of rotors and gaps of skirts counted one by one */
  readonly entries: number;
}

/** More combinations than one question may ask for, told before any work. */
export class TooManyCombinationsError extends NoAnswerError {
  readonly code = "too-many-sets";
  constructor(
    readonly count: number,
    readonly most: number,
    /** largest first */
    readonly lists: readonly ListToTry[],
    /** how to narrow it, one sentence */
    readonly need: string,
  ) {
    super(
      `The parts to try make ${count.toLocaleString("en")} combinations, at most ${most.toLocaleString("en")} are solved. ${need}`,
    );
    this.name = "TooManyCombinationsError";
  }
}

const WORDS = {
  motors: "motors",
  rotors: "rotor sizes (families times diameters)",
  packs: "packs",
  duties: "throttles",
  skirts: "skirts and gaps",
} as const;

/** @returns how many entries each list brings, in the order of the index */
export function listsOf(problem: Problem): ListToTry[] {
  return [
    { name: "motors", entries: problem.motors.length },
    { name: "rotors", entries: sizesIn(problem).length },
    { name: "packs", entries: problem.packs.length },
    { name: "duties", entries: problem.duties.length },
    { name: "skirts", entries: skirtsIn(problem).length },
  ];
}

/** A rotor in a duct pulls through a skirt; a propeller stands on one, or on its wheels. */
function checkPairs({ rotors, propellers = [], skirts, stands = [] }: Problem): void {
  if (rotors.length > 0 && skirts.length === 0)
    throw new NotEnoughDataError(
      "Rotors in a duct are to be tried, but no skirt that they could pull through.",
      "Name a skirt to try.",
      "skirts",
    );
  if (propellers.length > 0 && stands.length === 0)
    throw new NotEnoughDataError(
      "Propellers are to be tried, but nothing that their vehicle could stand on.",
      "Name a skirt to try, or none.",
      "skirts",
    );
}

function refusal(count: number, most: number, lists: readonly ListToTry[]): TooManyCombinationsError {
  const largest = [...lists].sort((a, b) => b.entries - a.entries);
  const [first, second] = largest;
  const kept = Math.max(1, Math.floor((first.entries * most) / count));
  const alone =
    (count / first.entries) * kept <= most
      ? `${kept} of its ${first.entries} would do`
      : `that alone does not do: narrow ${WORDS[second.name]} (${second.entries}) as well`;
  return new TooManyCombinationsError(
    count,
    most,
    largest,
    `Narrow ${WORDS[first.name]} first, the longest list: ${alone}.`,
  );
}

/**
 * How many combinations a question makes.
 *
 *     N = motors · packs · duties · (Σ sizes · Σ gaps, of rotors in a duct + Σ sizes of propellers · stands)
 *
 * @param problem - the lists of parts to try [-]
 * @param most - refused above this [-]
 * @returns N, 1 or more [-]
 * @throws {NotEnoughDataError} on an empty list of parts to try, with its path
 * @throws {TooManyCombinationsError} above `most`
 *
 * Valid for any lists; nothing is solved. Source: product of the choices
 */
export function countCombinations(problem: Problem, most = MOST_COMBINATIONS): number {
  const lists = listsOf(problem);
  for (const { name, entries } of lists)
    if (entries === 0)
      throw new NotEnoughDataError(`There are no ${WORDS[name]} to try.`, "Give at least one.", name);
  checkPairs(problem);
  const count = combinationsIn(radixOf(problem));
  if (count > most) throw refusal(count, most, lists);
  return count;
}

/**
 * Values of a range by a step, both ends among them.
 *
 *     from, from + step, … up to `to`
 *
 * @param path - of the range, for errors ("rotors.0.diameters")
 * @param range - first and last value, step [any unit]
 * @returns the values, one where both ends are the same [same unit]
 * @throws {OutOfRangeError} on a step of 0 or less, an end below its start, more than 10 000 values
 *
 * Valid for any unit. Source: definition
 */
export function steppedValues(
  path: string,
  range: { readonly from: number; readonly to: number; readonly step: number },
): number[] {
  const { from, to, step } = range;
  requireFinite(`${path}.from`, from);
  if (!(to >= from && to < Number.POSITIVE_INFINITY))
    throw new OutOfRangeError(`${path}.to`, to, `finite, ${from} or greater`);
  if (to === from) return [from];
  requirePositive(`${path}.step`, step);
  const steps = Math.floor((to - from) / step + ROUNDING);
  if (steps >= MOST_VALUES)
    throw new OutOfRangeError(`${path}.step`, step, `at most ${MOST_VALUES} values in the range`);
  return Array.from({ length: steps + 1 }, (_, i) => from + i * step);
}
