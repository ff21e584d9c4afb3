import { parentPort } from "node:worker_threads";
import { markForemost } from "#shared/decide/choose/front.ts";
import { type Prepared, prepare } from "#shared/decide/choose/prepare.ts";
import { RUN, solveChunk } from "#shared/decide/choose/solveChunk.ts";
import { solveCombination } from "#shared/decide/choose/solveCombination.ts";
import { createWork, writeCombination } from "#shared/decide/choose/work.ts";
import type { MapQuestion } from "#shared/decide/map/grid.ts";
import { mapPart } from "#shared/decide/map/solve.ts";
import { runSweep, type SweepSums, sweepTables } from "./sweepCases.ts";
import { sweepQuestion } from "./sweepQuestion.ts";

/** Part of the work: the bare sweep's solves alone, the same combinations solved by the engine and not judged, or combinations chosen from. */
export interface Task {
  readonly kind: "bare" | "solve" | "choose";
  readonly from: number;
  readonly to: number;
}

/** Part of a map to be solved. */
export interface MapTask {
  readonly kind: "map";
  readonly question: MapQuestion;
  readonly range: readonly [from: number, to: number];
}

/** What came of it: sums of the bare solves, or the memory of the combinations' columns. */
export interface Done {
  readonly from: number;
  readonly to: number;
  readonly buffer: ArrayBuffer | null;
  readonly sums: SweepSums | null;
}

/** Solves combinations as {@link solveChunk} does, and does nothing more with them. */
function solveAlone(prepared: Prepared, from: number, to: number): void {
  const work = createWork(prepared);
  for (let index = from; index < to; index++) {
    writeCombination(prepared, work, index);
    solveCombination(prepared, work, index, Math.floor(index / RUN));
  }
}

/** Answers tasks in a thread of its own. */
export function serveTasks(): void {
  const tables = sweepTables();
  const prepared = prepare(sweepQuestion());
  parentPort?.on("message", (task: Task | MapTask) => {
    if (task.kind === "map") {
      parentPort?.postMessage(mapPart(task.question, task.range));
      return;
    }
    const { kind, from, to } = task;
    if (kind === "bare") {
      const sums = runSweep(tables, from, to - from);
      parentPort?.postMessage({ from, to, buffer: null, sums } satisfies Done);
      return;
    }
    if (kind === "solve") {
      solveAlone(prepared, from, to);
      parentPort?.postMessage({ from, to, buffer: null, sums: null } satisfies Done);
      return;
    }
    const chunk = solveChunk(prepared, from, to);
    markForemost(prepared, chunk);
    // Made here, so it is no shared memory.
    const buffer = chunk.buffer as ArrayBuffer;
    parentPort?.postMessage({ from, to, buffer, sums: null } satisfies Done, [buffer]);
  });
}
