import { replyTo } from "./answer.ts";
import type { UncertaintyQuestion } from "./question.ts";

/** Samples away from the page's own thread: one question, one reply. */
addEventListener("message", (event: MessageEvent<UncertaintyQuestion>) => postMessage(replyTo(event.data)));
