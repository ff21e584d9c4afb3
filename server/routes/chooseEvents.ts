import type { Chunk } from "../../shared/decide/choose/columns.ts";
import type { Job } from "../jobs/job.ts";
import { bestOf } from "../jobs/results.ts";
import type { EventStream } from "./eventStream.ts";

/** Progress is reported so often [ms]: seven times a second. */
const BEAT = 140;

/** Reports a job's progress, and the best sets of each piece, until it ends; the stream then ends too. */
export function streamJob(job: Job, stream: EventStream): void {
  const report = (event: string) => stream.send(event, job.report());
  let pieces: Chunk[] = [];
  const quietPieces = job.onPiece((piece) => pieces.push(piece));
  const reportSets = () => {
    const best = bestOf(job, pieces);
    pieces = [];
    if (best.length > 0) stream.send("sets", { best });
  };
  const end = () => {
    if (job.state === "done") reportSets();
    quietPieces();
    report(job.state);
    stream.end();
  };
  report("progress");
  if (job.isOver) {
    end();
    return;
  }
  const beat = setInterval(() => {
    reportSets();
    report("progress");
  }, BEAT);
  const quiet = job.onEnd(() => {
    clearInterval(beat);
    end();
  });
  stream.onClose(() => {
    clearInterval(beat);
    quietPieces();
    quiet();
  });
}
