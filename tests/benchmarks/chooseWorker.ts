import { parentPort } from "node:worker_threads";
import { prepare } from "../../shared/decide/choose/prepare.ts";
import { solveChunk } from "../../shared/decide/choose/solveChunk.ts";
import { runSweep, type SweepSums, sweepTables } from "./sweepCases.ts";
import { sweepQuestion } from "./sweepQuestion.ts";

/** Part of the work: the bare sweep's solves alone, or sets chosen from. */
export interface Task {
  readonly kind: "bare" | "choose";
  readonly from: number;
  readonly to: number;
}

/** What came of it: sums of the bare solves, or the memory of the sets' columns. */
export interface Done {
  readonly from: number;
  readonly to: number;
  readonly buffer: ArrayBuffer | null;
  readonly sums: SweepSums | null;
}

/** Answers tasks in a thread of its own. */
export function serveTasks(): void {
  const tables = sweepTables();
  const prepared = prepare(sweepQuestion());
  parentPort?.on("message", ({ kind, from, to }: Task) => {
    if (kind === "bare") {
      const sums = runSweep(tables, from, to - from);
      parentPort?.postMessage({ from, to, buffer: null, sums } satisfies Done);
      return;
    }
    const { buffer } = solveChunk(prepared, from, to);
    parentPort?.postMessage({ from, to, buffer, sums: null } satisfies Done, [buffer]);
  });
}
