import type { UncertaintyAsked } from "../../../shared/book/uncertaintyAsked.ts";
import { replyTo } from "./answer.ts";

/** Samples away from the page's own thread: one question, one reply. */
addEventListener("message", (event: MessageEvent<UncertaintyAsked>) => postMessage(replyTo(event.data)));
