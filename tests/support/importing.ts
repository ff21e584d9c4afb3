import { type CsvChoices, type CsvTable, tableIn } from "#client/views/bench/import/csv.ts";
import { linesOf } from "#client/views/bench/import/lineReader.ts";
import { type Points, type PointsRequest, pointsOf } from "#client/views/bench/import/points.ts";

/** @returns the table in a text that is whole @throws {CsvError} */
export function readCsv(text: string, choices: CsvChoices = {}): CsvTable {
  return tableIn(linesOf(text, choices.delimiter), choices);
}

/** @returns all points at once */
export function readPoints(request: PointsRequest): Points {
  const reading = pointsOf(request);
  for (;;) {
    const step = reading.next();
    if (step.done) return step.value;
  }
}
