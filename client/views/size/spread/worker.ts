import type { FamilyAsked } from "../../../../shared/book/size/familySpread.ts";
import { replyTo } from "./answer.ts";

/** Samples a family's sizes away from the page's own thread: one question, one reply. */
addEventListener("message", (event: MessageEvent<FamilyAsked>) => postMessage(replyTo(event.data)));
