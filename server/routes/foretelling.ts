import { FORETOLD_KINDS, foretell, type Logged } from "../../shared/book/record/foretell.ts";
import type { Foretold } from "../../shared/model/api/record.ts";
import type { BenchTest } from "../../shared/model/tests/index.ts";
import type { Beside } from "../store/collection.ts";
import type { Data } from "../store/rows.ts";
import type { Store } from "../store/store.ts";
import { bookIn } from "../threads/bookIn.ts";
import { type Threads, TooBusyError } from "../threads/threads.ts";

/** A test that is about to be written, for a thread. */
export interface ForetellAsked extends Logged {
  readonly file: string;
}

/** @returns what the book in a file predicts for a test before it is written */
export const foretoldIn = ({ file, ...logged }: ForetellAsked): Foretold[] => foretell(bookIn(file), logged);

const isForetold = (data: Data): data is BenchTest & Data =>
  FORETOLD_KINDS.some((kind) => kind === data.kind);

/** Where nobody has the time to predict, the record goes without: the measurement comes first. */
async function rowsOf(threads: Threads, asked: ForetellAsked): Promise<readonly Foretold[] | null> {
  try {
    return await threads.run("foretell", asked);
  } catch (error) {
    if (error instanceof TooBusyError) return null;
    throw error;
  }
}

/** A test as a request sends it. */
interface Sent {
  /** null: it is new */
  readonly id: string | null;
  readonly data: Data;
  readonly now: string;
}

/**
 * Works out what is predicted for a test before it is written, on a thread of its own.
 *
 * @returns writes it beside the test, in the write's transaction; nothing for what no prediction is made of
 */
export async function foretelling(
  { file, collections, predictions }: Store,
  threads: Threads,
  { id, data, now }: Sent,
): Promise<Beside> {
  if (!isForetold(data)) return () => {};
  const before = id === null ? null : ((collections.tests.find(id)?.data as BenchTest | undefined) ?? null);
  const kept = id === null ? [] : (predictions.of(id)?.rows ?? []);
  const asked = { file, id, test: data, before, kept, today: now.slice(0, 10) };
  const rows = await rowsOf(threads, asked);
  if (!rows) return () => {};
  return (test) => predictions.keep({ test, at: now, rows: [...rows] });
}
