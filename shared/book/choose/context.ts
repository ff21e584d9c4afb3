import type { Build } from "../../model/build.ts";
import type { Book } from "../book.ts";
import type { StackedParts } from "../fitUp/partSizes.ts";
import type { Unusable } from "./refusal.ts";

/** What every list of parts to try is made with. */
export interface Context {
  readonly book: Book;
  /** gives all that is not to be tried */
  readonly build: Build;
  /** that build's parts, as its stacks take their sizes */
  readonly housing: StackedParts;
  /** gathers what can't be used, so that all of it is told at once */
  readonly unusable: Unusable[];
}

/** @returns entries made from the parts to try; those that can't be used are gathered under their path */
export function tried<A, E>(
  { unusable }: Context,
  path: string,
  list: readonly A[],
  make: (asked: A, at: string) => readonly E[] | string,
): E[] {
  return list.flatMap((asked, i) => {
    const at = `${path}.${i}`;
    const made = make(asked, at);
    if (typeof made !== "string") return made;
    unusable.push({ path: at, message: made });
    return [];
  });
}
