import { createHash } from "node:crypto";
import type { CollectionName } from "../../shared/model/collections.ts";
import type { Database, Statement } from "./database.ts";
import type { Data } from "./rows.ts";

/** How long a key is kept [ms]: a week. */
const KEPT = 7 * 24 * 60 * 60 * 1000;

/** The key came with other data before: it names another request. */
export class KeyReusedError extends Error {
  readonly code = "key-reused";
  constructor(key: string) {
    super(
      `The Idempotency-Key ${JSON.stringify(key)} came with other data before. Choose a new key for each request, and the same only to repeat it.`,
    );
    this.name = "KeyReusedError";
  }
}

/** What is sent under a key of its sender's choice. */
export interface Sent {
  readonly key: string;
  readonly collection: CollectionName;
  readonly data: Data;
  readonly at: string;
}

/** @returns what tells one request's content from another's */
const fingerprintOf = ({ collection, data }: Sent): string =>
  createHash("sha256")
    .update(JSON.stringify([collection, data]))
    .digest("hex");

/** Remembers what was added under a key, so that a request that is sent again adds nothing; its caller holds the transaction. */
export class SentBefore {
  readonly #find: Statement;
  readonly #note: Statement;
  readonly #prune: Statement;

  constructor(database: Database) {
    this.#find = database.prepare("SELECT fingerprint, id FROM idempotency_keys WHERE key = ? AND at >= ?");
    this.#note = database.prepare(
      "INSERT INTO idempotency_keys (key, fingerprint, collection, id, at) VALUES (?, ?, ?, ?, ?)",
    );
    this.#prune = database.prepare("DELETE FROM idempotency_keys WHERE at < ?");
  }

  /** @returns the id that was given then; null where the key is new or a week old @throws {KeyReusedError} */
  idOf(sent: Sent): string | null {
    const oldest = new Date(Date.parse(sent.at) - KEPT).toISOString();
    this.#prune.run(oldest);
    const found = this.#find.get(sent.key, oldest) as { fingerprint: string; id: string } | undefined;
    if (!found) return null;
    if (found.fingerprint !== fingerprintOf(sent)) throw new KeyReusedError(sent.key);
    return found.id;
  }

  note(sent: Sent, id: string): void {
    this.#note.run(sent.key, fingerprintOf(sent), sent.collection, id, sent.at);
  }
}
