import type { Book } from "../../shared/book/book.ts";
import type { CollectionName } from "../../shared/model/collections.ts";
import type { Stored } from "../../shared/model/record.ts";

/** @returns the book with a record in the place of the one that has its identifier, else behind the others; null takes it out */
export function withRecord(
  book: Book,
  name: CollectionName,
  id: string,
  record: Stored<unknown> | null,
): Book {
  const list = book[name] as readonly Stored<unknown>[];
  const at = list.findIndex((each) => each.id === id);
  const next = list.filter((each) => each.id !== id);
  if (record) next.splice(at < 0 ? next.length : at, 0, record);
  return { ...book, [name]: next };
}
