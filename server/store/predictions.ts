import type { Foretold, KeptPrediction } from "../../shared/model/api/record.ts";
import type { Database, Statement } from "./database.ts";

interface Kept {
  readonly test: string;
  readonly at: string;
  readonly body: string;
}

const SELECT = "SELECT test, at, body FROM predictions";

const predictionOf = ({ test, at, body }: Kept): KeptPrediction => ({
  test,
  at,
  rows: JSON.parse(body) as Foretold[],
});

/** Every prediction that is kept, by the test's identifier, one at a time. */
export function* eachPrediction(database: Database): Generator<KeptPrediction> {
  for (const kept of database.prepare(`${SELECT} ORDER BY test`).iterate()) yield predictionOf(kept as Kept);
}

/** @returns every prediction that is kept, by the test's identifier */
export const allPredictions = (database: Database): KeptPrediction[] => [...eachPrediction(database)];

/** Keeps what was predicted for each test before it counted; its callers hold the transaction. */
export class Predictions {
  readonly #find: Statement;
  readonly #keep: Statement;

  constructor(database: Database) {
    this.#find = database.prepare(`${SELECT} WHERE test = ?`);
    this.#keep = database.prepare(
      "INSERT INTO predictions (test, at, body) VALUES (?, ?, ?) ON CONFLICT (test) DO UPDATE SET at = excluded.at, body = excluded.body",
    );
  }

  /** @returns what is kept with a test; null where nothing is */
  of(test: string): KeptPrediction | null {
    const kept = this.#find.get(test) as Kept | undefined;
    return kept ? predictionOf(kept) : null;
  }

  /** Keeps the rows of a test in the place of those before. */
  keep({ test, at, rows }: KeptPrediction): void {
    this.#keep.run(test, at, JSON.stringify(rows));
  }
}
