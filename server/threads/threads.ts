import type { Input, Output, TaskName } from "./tasks.ts";

export interface RunOptions {
  /** gives the task up, under way or not */
  readonly signal?: AbortSignal;
  /** memory of the input that is handed over instead of copied */
  readonly transfer?: readonly ArrayBuffer[];
}

/** Threads that do what would hold up the server's own. */
export interface Threads {
  /** that work at once */
  readonly count: number;
  /**
   * @throws {Refusal} where the task refuses its input, and whatever else it throws
   * @throws {TooBusyError} where too many tasks wait already
   */
  readonly run: <N extends TaskName>(name: N, input: Input<N>, options?: RunOptions) => Promise<Output<N>>;
  readonly close: () => Promise<void>;
}

/** So much waits for the threads that one more would wait too long. */
export class TooBusyError extends Error {
  readonly code = "too-busy";
  constructor(waiting: number) {
    super(`${waiting} requests that take long wait already; ask again in a while.`);
    this.name = "TooBusyError";
  }
}
