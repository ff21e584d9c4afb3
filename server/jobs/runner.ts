import type { Problem } from "../../shared/decide/choose/problem.ts";

/** Sets `from` up to `to`, not included, of one question. */
export interface Piece {
  /** names the question, so that a worker makes it ready only once */
  readonly key: string;
  readonly problem: Problem;
  readonly from: number;
  readonly to: number;
}

/** What solves pieces: worker threads, or the caller's own thread. */
export interface Runner {
  /** pieces that run at once */
  readonly threads: number;
  /** the solved sets as the memory of their columns, handed over */
  readonly solve: (piece: Piece) => Promise<ArrayBuffer>;
  readonly close: () => Promise<void>;
}
