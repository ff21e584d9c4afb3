import { replyTo, type VerdictQuestion } from "./answer.ts";

/** Looks for ways out away from the page's own thread: one question, one reply. */
addEventListener("message", (event: MessageEvent<VerdictQuestion>) => postMessage(replyTo(event.data)));
