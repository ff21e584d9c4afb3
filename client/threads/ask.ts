import { unitsShown } from "../../shared/units/showing.ts";
import { Lane } from "./lane.ts";
import type { Ahead, Posted, Question, Reply, TaskName } from "./tasks.ts";

const start = () => new Worker(new URL("./worker.ts", import.meta.url), { type: "module" });

/** What follows a moved setting has a thread of its own; what may take seconds waits its turn in another. */
const QUICK = new Lane(start);
const SLOW = new Lane(start);

/** Which thread does a task, and what comes first of what waits there: what is quickly done. */
const PLACES: Readonly<Record<TaskName, { readonly lane: Lane; readonly rank: number }>> = {
  uncertainty: { lane: QUICK, rank: 0 },
  verdict: { lane: QUICK, rank: 0 },
  preview: { lane: QUICK, rank: 0 },
  run: { lane: QUICK, rank: 0 },
  limits: { lane: SLOW, rank: 0 },
  ways: { lane: SLOW, rank: 0 },
  sensitivities: { lane: SLOW, rank: 0 },
  powerCut: { lane: SLOW, rank: 0 },
  mapChance: { lane: SLOW, rank: 0 },
  swaps: { lane: SLOW, rank: 0 },
  size: { lane: SLOW, rank: 1 },
  sizeSpread: { lane: SLOW, rank: 2 },
  nextTest: { lane: SLOW, rank: 1 },
  printSeries: { lane: SLOW, rank: 3 },
};

/** A way to have questions answered in another thread. */
export interface Asking<Question, Reply> {
  /** Lets the thread fetch what it will need. */
  readonly prepare: () => void;
  /** Puts a question and says how it ends; null: the thread failed. @returns what gives it up */
  readonly put: (question: Question, done: (end: { readonly reply: Reply } | null) => void) => () => void;
}

/** @returns a way to put questions of one task */
export function asking<N extends TaskName>(task: N): Asking<Question<N>, Reply<N>> {
  const { lane, rank } = PLACES[task];
  return {
    prepare: () => lane.post({ ahead: task } satisfies Ahead),
    put: (question, done) => {
      const posted: Posted<N> = { task, question, units: unitsShown() };
      return lane.ask({ posted, rank, done: (end) => done(end as { readonly reply: Reply<N> } | null) });
    },
  };
}
