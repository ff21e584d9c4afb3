import { setImmediate } from "node:timers/promises";
import { solvePiece } from "./piece.ts";
import type { Runner } from "./runner.ts";

/** @returns a runner on the caller's own thread, one piece at a time, for where no built worker lies beside the server */
export function inThread(): Runner {
  let before: Promise<unknown> = Promise.resolve();
  return {
    threads: 1,
    solve: (piece) => {
      const mine = before.then(() => setImmediate()).then(() => solvePiece(piece));
      before = mine.catch(() => undefined);
      return mine;
    },
    close: () => Promise.resolve(),
  };
}
