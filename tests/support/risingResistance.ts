import { CELL_CURVE, PACKS } from "#seed-data/truth.ts";
import type { Book } from "#shared/book/book.ts";
import type { DischargeTest } from "#shared/model/tests/discharge.ts";
import { openCircuitVoltage } from "#shared/physics/pack.ts";

/** Charges that are read, each at rest and under load. */
const READ = 31;
const LOAD = 2;

/** @returns R of a cell of the pack that rises towards empty, to twice and more [Ω] */
export const risingResistance = (charge: number): number =>
  PACKS["one-cell-650"].cellResistance * (1 + 1.2 * Math.exp(-charge / 0.12));

/** The book with the discharge test of its one-cell pack as of a cell whose resistance rises towards empty. */
export function withRisingResistance(book: Book): Book {
  const { capacity } = PACKS["one-cell-650"];
  const rows: DischargeTest["rows"] = Array.from({ length: READ }, (_, i) => 1 - i / (READ - 1)).flatMap(
    (charge, i) =>
      [0, LOAD].map((current, k) => ({
        charge: { value: (1 - charge) * capacity, unit: "mAh" },
        // a millivolt one way and the other, so that the scatter isn't 0
        voltage: {
          value:
            openCircuitVoltage(CELL_CURVE, charge) -
            risingResistance(charge) * current +
            (((7 * i + 3 * k) % 5) - 2) * 5e-4,
          unit: "V",
        },
        current: { value: current, unit: "A" },
      })),
  );
  return {
    ...book,
    tests: book.tests.map((test) =>
      test.data.kind === "discharge" && test.data.pack === "one-cell-650"
        ? { ...test, data: { ...test.data, rows } }
        : test,
    ),
  };
}
