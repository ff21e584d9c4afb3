import type { Response } from "express";
import type { Job } from "../jobs/job.ts";

/** Progress is told so often [ms]: seven times a second. */
const BEAT = 140;

/** Tells a job's progress until it ends; the stream then ends too. */
export function streamJob(job: Job, response: Response): void {
  response.status(200).set({
    "Content-Type": "text/event-stream; charset=utf-8",
    "Cache-Control": "no-cache, no-transform",
    "X-Accel-Buffering": "no",
  });
  const tell = (event: string) =>
    response.write(`event: ${event}\ndata: ${JSON.stringify(job.report())}\n\n`);
  const end = () => {
    tell(job.state);
    response.end();
  };
  tell("progress");
  if (job.isOver) {
    end();
    return;
  }
  const beat = setInterval(() => tell("progress"), BEAT);
  const quiet = job.onEnd(() => {
    clearInterval(beat);
    end();
  });
  response.on("close", () => {
    clearInterval(beat);
    quiet();
  });
}
