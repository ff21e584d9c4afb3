import type { ChangeEvent } from "../../shared/model/api/book.ts";
import type { CollectionName } from "../../shared/model/collections.ts";
import type { Stored } from "../../shared/model/record.ts";
import type { Agreement } from "./agreement.ts";
import type { ChangeFeed } from "./changes.ts";
import type { Database, Statement } from "./database.ts";
import type { Deletions } from "./deletions.ts";
import { InUseError, NotDeletedError, UnknownRecordError } from "./errors.ts";
import { newId } from "./ids.ts";
import { Listing, type ListQuery, type Page } from "./listing.ts";
import type { Owed } from "./owed.ts";
import {
  type Data,
  LOOKUP,
  lookupValues,
  nameOf,
  type Row,
  recordBytes,
  rowColumns,
  storedOf,
} from "./rows.ts";
import type { Outcome, SentBefore } from "./sentBefore.ts";
import type { Uses } from "./uses.ts";

/** Decides, inside the write's transaction, whether the writer knew the record's present revision; throws where not. */
export type Precondition = (revision: number) => void;

const always: Precondition = () => {};

/** How a write is sent. */
export interface Sending {
  /** of the sender's choice: what was written under it before is given back as it was, and nothing is written */
  readonly key?: string | null;
}

/** The state that a write made, or took away. */
export interface Written {
  readonly record: Stored<Data>;
  /** it was written before, under the same key */
  readonly isRepeated: boolean;
}

/** A record as it travels. */
interface RecordJson {
  readonly revision: number;
  readonly json: Uint8Array;
}

/** What all collections of a book have in common. */
export interface AroundRecords {
  readonly uses: Uses;
  readonly agreement: Agreement;
  readonly sentBefore: SentBefore;
  readonly deletions: Deletions;
  readonly owed: Owed;
  readonly feed: ChangeFeed;
}

/** One collection of the book: every write is one transaction, and keeps what the record said before. */
export class Collection {
  readonly #listing: Listing;
  readonly #select: Statement;
  readonly #read: Statement;
  readonly #states: Statement;
  readonly #insert: Statement;
  readonly #update: Statement;
  readonly #delete: Statement;
  readonly #keep: Statement;
  readonly #earlier: Statement;
  readonly #state: Statement;

  constructor(
    readonly name: CollectionName,
    private readonly database: Database,
    private readonly around: AroundRecords,
  ) {
    const itself = `collection = '${name}' AND id = ?`;
    this.#listing = new Listing(database, name);
    this.#select = database.prepare(`SELECT ${rowColumns()} FROM records WHERE ${itself}`);
    this.#read = database.prepare(`SELECT revision, ${recordBytes()} AS json FROM records WHERE ${itself}`);
    this.#states = database
      .prepare(
        `SELECT * FROM (SELECT ${recordBytes("", "at")} FROM revisions WHERE ${itself} ORDER BY revision)
         UNION ALL SELECT ${recordBytes()} FROM records WHERE ${itself}`,
      )
      .pluck();
    this.#insert = database.prepare(
      `INSERT INTO records (collection, ${rowColumns()}, ${LOOKUP.join(", ")}) VALUES ('${name}', ?, ?, ?, ?, ?, ?, ?, ?, ?)`,
    );
    this.#update = database.prepare(
      `UPDATE records SET revision = ?, updated_at = ?, body = ?, ${LOOKUP.join(" = ?, ")} = ? WHERE ${itself}`,
    );
    this.#delete = database.prepare(`DELETE FROM records WHERE ${itself}`);
    this.#keep = database.prepare(
      `INSERT INTO revisions (collection, id, revision, body, created_at, at) VALUES ('${name}', ?, ?, ?, ?, ?)`,
    );
    this.#earlier = database.prepare(
      `SELECT id, revision, created_at, at AS updated_at, body FROM revisions WHERE ${itself} ORDER BY revision`,
    );
    this.#state = database.prepare(
      `SELECT id, revision, created_at, at AS updated_at, body FROM revisions WHERE ${itself} AND revision = ?`,
    );
  }

  list(query: ListQuery): Page {
    return this.#listing.page(query);
  }

  /** @throws {UnknownRecordError} */
  get(id: string): Stored<Data> {
    return storedOf(this.#row(id));
  }

  /** @returns a record as JSON, and its revision @throws {UnknownRecordError} */
  read(id: string): RecordJson {
    const read = this.#read.get(id) as RecordJson | undefined;
    if (!read) throw new UnknownRecordError(this.name, id);
    return read;
  }

  /**
   * What the record said, each state as JSON, from the first to the present one; a deleted record still has its past.
   * @throws {UnknownRecordError} on an id that never was
   */
  revisions(id: string): Uint8Array[] {
    const states = this.#states.all(id, id) as Uint8Array[];
    if (states.length === 0) throw new UnknownRecordError(this.name, id);
    return states;
  }

  /**
   * @throws {UnknownPartError} where the data points to a part that the book doesn't have
   * @throws {ContradictionError} where it contradicts that part
   * @throws {KeyReusedError} where another request came under the key
   */
  create(data: Data, at: string, sending: Sending = {}): Written {
    return this.#once("created", at, sending, [data], () => {
      this.#requireSound(data, null);
      const made = this.#put({ id: this.#freeId(data), revision: 1, createdAt: at, updatedAt: at, data });
      this.around.owed.note(this.name, made);
      return made;
    });
  }

  /** @throws {UnknownRecordError} {UnknownPartError} {ContradictionError} {KeyReusedError} and whatever the precondition throws */
  replace(id: string, data: Data, at: string, precondition: Precondition, sending: Sending = {}): Written {
    return this.#once("replaced", at, sending, [id, data], () => {
      const before = this.#row(id);
      precondition(before.revision);
      this.#requireSound(data, id);
      this.#keepRow(before);
      const after = { id, revision: before.revision + 1, createdAt: before.created_at, updatedAt: at, data };
      this.#update.run(after.revision, at, JSON.stringify(data), ...lookupValues(data), id);
      this.around.uses.note(this.name, after);
      this.around.owed.note(this.name, after);
      return after;
    });
  }

  /** @throws {UnknownRecordError} {InUseError} {KeyReusedError} and whatever the precondition throws */
  remove(id: string, at: string, precondition: Precondition = always, sending: Sending = {}): Written {
    return this.#once("deleted", at, sending, [id, "deleted"], () => {
      const before = this.#row(id);
      precondition(before.revision);
      const users = this.around.uses.usersOf(this.name, id);
      if (users.length > 0) throw new InUseError(id, users);
      this.#keepRow(before);
      this.#delete.run(id);
      this.around.deletions.note(this.name, before, at);
      return storedOf(before);
    });
  }

  /**
   * Brings a deleted record back as it was, as its next revision.
   * @throws {UnknownRecordError} on an id that never was {NotDeletedError} on one that is there
   * @throws {UnknownPartError} {ContradictionError} where what it points to was deleted or changed since
   * @throws {KeyReusedError} where another request came under the key
   */
  restore(id: string, at: string, sending: Sending = {}): Written {
    return this.#once("restored", at, sending, [id, "restored"], () => {
      if (this.#select.get(id)) throw new NotDeletedError(this.name, id);
      const last = (this.#earlier.all(id) as Row[]).at(-1);
      if (!last) throw new UnknownRecordError(this.name, id);
      const { createdAt, revision, data } = storedOf(last);
      this.#requireSound(data, null);
      this.around.deletions.forget(this.name, id);
      return this.#put({ id, revision: revision + 1, createdAt, updatedAt: at, data });
    });
  }

  /** Writes in one transaction, unless it was written before under the same key, and tells of it. */
  #once(
    change: ChangeEvent["change"],
    at: string,
    { key = null }: Sending,
    what: readonly unknown[],
    write: () => Stored<Data>,
  ): Written {
    const sent = key === null ? null : { key, collection: this.name, what, at };
    const written = this.#transaction(() => {
      const known = sent && this.around.sentBefore.outcomeOf(sent);
      if (known) return { record: this.#stateThen(known), isRepeated: true };
      const record = write();
      if (sent) this.around.sentBefore.note(sent, record);
      return { record, isRepeated: false };
    });
    const { id, revision } = written.record;
    if (!written.isRepeated) this.around.feed.publish({ collection: this.name, id, revision, change });
    return written;
  }

  #stateThen({ id, revision }: Outcome): Stored<Data> {
    return storedOf((this.#state.get(id, revision) as Row | undefined) ?? this.#row(id));
  }

  /** Puts a record in as it stands; the caller holds the transaction. */
  #put(record: Stored<Data>): Stored<Data> {
    const { id, revision, createdAt, updatedAt, data } = record;
    const body = JSON.stringify(data);
    this.#insert.run(id, revision, createdAt, updatedAt, body, ...lookupValues(data));
    this.around.uses.note(this.name, record);
    return record;
  }

  #requireSound(data: Data, id: string | null): void {
    this.around.uses.requireParts(this.name, data);
    this.around.agreement.require(this.name, data, id);
  }

  #keepRow(row: Row): void {
    this.#keep.run(row.id, row.revision, row.body, row.created_at, row.updated_at);
  }

  #row(id: string): Row {
    const row = this.#select.get(id) as Row | undefined;
    if (!row) throw new UnknownRecordError(this.name, id);
    return row;
  }

  /** An id is never given twice, not even after its record was deleted. */
  #freeId(data: Data): string {
    const wish = nameOf(data) || [data.kind, data.date].filter(Boolean).join(" ");
    for (;;) {
      const id = newId(wish);
      if (!this.#select.get(id) && this.#earlier.all(id).length === 0) return id;
    }
  }

  #transaction<T>(write: () => T): T {
    return this.database.transaction(write).immediate();
  }
}
