import { createHash } from "node:crypto";
import type { CollectionName } from "../../shared/model/collections.ts";
import type { Database, Statement } from "./database.ts";

/** How long a key is kept [ms]: a week. */
const KEPT = 7 * 24 * 60 * 60 * 1000;

/** The key came with another request before. */
export class KeyReusedError extends Error {
  readonly code = "key-reused";
  constructor(key: string) {
    super(
      `The Idempotency-Key ${JSON.stringify(key)} came with another request before, to another address or with other data. Choose a new key for each request, and the same only to repeat it.`,
    );
    this.name = "KeyReusedError";
  }
}

/** A write that is sent under a key of its sender's choice. */
export interface Sent {
  readonly key: string;
  readonly collection: CollectionName;
  /** what tells it from any other write to the collection: which record, and what is to become of it */
  readonly what: readonly unknown[];
  readonly at: string;
}

/** The state that a write made, or took away. */
export interface Outcome {
  readonly id: string;
  readonly revision: number;
}

const fingerprintOf = ({ collection, what }: Sent): string =>
  createHash("sha256")
    .update(JSON.stringify([collection, ...what]))
    .digest("hex");

/** Remembers what was written under a key, so that a request that is sent again writes nothing; its caller holds the transaction. */
export class SentBefore {
  readonly #find: Statement;
  readonly #note: Statement;
  readonly #prune: Statement;

  constructor(database: Database) {
    this.#find = database.prepare(
      "SELECT fingerprint, id, revision FROM idempotency_keys WHERE key = ? AND at >= ?",
    );
    this.#note = database.prepare(
      "INSERT INTO idempotency_keys (key, fingerprint, collection, id, revision, at) VALUES (?, ?, ?, ?, ?, ?)",
    );
    this.#prune = database.prepare("DELETE FROM idempotency_keys WHERE at < ?");
  }

  /** @returns what it wrote then; null where the key is new or a week old @throws {KeyReusedError} */
  outcomeOf(sent: Sent): Outcome | null {
    const oldest = new Date(Date.parse(sent.at) - KEPT).toISOString();
    this.#prune.run(oldest);
    const found = this.#find.get(sent.key, oldest) as (Outcome & { fingerprint: string }) | undefined;
    if (!found) return null;
    if (found.fingerprint !== fingerprintOf(sent)) throw new KeyReusedError(sent.key);
    return found;
  }

  note(sent: Sent, { id, revision }: Outcome): void {
    this.#note.run(sent.key, fingerprintOf(sent), sent.collection, id, revision, sent.at);
  }
}
