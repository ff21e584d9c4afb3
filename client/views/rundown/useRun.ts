import { useTask } from "../../threads/useTask.ts";
import type { Reply } from "./answer.ts";
import type { Question } from "./question.ts";

const FAILED: Reply = { problem: "The run could not be worked out in this browser; reload the page." };

/** @returns a run, worked out in another thread; null asks nothing */
export const useRun = (question: Question | null) => useTask("run", question, FAILED);
