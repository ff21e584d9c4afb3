import type { Book } from "../../../../shared/book/book.ts";
import { evaluatePolynomial } from "../../../../shared/numeric/polynomial.ts";
import { coefficientsOf } from "../../../../shared/physics/fanlaws/coefficients.ts";
import { RPM } from "../../../../shared/physics/motor.ts";
import { type Board, explain, type Working, workedOut } from "../../../../shared/physics/working.ts";
import { NO_BOARD } from "../../../ui/working/board.ts";
import { rotorFitBoard } from "../fitWorkings.ts";
import { plateBoard } from "../plateFigure.tsx";
import type { FamilyReading, RotorFamily } from "./family.ts";

/** What the figures of a reading are called by their workings. */
export const FLOW_TITLE = "flow coefficient of the reading";
export const PRESSURE_TITLE = "pressure coefficient of the reading";
export const OFF_TITLE = "how far the reading is off the curve";
const SOURCE = "fan laws, ISO 5801; docs/method/fan-laws.md";
const STATE = {
  speed: ["ω", "speed", "rad/s"],
  diameter: ["D", "diameter of the rotor", "m"],
} as const;

/** ψ and φ of one reading. */
function coefficientWorkings({ flow, pressure, rpm, diameter, density }: FamilyReading): Working[] {
  const state = { speed: RPM * rpm, diameter };
  const phi = explain(
    {
      title: FLOW_TITLE,
      equation: "φ = Q/((π/4)D²u),  u = ω·D/2",
      inputs: { flow: ["Q", "flow", "m³/s"], ...STATE },
      output: ["φ", ""],
      source: SOURCE,
      evaluate: (put) =>
        coefficientsOf({ flow: put.flow, pressure: 0, shaftPower: null }, { ...put, density }).phi,
    },
    { flow, ...state },
  );
  const psi = explain(
    {
      title: PRESSURE_TITLE,
      equation: "ψ = 2Δp/(ρu²),  u = ω·D/2",
      inputs: { pressure: ["Δp", "suction", "Pa", "pressure"], density: ["ρ", "air", "kg/m³"], ...STATE },
      output: ["ψ", ""],
      source: SOURCE,
      evaluate: (put) =>
        Math.sign(put.pressure) *
        coefficientsOf({ flow: 0, pressure: Math.abs(put.pressure), shaftPower: null }, put).psi,
    },
    { pressure, density, ...state },
  );
  return [phi, psi];
}

/** Off by how much of the pressure with no flow. */
function offWorking({ fit }: RotorFamily, { phi, psi, residual }: FamilyReading): Working[] {
  if (!fit || residual === null) return [];
  const told = {
    title: OFF_TITLE,
    equation: "r = (ψ − ψ(φ))/a₀",
    output: ["r", ""] as const,
    source: "docs/method/fits/rotor.md",
  };
  return [
    workedOut(
      told,
      [
        [["ψ", "pressure coefficient of the reading", ""], psi],
        [["φ", "flow coefficient of the reading", ""], phi],
        [["ψ(φ)", "on the curve at that φ", ""], evaluatePolynomial(fit.psi, phi)],
        [["a₀", "ψ with no flow", ""], fit.psi[0]],
      ],
      residual,
    ),
  ];
}

/** @returns how the figures of one reading came about, down to what was read in its row */
export function readingBoard(book: Book, family: RotorFamily, reading: FamilyReading): Board {
  const test = family.tests[reading.test];
  const plate = plateBoard(book, test, reading.row) ?? NO_BOARD;
  const fit = rotorFitBoard(family);
  const { flow, pressure, density, diameter, rpm, row } = reading;
  const tests = [test.id];
  const read = `Read in row ${row + 1} of this test.`;
  return {
    workings: [
      ...coefficientWorkings(reading),
      ...offWorking(family, reading),
      ...plate.workings,
      ...fit.workings,
    ],
    origins: [
      { symbol: "Q", value: flow, what: read, tests },
      { symbol: "Δp", value: pressure, what: read, tests },
      { symbol: "ω", value: RPM * rpm, what: read, tests },
      { symbol: "D", value: diameter, what: "The size that this test ran.", tests },
      { symbol: "ρ", value: density, what: "Air of the row, else of the day that the test notes.", tests },
      ...plate.origins,
      ...fit.origins,
    ],
  };
}
