import { z } from "zod";
import { archive, noted, stored } from "../../shared/model/api/book.ts";
import type { FieldError } from "../../shared/model/api/errors.ts";
import { explain } from "../../shared/model/api/explain.ts";
import { type KeptPrediction, keptPrediction } from "../../shared/model/api/record.ts";
import { COLLECTION_NAMES, type CollectionName } from "../../shared/model/collections.ts";
import type { Stored } from "../../shared/model/record.ts";
import { COLLECTIONS } from "../../shared/model/schemas.ts";
import { parsed, refuseFields } from "../routes/route.ts";
import { ArchiveScan } from "../store/archiveScan.ts";
import type { Data } from "../store/rows.ts";
import { type Noted, type Part, Staged } from "../store/staged.ts";

/** A whole book that was read and checked, ready to take the place of another. */
export interface CheckedBook {
  /** its reader closes it */
  readonly book: Staged;
  readonly demo: boolean;
}

/** What an entry of each long list of an archive must be. */
const ENTRIES: ReadonlyMap<string, z.ZodType> = new Map([
  ...["records", "revisions"].flatMap((part) =>
    COLLECTION_NAMES.map((name): [string, z.ZodType] => [
      `${part}.${name}`,
      stored(COLLECTIONS[name] as z.ZodType),
    ]),
  ),
  ["deletions", noted],
  ["predictions", keptPrediction],
]);

/** Fields that an answer names; behind them no more is read. */
const MOST_FIELDS = 100;

/** Takes what the schemas let through, and gathers what they refuse. */
class Entrance {
  readonly #counts = new Map<string, number>();
  readonly #fields: FieldError[] = [];
  #refused = 0;

  constructor(private readonly staged: Staged) {}

  take(list: string, entry: unknown): void {
    const place = this.#counts.get(list) ?? 0;
    this.#counts.set(list, place + 1);
    const schema = ENTRIES.get(list) ?? z.never();
    const read = schema.safeParse(entry);
    if (read.success) {
      if (this.#refused === 0) this.#put(list, place, read.data);
      return;
    }
    const { fields, count } = explain(schema, read.error, entry);
    this.#refused += count;
    for (const { path, message } of fields.slice(0, MOST_FIELDS - this.#fields.length))
      this.#fields.push({ path: [list, place, path].filter((each) => each !== "").join("."), message });
    if (this.#fields.length === MOST_FIELDS) this.close();
  }

  #put(list: string, place: number, entry: unknown): void {
    const [part, name] = list.split(".") as [Part, CollectionName];
    if (list === "deletions") this.staged.putOther(list, entry as Noted);
    else if (list === "predictions") this.staged.putOther(list, entry as KeptPrediction);
    else this.staged.putState(part, name, place, entry as Stored<Data>);
  }

  /** @throws {Refusal} 400 where a schema refused an entry */
  close(): void {
    if (this.#refused > 0) refuseFields({ fields: this.#fields, count: this.#refused });
  }
}

/**
 * Reads an archive piece by piece, entry by entry through the schemas.
 *
 * @param check - looks through the whole of it, and refuses
 * @throws {Refusal} on a document that is no archive, or one that the check refuses
 */
export function archiveBook(pieces: Iterable<Uint8Array>, check: (book: Staged) => void): CheckedBook {
  const staged = new Staged();
  try {
    const entrance = new Entrance(staged);
    const scan = new ArchiveScan({
      isList: (path) => ENTRIES.has(path),
      take: (list, entry) => entrance.take(list, entry),
    });
    for (const piece of pieces) scan.push(piece);
    const { demo, units } = parsed(archive, scan.end());
    entrance.close();
    check(staged);
    staged.units = units;
    return { book: staged, demo };
  } catch (error) {
    staged.close();
    throw error;
  }
}
