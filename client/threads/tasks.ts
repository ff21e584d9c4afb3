import type { ShownUnits } from "../../shared/units/showing.ts";

/** What is worked out away from the page's own thread, and where: each module's `replyTo` takes plain data and throws nothing that a question can lead to. */
export const TASKS = {
  uncertainty: () => import("../state/uncertainty/answer.ts").then(({ replyTo }) => replyTo),
  verdict: () => import("../state/verdict/answer.ts").then(({ replyTo }) => replyTo),
  preview: () => import("../views/choose/preview/answer.ts").then(({ replyTo }) => replyTo),
  run: () => import("../views/rundown/answer.ts").then(({ replyTo }) => replyTo),
  limits: () => import("../views/rundown/limits/answer.ts").then(({ replyTo }) => replyTo),
  ways: () => import("../views/match/ways/answer.ts").then(({ replyTo }) => replyTo),
  sensitivities: () => import("../views/match/sensitivities/answer.ts").then(({ replyTo }) => replyTo),
  nextTest: () => import("../views/match/nextTest/answer.ts").then(({ replyTo }) => replyTo),
  size: () => import("../views/size/answer.ts").then(({ replyTo }) => replyTo),
  sizeSpread: () => import("../views/size/spread/answer.ts").then(({ replyTo }) => replyTo),
  printSeries: () => import("../views/size/series/answer.ts").then(({ replyTo }) => replyTo),
  powerCut: () => import("../views/attitudes/power/answer.ts").then(({ replyTo }) => replyTo),
  mapChance: () => import("../views/map/chance/answer.ts").then(({ replyTo }) => replyTo),
  swaps: () => import("../views/mass/swaps/answer.ts").then(({ replyTo }) => replyTo),
} as const;

export type TaskName = keyof typeof TASKS;
type ReplyTo<N extends TaskName> = Awaited<ReturnType<(typeof TASKS)[N]>>;
export type Question<N extends TaskName> = Parameters<ReplyTo<N>>[0];
export type Reply<N extends TaskName> = ReturnType<ReplyTo<N>>;

/** What is posted to a thread. */
export interface Posted<N extends TaskName = TaskName> {
  readonly task: N;
  readonly question: Question<N>;
  /** in which the page shows every quantity */
  readonly units: ShownUnits;
}

/** Posted ahead of a question, so that its code is there when it comes. */
export interface Ahead {
  readonly ahead: TaskName;
}

/** Does a task on the thread that calls it. */
export async function done<N extends TaskName>({
  task,
  question,
}: Omit<Posted<N>, "units">): Promise<Reply<N>> {
  const replyTo = await TASKS[task]();
  return (replyTo as (question: Question<N>) => Reply<N>)(question);
}
