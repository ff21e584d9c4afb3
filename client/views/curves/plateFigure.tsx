import type { Book } from "../../../shared/book/book.ts";
import { inlined } from "../../../shared/book/named.ts";
import { rowBleed } from "../../../shared/book/readings/plateFlow.ts";
import { bleedFlow } from "../../../shared/fit/bleed.ts";
import { bleedWorkings, PLATE_FLOW_TITLE, throughTitle } from "../../../shared/fit/bleedWorkings.ts";
import type { StoredOf } from "../../../shared/model/record.ts";
import { answerOrNull } from "../../../shared/numeric/errors.ts";
import type { Board } from "../../../shared/physics/working.ts";
import { formatFixed, formatQuantity } from "../../../shared/units/format.ts";
import { currentBook } from "../../state/book.ts";
import { NO_BOARD } from "../../ui/working/board.ts";
import { FigureOf } from "../../ui/working/FigureOf.tsx";
import type { Fact } from "./Page.tsx";

const COEFFICIENT_DECIMALS = 3;

/** @returns how a plate's flow in one row came about, down to the row's own readings; null where no plate meters it */
export function plateBoard(book: Book, test: StoredOf<"tests">, row: number): Board | null {
  const request = rowBleed(inlined(book, test.data), row);
  const workings = request && answerOrNull(() => bleedWorkings(request));
  if (!request || !workings) return null;
  const tests = [test.id];
  const drilled = "As the plate was drilled, noted with the test.";
  const air = "Of the air that the test notes, the usual air of a room where it notes none.";
  return {
    workings,
    origins: [
      { symbol: "Δp", value: request.pressure, what: `Read in row ${row + 1} of this test.`, tests },
      { symbol: "ρ", value: request.air.density, what: air, tests },
      { symbol: "ν", value: request.air.viscosity / request.air.density, what: air, tests },
      ...request.holes.flatMap(({ count, diameter, thickness, dischargeCoefficient: own }) => [
        { symbol: "N", value: count, what: `Opened in row ${row + 1} of this test.`, tests },
        { symbol: "d", value: diameter, what: drilled, tests },
        { symbol: "t", value: thickness, what: drilled, tests },
        ...(own === undefined
          ? []
          : [{ symbol: "C_d", value: own, what: "Calibrated by its maker.", tests }]),
      ]),
    ],
  };
}

/** @returns flow and discharge coefficient of a row that a bleed plate metered, each with its working; nothing for any other */
export function plateFacts(test: StoredOf<"tests">, row: number): Fact[] {
  const book = currentBook.value;
  const request = book && rowBleed(inlined(book, test.data), row);
  const through = request && answerOrNull(() => bleedFlow(request));
  if (!book || !request || !through) return [];
  const board = () => plateBoard(book, test, row) ?? NO_BOARD;
  const figure = (title: string, value: number, text: string) => (
    <FigureOf board={board} title={title} value={value}>
      {text}
    </FigureOf>
  );
  const { flow, dischargeCoefficient: own } = through;
  const coefficient = formatFixed(own, COEFFICIENT_DECIMALS);
  const isTyped = request.holes.length === 1 && request.holes[0].dischargeCoefficient !== undefined;
  return [
    { label: PLATE_FLOW_TITLE, text: figure(PLATE_FLOW_TITLE, flow, formatQuantity(flow, "flow")) },
    {
      label: "discharge coefficient of the holes",
      text: isTyped ? coefficient : figure(throughTitle(request), own, coefficient),
    },
  ];
}
