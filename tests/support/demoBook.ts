import { readFileSync } from "node:fs";
import type { Book } from "#shared/book/book.ts";
import { COLLECTION_NAMES } from "#shared/model/collections.ts";
import { COLLECTIONS } from "#shared/model/schemas.ts";

function frozen<T>(value: T): T {
  if (typeof value !== "object" || value === null) return value;
  for (const inner of Object.values(value)) frozen(inner);
  return Object.freeze(value);
}

function parsed(): Book {
  const at = "2026-01-01T00:00:00.000Z";
  const entries = COLLECTION_NAMES.map((name) => {
    const text = readFileSync(new URL(`../../seed-data/${name}.json`, import.meta.url), "utf8");
    const list = JSON.parse(text) as { id: string; data: unknown }[];
    const records = list.map(({ id, data }) => ({
      id,
      revision: 1,
      createdAt: at,
      updatedAt: at,
      data: COLLECTIONS[name].parse(data),
    }));
    return [name, records] as const;
  });
  return Object.fromEntries(entries) as unknown as Book;
}

let book: Book | null = null;

/**
 * The demo of seed-data as a bench book, parsed by the schemas: one and the same for all tests of a process, whose calibrations are then made once.
 *
 * @returns the book, frozen: what writes to a record throws
 */
export function demoBook(): Book {
  book ??= frozen(parsed());
  return book;
}
