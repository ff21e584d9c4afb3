import type { Book } from "../../../../shared/book/book.ts";
import { formatFixed } from "../../../../shared/units/format.ts";
import { FigureOf } from "../../../ui/working/FigureOf.tsx";
import { percent } from "../curveWords.ts";
import type { Fact } from "../Page.tsx";
import type { RotorFamily } from "./family.ts";
import { FLOW_TITLE, OFF_TITLE, PRESSURE_TITLE, readingBoard } from "./readingWorkings.ts";

/** @returns what a reading comes to, each figure with its working: its coefficients, how far off the curve it lies */
export function readingFacts(book: Book, family: RotorFamily, key: string | null): Fact[] {
  const reading = family.readings.find((each) => each.key === key);
  if (!reading) return [];
  const figure = (title: string, value: number, text: string) => (
    <FigureOf board={() => readingBoard(book, family, reading)} title={title} value={value}>
      {text}
    </FigureOf>
  );
  const { phi, psi, residual } = reading;
  return [
    { label: "φ", text: figure(FLOW_TITLE, phi, formatFixed(phi, 3)) },
    { label: "ψ", text: figure(PRESSURE_TITLE, psi, formatFixed(psi, 3)) },
    ...(residual === null
      ? []
      : [{ label: "off the curve", text: figure(OFF_TITLE, residual, `${percent(residual)} of blocked`) }]),
  ];
}
