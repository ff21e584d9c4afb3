import { useMemo } from "preact/hooks";
import type { Book } from "../../../../shared/book/resolve.ts";
import type { Side } from "../../../../shared/book/size/sides.ts";
import type { WantedHold } from "../../../../shared/decide/size/input.ts";
import type { SizeSpread } from "../../../../shared/decide/size/spread.ts";
import { useTask } from "../../../threads/useTask.ts";
import type { Sized } from "../answer.ts";
import type { Reply } from "./answer.ts";
import { spreadQuestion } from "./question.ts";

const FAILED: Reply = {
  problem: "How far the sizes are known could not be worked out in this browser; reload the page.",
};

export interface SpreadNow {
  /** of the family that is shown; null until it is there, and where nothing is uncertain */
  readonly spread: SizeSpread | null;
  readonly problem: string | null;
}

/** @returns what is not known of the family that is shown, worked out in a thread of its own after the sizes themselves */
export function useSpread(book: Book, side: Side | null, shown: Sized | null, hold: WantedHold): SpreadNow {
  const question = useMemo(
    () => (side && shown && shown.rows.length > 0 ? spreadQuestion(book, side, shown, hold) : null),
    [book, side, shown, hold],
  );
  const { reply, asked } = useTask("sizeSpread", question, FAILED);
  if (!reply || asked !== question) return { spread: null, problem: null };
  return "problem" in reply
    ? { spread: null, problem: reply.problem }
    : { spread: reply.answered, problem: null };
}
