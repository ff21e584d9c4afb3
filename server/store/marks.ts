import type { Database, Statement } from "./database.ts";

/** What a book says of itself as a whole: one word under each key. */
export class Marks {
  readonly #find: Statement;
  readonly #set: Statement;

  constructor(database: Database) {
    this.#find = database.prepare("SELECT value FROM meta WHERE key = ?").pluck();
    this.#set = database.prepare(
      "INSERT INTO meta (key, value) VALUES (?, ?) ON CONFLICT (key) DO UPDATE SET value = excluded.value",
    );
  }

  of(key: string): string | undefined {
    return this.#find.get(key) as string | undefined;
  }

  /** The caller holds the transaction. */
  set(key: string, value: string): void {
    this.#set.run(key, value);
  }
}
