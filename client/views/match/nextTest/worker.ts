// A thread reads the book by itself: the units that a maker typed, beyond the table, too.
import "../../../../shared/units/parse.ts";
import { replyTo } from "./answer.ts";
import type { Question } from "./question.ts";

/** Looks for the next test away from the page's own thread: one question, one reply. */
addEventListener("message", (event: MessageEvent<Question>) => postMessage(replyTo(event.data)));
