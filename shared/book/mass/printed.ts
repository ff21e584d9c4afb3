import type { Build } from "../../model/build.ts";
import type { Book } from "../book.ts";
import { ledgerOf } from "./ledger.ts";
import { isPrinted } from "./made.ts";

/** What of a build is printed. */
export interface Printed {
  /** of all lines that are printed [kg] */
  readonly mass: number;
  /** at the printer's rate [s]; null: no rate is stated */
  readonly time: number | null;
}

/** @returns the mass of the printed lines of a build, and how long the printer takes for it */
export function printedOf(book: Book, build: Build): Printed {
  const mass = ledgerOf(book, build)
    .lines.filter(({ of }) => typeof of === "number" && isPrinted(build.ledger[of].made))
    .reduce((sum, line) => sum + line.quantity * line.mass, 0);
  return { mass, time: build.printRate === undefined ? null : mass / build.printRate };
}
