import { type PrintSeries, printSeries, type SeriesAsked } from "../../../../shared/book/size/printSeries.ts";
import { type Answer, asProblem } from "../../../../shared/numeric/errors.ts";

export type Reply = Answer<PrintSeries>;

/** @returns what to print and test next, or in words why that can't be said */
export function replyTo(question: SeriesAsked): Reply {
  return asProblem(() => printSeries(question));
}
