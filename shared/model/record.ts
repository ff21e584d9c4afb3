import { z } from "zod";
import { build } from "./build.ts";
import { motor } from "./parts/motor.ts";
import { pack } from "./parts/pack.ts";
import { rotor } from "./parts/rotor.ts";
import { skirt } from "./parts/skirt.ts";
import { surface } from "./parts/surface.ts";
import { identifier } from "./scalar.ts";
import { benchTest } from "./tests/index.ts";

/** Every collection of the bench book and the schema of what it keeps. The API, the store and the client read this table. */
export const COLLECTIONS = {
  rotors: rotor,
  motors: motor,
  packs: pack,
  skirts: skirt,
  surfaces: surface,
  tests: benchTest,
  builds: build,
} as const;

export type CollectionName = keyof typeof COLLECTIONS;
export const COLLECTION_NAMES = Object.keys(COLLECTIONS) as readonly CollectionName[];

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

type PartCollection = Exclude<CollectionName, "tests" | "builds">;

/** Which keys of a build or a test point to which collection. */
export const REFERENCE_KEYS: Readonly<Record<string, PartCollection>> = {
  rotor: "rotors",
  motor: "motors",
  pack: "packs",
  skirt: "skirts",
  surface: "surfaces",
};

export interface Reference {
  readonly key: string;
  readonly collection: PartCollection;
  readonly id: string;
}

/** @returns the parts that a build's or a test's data point to, in the table's order */
export function referencesOf(data: object): Reference[] {
  return Object.entries(REFERENCE_KEYS).flatMap(([key, collection]) => {
    const id = (data as Record<string, unknown>)[key];
    return typeof id === "string" ? [{ key, collection, id }] : [];
  });
}
