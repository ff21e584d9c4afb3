import { setTimeout } from "node:timers/promises";
import { Jobs } from "#server/jobs/jobs.ts";
import { pool } from "#server/jobs/pool.ts";
import { pageOf } from "#server/jobs/results.ts";
import { setsQuery } from "#shared/model/api/choose.ts";
import { chooseQuestion } from "#tests/support/chooseQuestion.ts";
import { CHOOSE_WORKER } from "./site.ts";
import { sweepQuestion } from "./sweepQuestion.ts";
import { memoryNow, peakMemory, secondsOf } from "./timing.ts";

const POLL = 5;

export interface JobTimes {
  readonly sets: number;
  readonly threads: number;
  /** from the question to the first page of its answer [s] */
  readonly seconds: number;
  /** of the process, its threads included, beyond what it held with the book read and the question made [MB] */
  readonly peakMemory: number;
}

/** The sweep's million sets as a job of the server: its pool of workers, its columns, its front and its first page. */
export async function timedJob(): Promise<JobTimes> {
  const { request, question } = chooseQuestion();
  const before = memoryNow();
  const runner = pool(CHOOSE_WORKER);
  const jobs = new Jobs(runner, () => new Date(), console.error);
  let sets = 0;
  const seconds = await secondsOf(async () => {
    const { job } = jobs.start(request, { ...question, problem: sweepQuestion() });
    while (!job.isOver) await setTimeout(POLL);
    if (job.state !== "done") throw new Error(job.error ?? job.state);
    pageOf(job, setsQuery.parse({}));
    sets = job.sets;
  });
  const peak = peakMemory();
  await jobs.close();
  return { sets, threads: runner.threads, seconds, peakMemory: peak - before };
}
