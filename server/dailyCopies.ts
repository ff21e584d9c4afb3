import type { Threads } from "./threads/threads.ts";

/** When the first look comes, so that it holds up no start, and how often one follows [ms]. */
const FIRST_LOOK = 60_000;
const LOOK = 3_600_000;

interface Keeping {
  readonly file: string;
  readonly clock: () => Date;
  /** how many are kept; 0 makes none */
  readonly keep: number;
  readonly log: (words: string) => void;
}

/**
 * Has a copy of the book made each day that the server runs, on a thread; one that fails is logged, and tried again at the next look.
 *
 * @returns ends it
 */
export function keepDailyCopies(threads: Threads, { file, clock, keep, log }: Keeping): () => void {
  if (keep === 0) return () => {};
  let isOver = false;
  const look = () => {
    threads.run("daily", { file, at: clock(), keep }).catch((error: unknown) => {
      if (!isOver) log(`The daily copy was not made: ${error instanceof Error ? error.message : error}`);
    });
  };
  const first = setTimeout(look, FIRST_LOOK);
  const each = setInterval(look, LOOK);
  return () => {
    isOver = true;
    clearTimeout(first);
    clearInterval(each);
  };
}
