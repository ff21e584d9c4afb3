import { fitMotor, type MotorFit } from "../fit/motorFit.ts";
import { NotEnoughDataError } from "../numeric/errors.ts";
import { frictionFromNoLoad, type MotorConstants } from "../physics/motor.ts";
import type { Note } from "../physics/note.ts";
import { toSI } from "../units/quantity.ts";
import { type Book, findById, oncePerBook, testsOf } from "./book.ts";
import { type MotorThermal, motorThermal } from "./motorThermal.ts";
import { inUse, type MotorReading, motorRows, type Reading } from "./readings.ts";

export interface MotorBasis {
  readonly basis: "measured" | "stated";
  readonly constants: MotorConstants;
  readonly fit: MotorFit | null;
  /** how the winding sheds its heat: as stated, or estimated from the can's size */
  readonly thermal: MotorThermal;
  readonly rows: readonly (Reading<MotorReading> & { readonly testId: string })[];
  readonly testIds: readonly string[];
  /** why tests are logged and the maker's figures used all the same */
  readonly notes: readonly Note[];
}

function stated(motor: {
  kv: number;
  resistance: number;
  noLoadCurrent: number;
  viscousTorque: number;
}): MotorConstants {
  const { kv, resistance, viscousTorque, noLoadCurrent } = motor;
  return { kv, resistance, viscousTorque, frictionTorque: frictionFromNoLoad(kv, noLoadCurrent) };
}

function ohmmeterReading(book: Book, motorId: string): number | undefined {
  const read = testsOf(book, "motor")
    .filter((test) => test.data.motor === motorId)
    .flatMap((test) => (test.data.resistance ? [toSI(test.data.resistance, "resistance")] : []));
  return read.length === 0 ? undefined : read.reduce((sum, ohms) => sum + ohms, 0) / read.length;
}

function answerFor(book: Book, motorId: string): MotorBasis | null {
  const motor = findById(book.motors, motorId);
  if (!motor) return null;
  const tests = testsOf(book, "motor").filter((test) => test.data.motor === motorId);
  const rows = tests.flatMap((test) => motorRows(test.data).map((row) => ({ ...row, testId: test.id })));
  const testIds = tests.map((test) => test.id);
  const thermal = motorThermal(motor.data);
  const maker = {
    basis: "stated",
    constants: stated(motor.data),
    fit: null,
    thermal,
    rows,
    testIds,
  } as const;
  const full = inUse(rows).filter((row) => row.throttle === 1);
  if (full.length === 0) return { ...maker, notes: [] };
  try {
    const fit = fitMotor({ rows: full, resistance: ohmmeterReading(book, motorId) });
    const hasNoLoad = full.some((row) => row.noLoad);
    const friction = hasNoLoad ? fit.frictionTorque : maker.constants.frictionTorque;
    const constants = {
      kv: fit.kv,
      resistance: fit.resistance,
      frictionTorque: friction,
      viscousTorque: hasNoLoad ? fit.viscousTorque : maker.constants.viscousTorque,
    };
    return { basis: "measured", constants, fit, thermal, rows, testIds, notes: fit.warnings };
  } catch (error) {
    if (!(error instanceof NotEnoughDataError)) throw error;
    const message = `The motor tests don't settle the constants, the maker's figures are used: ${error.message}`;
    return { ...maker, notes: [{ code: "motor-not-identified", message }] };
  }
}

/** @returns the motor's constants from its tests, else as its maker states them; null where the book has no such motor */
export function motorBasis(book: Book, motorId: string): MotorBasis | null {
  return oncePerBook(book, `motor ${motorId}`, () => answerFor(book, motorId));
}
