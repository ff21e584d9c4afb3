import { shownUnits } from "../../shared/model/shownUnits.ts";
import type { ShownUnits } from "../../shared/units/showing.ts";
import type { Database } from "./database.ts";

/** @returns the units that the book in a file shows; metric ones where none were chosen, or a later program chose others */
export function unitsIn(database: Database): ShownUnits {
  const text = database.prepare<[], string>("SELECT value FROM meta WHERE key = 'units'").pluck().get();
  const read = shownUnits.safeParse(text === undefined ? {} : JSON.parse(text));
  return read.success ? read.data : {};
}

/** Keeps the units that the book shows; the caller holds the transaction. */
export function keepUnits(database: Database, units: ShownUnits): void {
  database
    .prepare(
      "INSERT INTO meta (key, value) VALUES ('units', ?) ON CONFLICT (key) DO UPDATE SET value = excluded.value",
    )
    .run(JSON.stringify(units));
}
