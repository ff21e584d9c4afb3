import { type BuildSwaps, swapped, swapsOfBuild } from "../../../../shared/book/mass/buildSwaps.ts";
import type { Book } from "../../../../shared/book/resolve.ts";
import type { Way } from "../../../../shared/decide/ways/ways.ts";
import type { Build } from "../../../../shared/model/build.ts";
import { type Answer, answerOrNull, asProblem } from "../../../../shared/numeric/errors.ts";
import { solve } from "../../../state/outcome.ts";
import { answerTo } from "../../match/ways/answer.ts";
import { questionOf } from "../../match/ways/question.ts";
import type { SwapQuestion } from "./question.ts";

export interface Answered {
  readonly swaps: BuildSwaps;
  /** settings each of which alone brings what no swaps reach, on top of the nearest set; none where swaps reach it */
  readonly settings: readonly Way[];
}

export type Reply = Answer<Answered>;

/** More sets than are shown: those that only add a needless swap to a better one are left out. */
const SETS_ASKED = 20;
/** What a maker can set on the vehicle with its best swaps. */
const SETTINGS: readonly Way["handle"][] = ["gap", "series", "diameter"];

/** Settings that alone close what is missing of a build. */
function closing(book: Book, build: Build): Way[] {
  const question = questionOf(book, solve(book, build), { attitude: "worst", mode: "driving" });
  const ways = question ? answerOrNull(() => answerTo({ ...question, crossing: null }).ways) : null;
  return (ways ?? []).filter(({ handle, state }) => SETTINGS.includes(handle) && state === "does");
}

/** @returns the sets of swaps, or in words why there are none */
export function replyTo({ book, build, by }: SwapQuestion): Reply {
  return asProblem(() => {
    const swaps = swapsOfBuild(book, build, by, SETS_ASKED);
    if (!swaps) throw new RangeError("Nothing of this build may be swapped.");
    const isReached = swaps.solutions.length > 0;
    return { swaps, settings: isReached ? [] : closing(book, swapped(book, build, swaps, swaps.nearest)) };
  });
}
