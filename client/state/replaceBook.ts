import { reload } from "./book.ts";

let given = new AbortController();

/**
 * Replaces the whole book and reads it anew. What was asked about its records is given up first: they may be gone before
 * the answer.
 *
 * @param write - has the server replace it
 * @returns what the server said
 * @throws {ApiError}
 */
export async function replaceBook<T>(write: () => Promise<T>): Promise<T> {
  given.abort();
  try {
    const answer = await write();
    await reload();
    return answer;
  } finally {
    given = new AbortController();
  }
}

/** @returns gives a question about a record up: with its own signal, or once the book is replaced */
export const whileBookStands = (signal: AbortSignal): AbortSignal => AbortSignal.any([signal, given.signal]);
