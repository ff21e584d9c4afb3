import { type Question, replyTo } from "./answer.ts";

/** Works sensitivities out away from the page's own thread: one question, one reply. */
addEventListener("message", (event: MessageEvent<Question>) => postMessage(replyTo(event.data)));
