import { type Swaps, solveSwaps } from "../../../../shared/decide/swaps/swaps.ts";
import { type Answer, asProblem } from "../../../../shared/numeric/errors.ts";
import type { SwapQuestion } from "./question.ts";

export type Reply = Answer<Swaps>;

/** @returns the sets of swaps, or in words why there are none */
export const replyTo = (question: SwapQuestion): Reply => asProblem(() => solveSwaps(question));
