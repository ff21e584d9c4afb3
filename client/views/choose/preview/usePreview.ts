import { useMemo } from "preact/hooks";
import type { Book } from "../../../../shared/book/book.ts";
import { chooseProblem } from "../../../../shared/book/choose/problem.ts";
import { countCombinations } from "../../../../shared/decide/choose/count.ts";
import type { Problem } from "../../../../shared/decide/choose/problem.ts";
import type { ChooseRequest } from "../../../../shared/model/api/choose.ts";
import { answerOrNull } from "../../../../shared/numeric/errors.ts";
import { useTask } from "../../../threads/useTask.ts";
import type { Preview, PreviewReply } from "./answer.ts";

/** Combinations that are tried while one types: some tens of milliseconds of another thread. Judgement. */
const MOST_TRIED = 20_000;

const FAILED: PreviewReply = { problem: "not tried" };

/** @returns the question in numbers; null where it can't be asked, or is too long to be tried at once */
export function triedProblem(book: Book, request: ChooseRequest): Problem | null {
  return answerOrNull(() => {
    const { problem } = chooseProblem(book, request);
    return countCombinations(problem, MOST_TRIED) > 0 ? problem : null;
  });
}

/** @returns what the question on the form would bring, tried in another thread of the browser while one types; null where it isn't tried */
export function usePreview(book: Book, request: ChooseRequest | null): Preview | null {
  const key = request && JSON.stringify(request);
  const problem = useMemo(() => request && triedProblem(book, request), [book, key]);
  const { reply, asked } = useTask("preview", problem, FAILED);
  return problem && asked === problem && reply && "answered" in reply ? reply.answered : null;
}
