import type { SeriesAsked } from "../../../../shared/book/size/printSeries.ts";
import { replyTo } from "./answer.ts";

/** Looks for what to print next away from the page's own thread: one question, one reply. */
addEventListener("message", (event: MessageEvent<SeriesAsked>) => postMessage(replyTo(event.data)));
