import { z } from "zod";
import { byCollection, COLLECTION_NAMES, type CollectionName } from "../collections.ts";
import { envelope } from "../record.ts";
import { identifier } from "../scalar.ts";
import { COLLECTIONS } from "../schemas.ts";
import { shownUnits } from "../shownUnits.ts";
import { keptPrediction } from "./record.ts";

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
  change: z.enum(["created", "replaced", "deleted", "restored", "emptied", "loaded", "units", "elsewhere"]),
});

const eachCollection = <S extends z.ZodType>(shape: (name: CollectionName) => S) =>
  z.strictObject(byCollection(shape));

/** What a list says of something that was deleted. */
export const deletion = z.strictObject({
  collection: collectionName,
  id: identifier(),
  revision: z.int().describe("the last that it had"),
  name: z.string().describe("its name or title"),
  kind: z.string().nullable(),
  date: z.string().nullable().describe("its day, where it has one"),
  deletedAt: z.iso.datetime(),
});

/** One page of what was deleted. */
export const deletionPage = z.strictObject({ items: z.array(deletion), next: z.string().nullable() });

/** State of the bench book as a whole. */
export const bookState = z.strictObject({
  demo: z.boolean().describe("the book holds the invented demo"),
  counts: eachCollection(() => z.int().min(0)),
  units: shownUnits.describe("in which the pages show each quantity, and mean a bare number"),
  backup: z.string().nullable().describe("name of the copy kept beside the data file before it was emptied"),
  written: z
    .string()
    .describe("another text after each write to the book, and after each start of the server"),
});

/** A copy of the data file that lies beside it. */
export const backup = z.strictObject({
  name: z.string().describe("of its file, without the folder"),
  at: z.iso.datetime(),
  bytes: z.int().min(0),
  reason: z.string().describe('what it was kept before, "before-empty"; empty where its name doesn\'t say'),
});

export const backupList = z.strictObject({ items: z.array(backup) });

/** What a copy holds, once it was checked. */
export const backupContents = z.strictObject({
  name: z.string(),
  demo: z.boolean(),
  counts: eachCollection(() => z.int().min(0)),
});

/** Version of the archives that are written; those of every earlier one are read as well. */
export const ARCHIVE_VERSION = 5;

const archiveVersion = z
  .int()
  .min(1)
  .refine((version) => version <= ARCHIVE_VERSION, {
    error: ({ input }) =>
      `Read ${input}: the archive comes from a later version of Gripcurve; allowed: 1 to ${ARCHIVE_VERSION}. Take it in with that version.`,
  })
  .describe(`${ARCHIVE_VERSION}; earlier ones are read`);

/** A collection that came later is not in an earlier archive. */
const states = eachCollection((name) => z.array(stored(COLLECTIONS[name] as z.ZodType)).default([]));

/** When a record was deleted, as an archive says it. */
export const noted = deletion.pick({ collection: true, id: true, deletedAt: true });

/** The whole bench book in one document: records as they are, and what they said before. */
export const archive = z.strictObject({
  format: z.literal("gripcurve-bench"),
  version: archiveVersion,
  exportedAt: z.iso.datetime(),
  demo: z.boolean(),
  records: states,
  revisions: states,
  deletions: z
    .array(noted)
    .default([])
    .describe(
      "when each was deleted that is among the revisions alone; after its last correction unless said",
    ),
  predictions: z
    .array(keptPrediction)
    .default([])
    .describe("what was predicted for tests before they counted; those without are predicted afterwards"),
  units: shownUnits
    .optional()
    .describe("in which the book shows each quantity; where it isn't said, the book's own stay"),
});

export type Deletion = z.output<typeof deletion>;
export type ChangeEvent = z.output<typeof changeEvent>;
export type Backup = z.output<typeof backup>;
export type BackupContents = z.output<typeof backupContents>;
export type BookState = z.output<typeof bookState>;
