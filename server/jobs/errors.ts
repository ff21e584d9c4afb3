/** Jobs that may wait or run at once. */
export const MOST_OPEN = 8;

/** There is no such job: it was never asked for, was cancelled, or made room for newer ones. */
export class UnknownJobError extends Error {
  readonly code = "unknown-job";
  constructor(id: string) {
    super(
      `There is no search under ${JSON.stringify(id)}: it was cancelled, or made room for newer ones. Ask again.`,
    );
    this.name = "UnknownJobError";
  }
}

/** As many jobs are open as may be. */
export class TooManyJobsError extends Error {
  readonly code = "too-many-jobs";
  constructor() {
    super(`${MOST_OPEN} searches are under way already; wait for one to end, or cancel one.`);
    this.name = "TooManyJobsError";
  }
}
