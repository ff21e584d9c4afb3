import { replyTo } from "./answer.ts";
import type { Question } from "./question.ts";

/** Follows a power cut away from the page's own thread: one question, one reply. */
addEventListener("message", (event: MessageEvent<Question>) => postMessage(replyTo(event.data)));
