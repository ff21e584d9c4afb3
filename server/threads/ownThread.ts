import { setImmediate } from "node:timers/promises";
import { done } from "./tasks.ts";
import type { Threads } from "./threads.ts";

/** @returns the caller's own thread, one task at a time, for where no built worker lies beside the server */
export function ownThread(): Threads {
  let before: Promise<unknown> = Promise.resolve();
  const inTurn = <T>(work: () => T): Promise<T> => {
    const mine = before.then(() => setImmediate()).then(work);
    before = mine.catch(() => undefined);
    return mine;
  };
  return {
    count: 1,
    run: (name, input, { signal } = {}) =>
      inTurn(() => {
        signal?.throwIfAborted();
        return done(name, input);
      }),
    close: () => Promise.resolve(),
  };
}
