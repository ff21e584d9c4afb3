import { FORETOLD_KINDS } from "../../shared/model/api/record.ts";
import type { CollectionName } from "../../shared/model/collections.ts";
import type { Stored } from "../../shared/model/record.ts";
import type { Database, Statement } from "./database.ts";
import type { Data } from "./rows.ts";

/** A prediction that is owed to a test, by the book at the moment of its writing. */
export interface Debt {
  readonly seq: number;
  readonly test: string;
  /** of the test as it was written then */
  readonly revision: number;
  readonly at: string;
  /** lines of undo after this one came later */
  readonly since: number;
}

const isForetold = (name: CollectionName, { kind }: Data): boolean =>
  name === "tests" && FORETOLD_KINDS.some((each) => each === kind);

/** @returns tests that a prediction is owed to */
export const allOwed = (database: Database): string[] =>
  database.prepare<[], string>("SELECT DISTINCT test FROM owed").pluck().all();

/** Predictions that are owed; its callers hold the transaction. */
export class Owed {
  readonly #note: Statement;
  readonly #first: Statement;
  readonly #last: Statement;
  readonly #forget: Statement;
  readonly #prune: Statement;

  constructor(database: Database) {
    this.#note = database.prepare(
      "INSERT INTO owed (test, revision, at, since) VALUES (?, ?, ?, (SELECT coalesce(max(seq), 0) FROM undo))",
    );
    this.#first = database.prepare("SELECT seq, test, revision, at, since FROM owed ORDER BY seq LIMIT 1");
    this.#last = database.prepare("SELECT max(seq) FROM owed").pluck();
    this.#forget = database.prepare("DELETE FROM owed WHERE seq = ?");
    this.#prune = database.prepare(
      "DELETE FROM undo WHERE seq <= (SELECT coalesce(min(since), 9e15) FROM owed)",
    );
  }

  /** Notes that a prediction is owed to a record that was just written, where one is made of its kind. */
  note(name: CollectionName, { id, revision, updatedAt, data }: Stored<Data>): void {
    if (isForetold(name, data)) this.#note.run(id, revision, updatedAt);
  }

  /** @returns what is owed longest; null where nothing is */
  first(): Debt | null {
    return (this.#first.get() as Debt | undefined) ?? null;
  }

  /** @returns the place of what is owed last; null where nothing is */
  last(): number | null {
    return this.#last.get() as number | null;
  }

  /** @returns whether it was still owed: the book may have been emptied, or another server have been faster */
  settle({ seq }: Debt): boolean {
    const wasOwed = this.#forget.run(seq).changes > 0;
    this.#prune.run();
    return wasOwed;
  }
}
