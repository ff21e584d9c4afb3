import { useWorker } from "../../state/useWorker.ts";
import type { Reply } from "./answer.ts";
import type { Question } from "./question.ts";

const FAILED: Reply = { problem: "The run could not be worked out in this browser; reload the page." };

const start = () => new Worker(new URL("./worker.ts", import.meta.url), { type: "module" });

/** @returns the reply to a question, worked out in a thread of its own */
export function useReply(question: Question | null) {
  return useWorker<Question, Reply>(start, question, FAILED);
}
