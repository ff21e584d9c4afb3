import type { Problem } from "../../shared/decide/choose/problem.ts";
import type { SetUncertainty } from "../../shared/decide/choose/shortlist.ts";
import type { StatedUncertainty } from "../../shared/decide/uncertainty.ts";

/** Sets `from` up to `to`, not included, of one question. */
export interface Piece {
  /** names the question, so that a worker makes it ready only once */
  readonly key: string;
  readonly problem: Problem;
  readonly from: number;
  readonly to: number;
}

/** Points to compare: by index the values of each objective, larger is better, and which of them count. */
export interface Contest {
  readonly keys: readonly Float64Array[];
  readonly among: Uint32Array;
}

/** One set of a question whose doubt is asked for. */
export interface SetToSample {
  readonly key: string;
  readonly problem: Problem;
  readonly index: number;
  readonly asked: Omit<StatedUncertainty, "angles">;
}

/** What solves pieces and compares sets: worker threads, or the caller's own thread. */
export interface Runner {
  /** pieces that run at once */
  readonly threads: number;
  /** the solved sets as the memory of their columns, handed over */
  readonly solve: (piece: Piece) => Promise<ArrayBuffer>;
  /** indices of the points that no other dominates, rising */
  readonly front: (contest: Contest) => Promise<Uint32Array>;
  /** what the doubt of a set's numbers makes of its margin */
  readonly doubt: (set: SetToSample) => Promise<SetUncertainty>;
  readonly close: () => Promise<void>;
}
