import { replyTo } from "./answer.ts";
import type { Question } from "./question.ts";

/** Looks for the next test away from the page's own thread: one question, one reply. */
addEventListener("message", (event: MessageEvent<Question>) => postMessage(replyTo(event.data)));
