import type { LimitsInput } from "../../../../shared/decide/limits/input.ts";
import { replyTo } from "./answer.ts";

/** Works the limits out away from the page's own thread: one question, one reply. */
addEventListener("message", (event: MessageEvent<LimitsInput>) => postMessage(replyTo(event.data)));
