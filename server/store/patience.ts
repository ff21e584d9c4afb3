import { setTimeout as pause } from "node:timers/promises";
import SQLite from "better-sqlite3";

/** How long a request waits for another process's write before it gives up [ms]. */
const PATIENCE = 10_000;
/** Pauses between attempts grow from one to the other [ms]. */
const FIRST_PAUSE = 2;
const LONGEST_PAUSE = 50;

/** Another program holds the data file. */
export class LockedError extends Error {
  readonly code = "locked";
  constructor() {
    super(
      "Another program holds the data file, so nothing could be stored or read. Close it if it is not a second Gripcurve, then try again.",
    );
    this.name = "LockedError";
  }
}

/** SQLITE_BUSY and its kin: the lock is another connection's. */
export const isLocked = (error: unknown): boolean =>
  error instanceof SQLite.SqliteError && error.code.startsWith("SQLITE_BUSY");

/**
 * Does what needs the data file, and tries again while another process has it locked; others are served in the pauses.
 *
 * @param attempt - leaves nothing behind where it meets a lock
 * @param isAbandoned - whether nobody waits for the answer any more
 * @param patience - how long it tries [ms]
 * @throws {LockedError} when its patience ends, or the answer is abandoned
 */
export async function patiently<T>(
  attempt: () => T | Promise<T>,
  isAbandoned = () => false,
  patience = PATIENCE,
): Promise<T> {
  const end = performance.now() + patience;
  for (let wait = FIRST_PAUSE; ; wait = Math.min(2 * wait, LONGEST_PAUSE)) {
    try {
      return await attempt();
    } catch (error) {
      if (!isLocked(error)) throw error;
      if (performance.now() >= end || isAbandoned()) throw new LockedError();
    }
    await pause(wait);
  }
}
