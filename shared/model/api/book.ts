import { z } from "zod";
import { COLLECTION_NAMES, COLLECTIONS, type CollectionName, envelope } from "../record.ts";

const collectionName = z.enum(COLLECTION_NAMES);

/** A record with what the book keeps around it. */
export const stored = <S extends z.ZodType>(data: S) => z.strictObject({ ...envelope, data });

/** One page of a list; `next` is the cursor of the following page, null on the last one. */
export const page = <S extends z.ZodType>(data: S) =>
  z.strictObject({ items: z.array(stored(data)), next: z.string().nullable() });

/**
 * What the event stream says after a write; collection, id and revision are null where the whole book changed, or where
 * another server that shares the data file wrote something: read anew.
 */
export const changeEvent = z.strictObject({
  collection: collectionName.nullable(),
  id: z.string().nullable(),
  revision: z.int().nullable(),
  change: z.enum(["created", "replaced", "deleted", "emptied", "loaded", "elsewhere"]),
});

const eachCollection = <S extends z.ZodType>(shape: (name: CollectionName) => S) =>
  z.strictObject(
    Object.fromEntries(COLLECTION_NAMES.map((name) => [name, shape(name)])) as Record<CollectionName, S>,
  );

/** State of the bench book as a whole. */
export const bookState = z.strictObject({
  demo: z.boolean().describe("the book holds the invented demo"),
  counts: eachCollection(() => z.int().min(0)),
  backup: z.string().nullable().describe("name of the copy kept beside the data file before it was emptied"),
});

const revisionsOf = <C extends CollectionName>(name: C) => z.array(stored(COLLECTIONS[name]));

const byCollection = z.strictObject({
  rotors: revisionsOf("rotors"),
  motors: revisionsOf("motors"),
  packs: revisionsOf("packs"),
  skirts: revisionsOf("skirts"),
  surfaces: revisionsOf("surfaces"),
  tests: revisionsOf("tests"),
  builds: revisionsOf("builds"),
});

/** The whole bench book in one document: records as they are, and what they said before. */
export const archive = z.strictObject({
  format: z.literal("gripcurve-bench"),
  version: z.literal(1),
  exportedAt: z.iso.datetime(),
  demo: z.boolean(),
  records: byCollection,
  revisions: byCollection,
});

export type ChangeEvent = z.output<typeof changeEvent>;
export type BookState = z.output<typeof bookState>;
export type Archive = z.output<typeof archive>;
