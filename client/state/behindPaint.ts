import { nextTask } from "./nextTask.ts";

/** A page that is in sight and still gets no frame for so long waits for none [ms]. */
const NO_FRAME = 1_000;

/**
 * Does something once the next frame is painted; out of sight, where none is, as soon as it can.
 *
 * Preact's own way for effects gives up waiting after 35 ms: on a slow device they then run before the very paint that they
 * are meant to leave free, as they do where a component is drawn anew before it.
 *
 * @returns what gives it up
 */
export function behindPaint(act: () => void): () => void {
  let isWanted = true;
  afterFrame(() => isWanted && act());
  return () => {
    isWanted = false;
  };
}

function afterFrame(act: () => void): void {
  if (document.visibilityState === "hidden") return void setTimeout(act);
  const late = setTimeout(() => {
    cancelAnimationFrame(frame);
    act();
  }, NO_FRAME);
  const frame = requestAnimationFrame(() => {
    clearTimeout(late);
    nextTask(act);
  });
}
