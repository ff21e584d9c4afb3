import { inUnit } from "../../../../shared/units/format.ts";
import { headed } from "../../../../shared/units/showing.ts";
import type { Table } from "../../../ui/table.ts";
import { testName } from "../typed.ts";
import type { CalibrationPage } from "./calibrationData.ts";
import { leakOffText, offText } from "./calibrationSentence.ts";

const grams = (load: number | null) => (load === null ? null : inUnit(load, "load"));
const litres = (flow: number) => inUnit(flow, "flow");

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
      headed("predicted", "load"),
      headed("before the tests", "load"),
      headed("held", "load"),
      headed("let go", "load"),
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
      headed("predicted", "flow"),
      headed("with the gap as set", "flow"),
      headed("measured", "flow"),
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
