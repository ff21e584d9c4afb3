/** Longest that a page's work may hold up what waits for its rest [ms]. */
const LONGEST = 1500;

/** Where a browser has no idle callback: long enough for a frame or two [ms]. */
const A_MOMENT = 200;

let before: Promise<unknown> = Promise.resolve();

const idle = (): Promise<void> =>
  new Promise((rests) => {
    if ("requestIdleCallback" in globalThis) requestIdleCallback(() => rests(), { timeout: LONGEST });
    else setTimeout(rests, A_MOMENT);
  });

/**
 * Does something once the page has nothing else to do: one thing after another, in the order asked.
 *
 * @param act - what is done; the next waits for its end
 * @returns what gives it up
 */
export function atRest(act: () => Promise<unknown>): () => void {
  let wanted = true;
  before = before.then(idle).then(() => (wanted ? act() : undefined));
  return () => {
    wanted = false;
  };
}
