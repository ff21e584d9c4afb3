import { bookOfBuilds } from "../../../../shared/book/bookOfBuild.ts";
import { type Exchange, singleExchanges, waysToHaveParts } from "../../../../shared/book/mass/exchange.ts";
import type { Book } from "../../../../shared/book/resolve.ts";
import type { PartSwapSet } from "../../../../shared/decide/swaps/partSwaps.ts";
import type { SwapAim } from "../../../../shared/decide/swaps/swaps.ts";
import type { Build } from "../../../../shared/model/build.ts";

/** What is asked of the other thread, all of it plain data. */
export interface SwapQuestion {
  /** what the build and its exchanges rest on, no more */
  readonly book: Book;
  readonly build: Build;
  readonly by: SwapAim;
}

/** @returns what to ask of a build; null where nothing of it may be swapped */
export function swapQuestion(book: Book, build: Build, by: SwapAim): SwapQuestion | null {
  const ways = waysToHaveParts(book, build);
  if (ways.length === 1 && build.ledger.every(({ alternatives }) => alternatives.length === 0)) return null;
  const builds = [build, ...singleExchanges(build).map((exchange) => ({ ...build, ...exchange }))];
  return { book: bookOfBuilds(book, builds), build, by };
}

/** Whether one way to have the parts exchanges all that another does. */
const exchangesToo = (one: Exchange, other: Exchange): boolean =>
  Object.entries(other).every(([part, value]) => one[part as keyof Exchange] === value);

/** @returns sets without those that only add a needless swap to one before them */
export function withoutNeedless(sets: readonly PartSwapSet[], ways: readonly Exchange[]): PartSwapSet[] {
  const adds = (set: PartSwapSet, to: PartSwapSet) =>
    exchangesToo(ways[set.parts], ways[to.parts]) &&
    to.choices.every((choice, i) => choice === null || choice === set.choices[i]);
  return sets.filter((set, i) => !sets.slice(0, i).some((before) => adds(set, before)));
}
