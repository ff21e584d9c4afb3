import { COLLECTION_NAMES } from "../model/collections.ts";
import type { Stored } from "../model/record.ts";
import type { Book } from "./book.ts";

/** Fowler, Noll and Vo's offset basis and prime for 32 bit (FNV-1a; RFC 9923), and another start for a second half. */
const [BASIS, PRIME, OTHER_BASIS] = [0x811c9dc5, 0x01000193, 0x9dc5811c];
const [HEX, DIGITS] = [16, 8];

function hashed(text: string, basis: number): string {
  let hash = basis;
  for (let i = 0; i < text.length; i++) hash = Math.imul(hash ^ text.charCodeAt(i), PRIME);
  return (hash >>> 0).toString(HEX).padStart(DIGITS, "0");
}

/**
 * A short text that two books share only where they hold the same states of the same records.
 *
 *     collection, identifier, revision and moment of each record, whatever their order, in 64 bits
 *
 * @param book - any part of a bench book
 * @param more - what else an answer depends on
 * @returns sixteen hexadecimal digits
 */
export function fingerprint(book: Book, more: readonly Stored<unknown>[] = []): string {
  const line = (of: string, { id, revision, updatedAt }: Stored<unknown>) =>
    `${of}/${id} ${revision} ${updatedAt}`;
  const lines = COLLECTION_NAMES.flatMap((name) =>
    (book[name] as readonly Stored<unknown>[]).map((record) => line(name, record)),
  );
  const text = [...lines, ...more.map((record) => line("", record))].sort().join("\n");
  return hashed(text, BASIS) + hashed(text, OTHER_BASIS);
}
