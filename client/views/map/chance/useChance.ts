import { useMemo } from "preact/hooks";
import type { Book } from "../../../../shared/book/book.ts";
import type { ChanceNodes } from "../../../../shared/decide/map/chance.ts";
import { asProblem } from "../../../../shared/numeric/errors.ts";
import type { Outcome } from "../../../state/outcome.ts";
import { useTask } from "../../../threads/useTask.ts";
import type { Asked } from "../asked.ts";
import type { Reply } from "./answer.ts";
import { CLOSENESS, chanceQuestion } from "./question.ts";

const FAILED: Reply = {
  problem: "The chance of holding could not be worked out in this browser; reload the page.",
};

export interface ChanceProps {
  readonly book: Book;
  readonly outcome: Outcome;
  readonly asked: Asked;
  /** what is moved beside the axes, as one text */
  readonly others: string;
  readonly isDragged: boolean;
}

export interface Chance {
  /** of the axes that are asked for; null until they are sampled */
  readonly nodes: ChanceNodes | null;
  readonly problem: string | null;
  readonly busy: boolean;
}

/** The spread of the margin over the map, sampled in another thread where the chance of holding is shown. */
export function useChance({ book, outcome, asked, others, isDragged }: ChanceProps): Chance {
  const { x, y, shown } = asked;
  const isShown = shown === "chance";
  const made = useMemo(
    () =>
      asProblem(() =>
        isShown
          ? chanceQuestion(book, outcome, asked, isDragged ? CLOSENESS.dragged : CLOSENESS.settled)
          : null,
      ),
    [book, outcome, x, y, isShown, others, isDragged],
  );
  const { reply, busy } = useTask("mapChance", "answered" in made ? made.answered : null, FAILED);
  if (!isShown) return { nodes: null, problem: null, busy: false };
  if ("problem" in made) return { nodes: null, problem: made.problem, busy: false };
  if (reply === null) return { nodes: null, problem: null, busy };
  if ("problem" in reply) return { nodes: null, problem: reply.problem, busy };
  const nodes = reply.answered;
  const fits = nodes.x.key === x && nodes.y.key === y;
  return { nodes: fits ? nodes : null, problem: null, busy };
}
