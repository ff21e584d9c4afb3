import type { Asker } from "./read.ts";

const askers = new Set<Asker>();

/** @returns what everything on the page takes of the tests */
export const askedNow: Asker = (book) => [...askers].flatMap((asks) => asks(book));

/** Says which tests something takes: the book comes onto the screen with all of them, or not yet. @returns it takes them no more */
export function askForTests(asks: Asker): () => void {
  askers.add(asks);
  return () => askers.delete(asks);
}
