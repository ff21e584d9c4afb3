import type { Response } from "express";
import type { Chunk } from "../../shared/decide/choose/columns.ts";
import type { Job } from "../jobs/job.ts";
import { bestOf } from "../jobs/results.ts";

/** Progress is told so often [ms]: seven times a second. */
const BEAT = 140;

/** Tells a job's progress, and the best sets of each piece, until it ends; the stream then ends too. */
export function streamJob(job: Job, response: Response): void {
  response.status(200).set({
    "Content-Type": "text/event-stream; charset=utf-8",
    "Cache-Control": "no-cache, no-transform",
    "X-Accel-Buffering": "no",
  });
  const send = (event: string, data: object) =>
    response.write(`event: ${event}\ndata: ${JSON.stringify(data)}\n\n`);
  const tell = (event: string) => send(event, job.report());
  let pieces: Chunk[] = [];
  const quietPieces = job.onPiece((piece) => pieces.push(piece));
  const tellSets = () => {
    const best = bestOf(job, pieces);
    pieces = [];
    if (best.length > 0) send("sets", { best });
  };
  const end = () => {
    if (job.state === "done") tellSets();
    quietPieces();
    tell(job.state);
    response.end();
  };
  tell("progress");
  if (job.isOver) {
    end();
    return;
  }
  const beat = setInterval(() => {
    tellSets();
    tell("progress");
  }, BEAT);
  const quiet = job.onEnd(() => {
    clearInterval(beat);
    end();
  });
  response.on("close", () => {
    clearInterval(beat);
    quietPieces();
    quiet();
  });
}
