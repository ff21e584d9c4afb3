import type { Job } from "../jobs/job.ts";
import type { Jobs } from "../jobs/jobs.ts";
import type { SolvedPiece } from "../jobs/piece.ts";
import type { EventStream } from "./eventStream.ts";

/** Progress is reported so often [ms]: seven times a second. */
const BEAT = 140;

/** Reports a job's progress, and the best combinations of each piece, until it ends; the stream then ends too. */
export function streamJob(job: Job, jobs: Jobs, stream: EventStream): void {
  const report = (event: string) => stream.send(event, job.report());
  let pieces: SolvedPiece[] = [];
  let reporting: Promise<void> = Promise.resolve();
  const unfollow = job.onPiece((piece) => pieces.push(piece));
  const reportCombinations = async () => {
    const back = pieces;
    pieces = [];
    const best = back.length > 0 ? await jobs.best(job, back) : [];
    if (best.length > 0) stream.send("sets", { best });
  };
  const end = async () => {
    unfollow();
    await reporting;
    if (job.state === "done") await reportCombinations();
    report(job.state);
    stream.end();
  };
  report("progress");
  if (job.isOver) {
    void end();
    return;
  }
  const beat = setInterval(() => {
    reporting = reporting.then(reportCombinations);
    report("progress");
  }, BEAT);
  const unlisten = job.onEnd(() => {
    clearInterval(beat);
    void end();
  });
  stream.onClose(() => {
    clearInterval(beat);
    unfollow();
    unlisten();
  });
}
