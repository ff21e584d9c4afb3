import { shownUnits } from "../../shared/model/shownUnits.ts";
import type { ShownUnits } from "../../shared/units/showing.ts";
import type { Marks } from "./marks.ts";

const KEY = "units";

/** @returns the units that a book shows; metric ones where none were chosen, or a later program chose others */
export function unitsIn(marks: Marks): ShownUnits {
  const text = marks.of(KEY);
  if (text === undefined) return {};
  const read = shownUnits.safeParse(JSON.parse(text));
  return read.success ? read.data : {};
}

/** Keeps the units that the book shows; the caller holds the transaction. */
export const keepUnits = (marks: Marks, units: ShownUnits): void => marks.set(KEY, JSON.stringify(units));
