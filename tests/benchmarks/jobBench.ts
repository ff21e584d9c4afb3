import { setTimeout } from "node:timers/promises";
import { Answers } from "#server/jobs/answers.ts";
import { Jobs } from "#server/jobs/jobs.ts";
import { sealed } from "#server/jobs/question.ts";
import { pool } from "#server/threads/pool.ts";
import { combinationsQuery } from "#shared/model/api/choose.ts";
import { chooseQuestion } from "#tests/support/chooseQuestion.ts";
import { WORKER_PROGRAM } from "./site.ts";
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

/** The sweep's million combinations as a job of the server: its pool of workers, its columns, its front and its first page. */
export async function timedJob(): Promise<JobTimes> {
  const { request, question } = chooseQuestion();
  const before = memoryNow();
  const threads = pool(WORKER_PROGRAM);
  const jobs = new Jobs(threads, () => new Date(), console.error);
  let sets = 0;
  const seconds = await secondsOf(async () => {
    const { job } = jobs.start(request, sealed({ ...question, problem: sweepQuestion() }));
    while (!job.isOver) await setTimeout(POLL);
    if (job.state !== "done") throw new Error(job.error ?? job.state);
    await new Answers(threads, job).page(combinationsQuery.parse({}));
    sets = job.count;
  });
  const peak = peakMemory();
  await jobs.close();
  return { sets, threads: threads.count, seconds, peakMemory: peak - before };
}
