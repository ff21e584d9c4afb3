import { inUnit } from "../../../../shared/units/format.ts";
import type { Table } from "../../../ui/table.ts";
import { testName } from "../typed.ts";
import type { CalibrationPage } from "./calibrationData.ts";
import { leakOffText, offText } from "./calibrationSentence.ts";

const grams = (load: number | null) => (load === null ? null : inUnit(load, "load", "g"));
const litres = (flow: number) => inUnit(flow, "flow", "L/s");

const nameIn = ({ tests }: CalibrationPage, id: string) => {
  const test = tests.find((each) => each.id === id);
  return test ? testName(test) : id;
};

/** @returns every pull with its predictions */
export function pullTable(page: CalibrationPage): Table {
  return {
    columns: [
      "test",
      "row",
      "predicted, g",
      "before the tests, g",
      "held, g",
      "let go, g",
      "against predicted",
    ],
    rows: page.pulls.map((pull) => [
      nameIn(page, pull.testId),
      pull.row + 1,
      grams(pull.predicted),
      grams(pull.before),
      grams(pull.held),
      grams(pull.letGo),
      offText(pull),
    ]),
  };
}

/** @returns every leak reading with its predictions */
export function leakTable(page: CalibrationPage): Table {
  return {
    columns: [
      "test",
      "row",
      "predicted, L/s",
      "with the gap as set, L/s",
      "measured, L/s",
      "against predicted",
    ],
    rows: page.leaks.map((leak) => [
      nameIn(page, leak.testId),
      leak.row + 1,
      litres(leak.predicted),
      litres(leak.before),
      litres(leak.measured),
      leakOffText(leak),
    ]),
  };
}
