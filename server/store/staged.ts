import SQLite from "better-sqlite3";
import type { Deletion } from "../../shared/model/api/book.ts";
import type { KeptPrediction } from "../../shared/model/api/record.ts";
import { byCollection } from "../../shared/model/collections.ts";
import type { Stored } from "../../shared/model/record.ts";
import type { Database, Statement } from "./database.ts";
import type { Data } from "./rows.ts";
import type { WholeBook } from "./wholeBook.ts";

/** So much of it lies in memory, the rest in a file that nobody else sees and that goes with it [kB]. */
const IN_MEMORY = 16_000;

/** The lists of a whole book on their way in, each entry as JSON: read as often as they are asked for, one entry at a time. */
export class Staged {
  readonly #database: Database;
  readonly #put: Statement;
  readonly #read: Statement;

  constructor() {
    this.#database = new SQLite("");
    this.#database.exec(
      `PRAGMA journal_mode = OFF; PRAGMA cache_size = -${IN_MEMORY};
       CREATE TABLE entries (list TEXT NOT NULL, body TEXT NOT NULL); CREATE INDEX by_list ON entries (list); BEGIN`,
    );
    this.#put = this.#database.prepare("INSERT INTO entries VALUES (?, ?)");
    this.#read = this.#database.prepare("SELECT body FROM entries WHERE list = ? ORDER BY rowid").pluck();
  }

  put(list: string, entry: unknown): void {
    this.#put.run(list, JSON.stringify(entry));
  }

  get book(): WholeBook {
    return {
      records: byCollection((name) => this.#listed<Stored<Data>>(`records.${name}`)),
      revisions: byCollection((name) => this.#listed<Stored<Data>>(`revisions.${name}`)),
      deletions: this.#listed<Deletion>("deletions"),
      predictions: this.#listed<KeptPrediction>("predictions"),
    };
  }

  close(): void {
    this.#database.close();
  }

  #listed<T>(list: string): Iterable<T> {
    const read = this.#read;
    return {
      *[Symbol.iterator]() {
        for (const body of read.iterate(list) as IterableIterator<string>) yield JSON.parse(body) as T;
      },
    };
  }
}
