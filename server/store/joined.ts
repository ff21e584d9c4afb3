import type { Database, Statement } from "./database.ts";
import { recordJson } from "./rows.ts";

/**
 * Records as one piece of JSON that the database puts together: as values of their own, a page of five hundred takes
 * twice as long to read, and as long again to be let go.
 */
export class Joined {
  readonly #records: Statement;

  constructor(database: Database) {
    // The list of rows is gone through in its own order, and each record is looked up in turn; SQLite leaves open in
    // which order they are joined, so that what it was is asked for as well.
    this.#records = database
      .prepare(
        `SELECT CAST(group_concat(${recordJson("r.")}, ',') AS BLOB), json_group_array(r.rowid)
         FROM json_each(?) AS row CROSS JOIN records AS r ON r.rowid = row.value`,
      )
      .raw();
  }

  /** @returns the records of some rows as JSON, in that order, with commas between them @throws {Error} where one isn't there */
  records(rows: readonly number[]): Uint8Array {
    const asked = JSON.stringify(rows);
    const [json, joined] = this.#records.get(asked) as [Uint8Array | null, string];
    if (joined !== asked) throw new Error(`Rows ${asked} were asked for, ${joined} came.`);
    return json ?? new Uint8Array();
  }
}
