import { buildUncertainty } from "../../shared/book/buildUncertainty.ts";
import { buildOfCombination } from "../../shared/book/choose/openedCombination.ts";
import { resolveBuild } from "../../shared/book/resolve.ts";
import { verdictCase } from "../../shared/book/verdictCase.ts";
import {
  type CombinationUncertainty,
  combinationUncertainty,
  placesWithTies,
} from "../../shared/decide/choose/shortlist.ts";
import { isUncertain } from "../../shared/decide/uncertainInput.ts";
import { found } from "../../shared/decide/verdict/judge.ts";
import { rankOf } from "../../shared/decide/verdict/states.ts";
import { type ToldVerdict, told } from "../../shared/decide/verdict/told.ts";
import { verdictOf } from "../../shared/decide/verdict/verdict.ts";
import type { ShortlistQuery } from "../../shared/model/api/choose.ts";
import type { Solved } from "./piece.ts";
import { type OpenQuestion, opened } from "./question.ts";
import { combinationOf, outcomeOf, type PlainCombination } from "./results.ts";

/** A combination, how sure it is, and what it comes to. */
export interface Judged {
  readonly combination: PlainCombination;
  readonly doubt: CombinationUncertainty;
  /** as for a build of the same parts, from a full charge */
  readonly verdict: ToldVerdict;
  /** whether any uncertainty is stated */
  readonly stated: boolean;
}

/** A combination as a build, with its numbers and every uncertainty that the book holds for them. */
function asBuild({ book, base }: OpenQuestion, combination: PlainCombination) {
  const build = buildOfCombination(book, base, { ...combination, mass: combination.values.mass });
  const resolved = resolveBuild(book, build);
  const { sources: _said, ...asked } = buildUncertainty(book, build, resolved);
  const of = verdictCase(book, build, resolved);
  if (!of) throw new RangeError(`Combination ${combination.index} was solved and has no numbers as a build.`);
  return { of, asked };
}

/** Finds how sure one combination is, and what it comes to. */
export function judged({ solved, index }: { readonly solved: Solved; readonly index: number }): Judged {
  const question = opened(solved.question);
  const combination = combinationOf(outcomeOf(solved), index);
  const { of, asked } = asBuild(question, combination);
  const stated = isUncertain(asked);
  const doubt = combinationUncertainty(question.prepared, index, asked);
  const least = { name: "an attitude that is wanted", angle: Number.NaN, margin5: doubt.margin5 };
  const chance = stated ? { ...least, holds: doubt.chance } : null;
  return { combination, doubt, verdict: told(verdictOf({ ...found(of), chance })), stated };
}

const largest = (value: number | null): number => value ?? Number.POSITIVE_INFINITY;

function rankedBy({ combination, doubt }: Judged, rank: ShortlistQuery["rank"]): number {
  if (rank === "chance") return doubt.chance;
  return largest(rank === "margin5" ? doubt.margin5 : combination.values.margin);
}

const stateOf = ({ verdict }: Judged) => rankOf(verdict.state);

/** Places of combinations in their order; those of different states never tie. */
function placesOf(best: readonly Judged[], value: (judged: Judged) => number): number[] {
  return best.flatMap((first, start) => {
    if (start > 0 && stateOf(best[start - 1]) === stateOf(first)) return [];
    const alike = best.filter((each) => stateOf(each) === stateOf(first));
    const entries = alike.map((each) => ({
      index: each.combination.index,
      value: value(each),
      deviation: each.doubt.deviation,
    }));
    return placesWithTies(entries).map((place) => start + place);
  });
}

/** @returns combinations with their verdicts and chances: the better verdict first, of equal ones the surer */
export function ranked(all: readonly Judged[], rank: ShortlistQuery["rank"], leastChance: number) {
  const best = [...all].sort(
    (a, b) =>
      stateOf(b) - stateOf(a) ||
      rankedBy(b, rank) - rankedBy(a, rank) ||
      largest(b.doubt.margin5) - largest(a.doubt.margin5),
  );
  // Chances near 1 tell nothing apart: ties are always judged by the margin and its deviation.
  const value = ({ combination, doubt }: Judged) =>
    largest(rank === "margin" ? combination.values.margin : doubt.margin5);
  const places = placesOf(best, value);
  const items = best.map(({ combination, doubt, verdict }, i) => {
    const { chance, margin5, deviation } = doubt;
    return {
      place: places[i],
      verdict,
      chance,
      margin5,
      deviation,
      enough: chance >= leastChance,
      set: combination,
    };
  });
  return { items, undoubted: all.length > 0 && all.every(({ stated }) => !stated) };
}
