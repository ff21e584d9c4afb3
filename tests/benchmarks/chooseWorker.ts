import { parentPort } from "node:worker_threads";
import { prepare } from "../../shared/decide/choose/prepare.ts";
import { solveChunk } from "../../shared/decide/choose/solveChunk.ts";
import { runSweep, sweepTables } from "./sweepCases.ts";
import { sweepQuestion } from "./sweepQuestion.ts";

/** Part of the work: the bare sweep's solves alone, or sets chosen from. */
export interface Task {
  readonly kind: "bare" | "choose";
  readonly from: number;
  readonly to: number;
}

/** Answers tasks in a thread of its own: a chunk's memory, or nothing for the bare sweep. */
export function serveTasks(): void {
  const tables = sweepTables();
  const prepared = prepare(sweepQuestion());
  parentPort?.on("message", ({ kind, from, to }: Task) => {
    if (kind === "bare") {
      runSweep(tables, from, to - from);
      parentPort?.postMessage({ from, to, buffer: null });
      return;
    }
    const { buffer } = solveChunk(prepared, from, to);
    parentPort?.postMessage({ from, to, buffer }, [buffer]);
  });
}
