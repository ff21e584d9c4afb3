import { uncertaintyOf } from "../../decide/uncertainty.ts";
import type { Foretold } from "../../model/api/record.ts";
import type { RunLogTest } from "../../model/tests/runLog.ts";
import type { Book } from "../book.ts";
import { buildUncertainty } from "../buildUncertainty.ts";
import { type RunCase, runCases } from "../runLog.ts";
import { withoutPack } from "./withoutPack.ts";

type Row = Omit<Foretold, "basis">;

const SAMPLES = 512;

function rowOf(book: Book, { row, build, resolved, input, from }: RunCase): Row {
  const { sources: _said, ...all } = buildUncertainty(book, build, resolved);
  const asked = from === "voltage" ? withoutPack(all) : all;
  const [{ parked, driving }] = uncertaintyOf(input, {
    ...asked,
    samples: SAMPLES,
    angles: [row.angle],
  }).attitudes;
  const { p5, p50, p95, holds } = row.driving ? driving : parked;
  return { row: row.row, figure: "margin", p5, p50, p95, chance: holds };
}

/**
 * What the book as it is predicts for the attitudes of a drive: the margin, and the chance of holding.
 *
 *     at the voltage or charge that {@link runChecks} takes
 *
 * @param book - the whole bench book
 * @param test - the drive
 * @param wanted - rows in question [-]
 * @returns 5, 50 and 95 % of the margin, chance of holding, row by row [-]; none where the build has no numbers
 * @throws {OutOfRangeError} on a number in the book that can't be
 */
export function foretellRun(book: Book, test: RunLogTest, wanted: ReadonlySet<number>): Row[] {
  const cases = runCases(book, test).cases ?? [];
  return cases
    .filter(({ row }) => wanted.has(row.row) && row.setAside === null)
    .map((each) => rowOf(book, each));
}
