import { type FamilyAsked, familySpread } from "../../../../shared/book/size/familySpread.ts";
import type { SizeSpread } from "../../../../shared/decide/size/spread.ts";
import { type Answer, asProblem } from "../../../../shared/numeric/errors.ts";

/** Null where nothing is uncertain. */
export type Reply = Answer<SizeSpread | null>;

/** @returns what is not known of a family, or in words why it can't be said */
export function replyTo(question: FamilyAsked): Reply {
  return asProblem(() => familySpread(question));
}
