import { replyTo } from "./answer.ts";
import type { SwapQuestion } from "./question.ts";

/** Looks for swaps away from the page's own thread: one question, one reply. */
addEventListener("message", (event: MessageEvent<SwapQuestion>) => postMessage(replyTo(event.data)));
