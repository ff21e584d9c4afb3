import { buildUncertainty } from "../../shared/book/buildUncertainty.ts";
import { buildOfSet } from "../../shared/book/choose/openedSet.ts";
import { resolveBuild } from "../../shared/book/resolve.ts";
import { placesWithTies, type SetUncertainty, setUncertainty } from "../../shared/decide/choose/shortlist.ts";
import { isUncertain } from "../../shared/decide/uncertainInput.ts";
import type { StatedUncertainty } from "../../shared/decide/uncertainty.ts";
import type { ShortlistQuery } from "../../shared/model/api/choose.ts";
import type { Solved } from "./piece.ts";
import { type OpenQuestion, opened } from "./question.ts";
import { outcomeOf, type PlainSet, setOf } from "./results.ts";

/** Every uncertainty that the book holds for a set, as for a build of the same parts. */
function uncertaintyOf({ book, base }: OpenQuestion, set: PlainSet): Omit<StatedUncertainty, "angles"> {
  const build = buildOfSet(book, base, { ...set, mass: set.values.mass });
  const { sources: _said, ...asked } = buildUncertainty(book, build, resolveBuild(book, build));
  return asked;
}

/** A set, and how sure it is. */
export interface Judged {
  readonly set: PlainSet;
  readonly doubt: SetUncertainty;
  /** whether any uncertainty is stated */
  readonly stated: boolean;
}

/** Finds how sure one set is. */
export function judged({ solved, index }: { readonly solved: Solved; readonly index: number }): Judged {
  const question = opened(solved.question);
  const set = setOf(outcomeOf(solved), index);
  const asked = uncertaintyOf(question, set);
  const stated = isUncertain(asked);
  return { set, doubt: setUncertainty(question.prepared, index, asked), stated };
}

const largest = (value: number | null): number => value ?? Number.POSITIVE_INFINITY;

function rankedBy({ set, doubt }: Judged, rank: ShortlistQuery["rank"]): number {
  if (rank === "chance") return doubt.chance;
  return largest(rank === "margin5" ? doubt.margin5 : set.values.margin);
}

/** @returns sets with their chances, ranked by what is surest */
export function ranked(all: readonly Judged[], rank: ShortlistQuery["rank"], leastChance: number) {
  const best = [...all].sort(
    (a, b) => rankedBy(b, rank) - rankedBy(a, rank) || largest(b.doubt.margin5) - largest(a.doubt.margin5),
  );
  // Chances near 1 tell nothing apart: ties are always judged by the margin and its deviation.
  const value = ({ set, doubt }: Judged) => largest(rank === "margin" ? set.values.margin : doubt.margin5);
  const places = placesWithTies(
    best.map((each) => ({ index: each.set.index, value: value(each), deviation: each.doubt.deviation })),
  );
  const items = best.map(({ set, doubt }, i) => {
    const { chance, margin5, deviation } = doubt;
    return { place: places[i], chance, margin5, deviation, enough: chance >= leastChance, set };
  });
  return { items, undoubted: all.length > 0 && all.every(({ stated }) => !stated) };
}
