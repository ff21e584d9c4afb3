import { setImmediate } from "node:timers/promises";
import { nonDominated } from "../../shared/decide/choose/front.ts";
import { solvePiece, uncertaintyOfSet } from "./piece.ts";
import type { Runner } from "./runner.ts";

/** @returns a runner on the caller's own thread, one piece at a time, for where no built worker lies beside the server */
export function inThread(): Runner {
  let before: Promise<unknown> = Promise.resolve();
  const inTurn = <T>(work: () => T): Promise<T> => {
    const mine = before.then(() => setImmediate()).then(work);
    before = mine.catch(() => undefined);
    return mine;
  };
  return {
    threads: 1,
    solve: (piece) => inTurn(() => solvePiece(piece)),
    front: ({ keys, among }) => inTurn(() => nonDominated(keys, among)),
    doubt: (set) => inTurn(() => uncertaintyOfSet(set)),
    close: () => Promise.resolve(),
  };
}
