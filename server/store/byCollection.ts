import { COLLECTION_NAMES, type CollectionName } from "../../shared/model/record.ts";

/** @returns a table with one entry a collection */
export function byCollection<T>(make: (name: CollectionName) => T): Readonly<Record<CollectionName, T>> {
  const entries = COLLECTION_NAMES.map((name): [CollectionName, T] => [name, make(name)]);
  return Object.fromEntries(entries) as { [name in CollectionName]: T };
}
