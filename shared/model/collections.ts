/**
 * The one table of collections: the name of each, and the word for one of them. With its schema in schemas.ts a collection is stored,
 * listed, archived, guarded against deletion while it is used, documented and read by the client; what points to what is said by its schema.
 */
export const COLLECTION_WORDS = {
  rotors: "rotor",
  motors: "motor",
  packs: "pack",
  skirts: "skirt",
  surfaces: "surface",
  instruments: "instrument",
  plates: "plate",
  gears: "running gear",
  tests: "test",
  builds: "build",
} as const;

export type CollectionName = keyof typeof COLLECTION_WORDS;
export const COLLECTION_NAMES = Object.keys(COLLECTION_WORDS) as readonly CollectionName[];

/** What a test can name. */
export type NamedCollection = Exclude<CollectionName, "tests">;

/** @returns a table with one entry a collection */
export function byCollection<T>(make: (name: CollectionName) => T): Readonly<Record<CollectionName, T>> {
  const entries = COLLECTION_NAMES.map((name): [CollectionName, T] => [name, make(name)]);
  return Object.fromEntries(entries) as Record<CollectionName, T>;
}
