import { replyTo } from "./answer.ts";
import type { DoubtQuestion } from "./question.ts";

/** Samples away from the page's own thread: one question, one reply. */
addEventListener("message", (event: MessageEvent<DoubtQuestion>) => postMessage(replyTo(event.data)));
