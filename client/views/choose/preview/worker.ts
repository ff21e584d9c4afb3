import type { Problem } from "../../../../shared/decide/choose/problem.ts";
import { replyTo } from "./answer.ts";

/** Tries a question away from the page's own thread. */
addEventListener("message", (event: MessageEvent<Problem>) => postMessage(replyTo(event.data)));
