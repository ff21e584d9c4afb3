import { getPriority, setPriority } from "node:os";
import { isMainThread } from "node:worker_threads";
import { move } from "piscina";
import type { Refused } from "../refusal.ts";
import { refusalOf } from "../refusals.ts";
import { done, type Input, type TaskName } from "./tasks.ts";

/** A third of the share of a core that the server's own thread has where both want it (5 steps of nice): less starves where much else runs. */
const BEHIND = 5;
/** Linux knows no lower priority. */
const LOWEST = 19;

/**
 * Where all cores are wanted at once, long work waits for the server's own thread and not the other way round: on a
 * machine of two cores a search with two threads would take a third of each answer's time. Linux alone takes 0 for the
 * thread that asks (setpriority(2), notes); elsewhere it means the whole server. It is counted from the priority that the
 * server was started with: no right is needed to go further down. Where even that is forbidden, long work is done all the
 * same.
 */
function giveWay(): void {
  try {
    setPriority(0, Math.min(LOWEST, getPriority(0) + BEHIND));
  } catch (error) {
    if (!(error instanceof Error && "code" in error && error.code === "ERR_SYSTEM_ERROR")) throw error;
  }
}

if (!isMainThread && process.platform === "linux") giveWay();

/** One task for a thread. */
export interface Task<N extends TaskName = TaskName> {
  readonly name: N;
  readonly input: Input<N>;
}

/** A task whose input was refused: classes don't survive the way between threads, what they say does. */
export interface RefusedTask {
  readonly refused: Refused;
}

/** Memory of an answer is handed over without copying. */
function handedOver(answer: unknown): unknown {
  if (answer instanceof ArrayBuffer) return move(answer);
  return ArrayBuffer.isView(answer) && answer.buffer instanceof ArrayBuffer ? move(answer) : answer;
}

/** Does a task on a thread of its own. */
export default function run({ name, input }: Task): unknown {
  try {
    return handedOver(done(name, input));
  } catch (error) {
    const refusal = refusalOf(error);
    if (!refusal) throw error;
    return { refused: refusal.said } satisfies RefusedTask;
  }
}
