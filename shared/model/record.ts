import { z } from "zod";
import { byCollection, type CollectionName } from "./collections.ts";
import { type Reference, type ReferencePlace, referencePlaces, referencesIn } from "./reference.ts";
import { identifier } from "./scalar.ts";
import { COLLECTIONS } from "./schemas.ts";

export type DataOf<C extends CollectionName> = z.output<(typeof COLLECTIONS)[C]>;

/** No record is corrected so often; beyond 2^53 a number can't be counted on. */
const MOST_REVISIONS = 1_000_000_000;

/** What the book keeps around a record's own data. */
export const envelope = {
  id: identifier(),
  revision: z.int().min(1).max(MOST_REVISIONS),
  createdAt: z.iso.datetime(),
  updatedAt: z.iso.datetime(),
};

export interface Stored<T> {
  readonly id: string;
  readonly revision: number;
  readonly createdAt: string;
  readonly updatedAt: string;
  readonly data: T;
}

export type StoredOf<C extends CollectionName> = Stored<DataOf<C>>;

/** Where the records of each collection point to others. */
export const REFERENCE_PLACES: Readonly<Record<CollectionName, readonly ReferencePlace[]>> = byCollection(
  (name) => referencePlaces(COLLECTIONS[name]),
);

/** @returns what a record's data points to */
export const referencesOf = (name: CollectionName, data: object): Reference[] =>
  referencesIn(REFERENCE_PLACES[name], data);
