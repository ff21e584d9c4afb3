import type { Steps } from "../../shared/book/steps.ts";
import { nextTask } from "./nextTask.ts";

/** So long the page works on until it looks for what else waits [ms]: half a frame. */
const SLICE = 8;

/**
 * Does work in steps; between them the page answers and paints.
 *
 * @param isWanted - asked before the page goes on with it
 * @returns what it comes to; null where it was given up
 */
export async function inSteps<T>(steps: Steps<T>, isWanted: () => boolean): Promise<T | null> {
  let begun = performance.now();
  for (let step = steps.next(); ; step = steps.next()) {
    if (step.done) return step.value;
    if (performance.now() - begun < SLICE) continue;
    await new Promise<void>(nextTask);
    if (!isWanted()) return null;
    begun = performance.now();
  }
}
