import { fitMotor, type MotorFit } from "../fit/motorFit.ts";
import type { ThrottleOffset } from "../fit/throttleOffset.ts";
import type { Motor } from "../model/parts/motor.ts";
import { NotEnoughDataError } from "../numeric/errors.ts";
import { frictionFromNoLoad, type MotorConstants } from "../physics/motor.ts";
import type { Note } from "../physics/note.ts";
import { toSI } from "../units/quantity.ts";
import { type Book, findById, oncePerBook, testsOf } from "./book.ts";
import type { Missing } from "./missing.ts";
import { type MotorThermal, motorThermal } from "./motorThermal.ts";
import { type MotorReading, motorRows } from "./readings/motor.ts";
import { inUse, type Reading } from "./readings/reading.ts";
import { throttleOffset } from "./throttle.ts";

export interface MotorBasis {
  readonly basis: "measured" | "stated";
  readonly constants: MotorConstants;
  /** null where they are stated, or came without their tests, whose rows are none then */
  readonly fit: MotorFit | null;
  /** null where no sweep of the throttle shows one */
  readonly throttle: ThrottleOffset | null;
  /** how the winding sheds its heat: as stated, or estimated from the can's size */
  readonly thermal: MotorThermal;
  readonly rows: readonly (Reading<MotorReading> & { readonly testId: string })[];
  readonly testIds: readonly string[];
  /** why tests are logged and the maker's figures used all the same */
  readonly notes: readonly Note[];
}

/** What a motor lacks before it can turn a rotor, and what its tests told all the same. */
export interface MotorMissing extends Pick<MotorBasis, "rows" | "testIds" | "notes"> {
  readonly basis: "missing";
  readonly missing: Missing;
}

export type MotorAnswer = MotorBasis | MotorMissing;

/** The maker's figures that the constants take, as a message names them. */
const STATED = {
  kv: "speed constant",
  resistance: "resistance",
  noLoadCurrent: "no-load current",
} as const;

/** Null where the maker's figures don't make the constants. */
function stated({ kv, resistance, noLoadCurrent, viscousTorque }: Motor): MotorConstants | null {
  if (kv === undefined || resistance === undefined || noLoadCurrent === undefined) return null;
  return { kv, resistance, viscousTorque, frictionTorque: frictionFromNoLoad(kv, noLoadCurrent) };
}

function missingOf(motor: Motor, notes: readonly Note[]): Missing {
  const keys = (["kv", "resistance", "noLoadCurrent"] as const).filter((key) => motor[key] === undefined);
  const lacking = listed(keys.map((key) => STATED[key]));
  const verb = keys.length === 1 ? "is" : "are";
  const why = notes.map(({ message }) => ` ${message}`).join("");
  const message = `The ${lacking} of ${motor.name} ${verb} not known: log a motor test, free and under two loads, or state ${keys.length === 1 ? "it" : "them"} on the motor's page.${why}`;
  return { path: "motor", message, test: "motor" };
}

/** "a, b and c" */
function listed(words: readonly string[]): string {
  return words.length < 2
    ? words.join("")
    : `${words.slice(0, -1).join(", ")} and ${words[words.length - 1]}`;
}

function ohmmeterReading(book: Book, motorId: string): number | undefined {
  const read = testsOf(book, "motor")
    .filter((test) => test.data.motor === motorId)
    .flatMap((test) => (test.data.resistance ? [toSI(test.data.resistance, "resistance")] : []));
  return read.length === 0 ? undefined : read.reduce((sum, ohms) => sum + ohms, 0) / read.length;
}

/** Friction by the rows without load, else by the maker's no-load current at the measured K_v; null where neither is there. */
function frictionOf(motor: Motor, fit: MotorFit, hasNoLoad: boolean) {
  if (hasNoLoad) return { frictionTorque: fit.frictionTorque, viscousTorque: fit.viscousTorque };
  if (motor.noLoadCurrent === undefined) return null;
  const { viscousTorque } = motor;
  return { frictionTorque: frictionFromNoLoad(motor.kv ?? fit.kv, motor.noLoadCurrent), viscousTorque };
}

const NO_FREE_ROW: Note = {
  code: "motor-friction-unknown",
  message: "The motor tests have no row without load, which tells the friction.",
};

/** @returns under which key a book has a motor's constants */
export const motorKey = (id: string): string => `motor ${id}`;

function answerFor(book: Book, motorId: string): MotorAnswer | null {
  const motor = findById(book.motors, motorId)?.data;
  if (!motor) return null;
  const tests = testsOf(book, "motor").filter((test) => test.data.motor === motorId);
  const rows = tests.flatMap((test) => motorRows(test.data).map((row) => ({ ...row, testId: test.id })));
  const known = { thermal: motorThermal(motor), rows, testIds: tests.map((test) => test.id) };
  const otherwise = (notes: readonly Note[]): MotorAnswer => {
    const constants = stated(motor);
    const throttle = constants && throttleOffset(rows, constants);
    if (constants) return { ...known, basis: "stated", constants, fit: null, throttle, notes };
    return { ...known, basis: "missing", missing: missingOf(motor, notes), notes };
  };
  const full = inUse(rows).filter((row) => row.throttle === 1);
  if (full.length === 0) return otherwise([]);
  try {
    const fit = fitMotor({ rows: full, resistance: ohmmeterReading(book, motorId) });
    const friction = frictionOf(
      motor,
      fit,
      full.some((row) => row.noLoad),
    );
    if (!friction) return otherwise([NO_FREE_ROW]);
    const constants = { kv: fit.kv, resistance: fit.resistance, ...friction };
    const throttle = throttleOffset(rows, constants);
    return { ...known, basis: "measured", constants, fit, throttle, notes: fit.warnings };
  } catch (error) {
    if (!(error instanceof NotEnoughDataError)) throw error;
    const used = stated(motor) ? ", the maker's figures are used" : "";
    const message = `The motor tests don't settle the constants${used}: ${error.message}`;
    return otherwise([{ code: "motor-not-identified", message }]);
  }
}

/** @returns the motor's constants from its tests, else as its maker states them, else what is missing; null where the book has no such motor */
export function motorAnswer(book: Book, motorId: string): MotorAnswer | null {
  return oncePerBook(book, motorKey(motorId), () => answerFor(book, motorId));
}

/** @returns the motor's constants and what they are based on; null where they aren't known */
export function motorBasis(book: Book, motorId: string): MotorBasis | null {
  const answer = motorAnswer(book, motorId);
  return answer?.basis === "missing" ? null : answer;
}

/**
 * The motor whose constants keep a rotor's current from telling its power.
 *
 * @param book - the whole bench book
 * @param testIds - curve or thrust tests of the rotor
 * @returns what that motor lacks; null where no test names a motor whose constants aren't known beside a current
 */
export function motorBehind(book: Book, testIds: readonly string[]): Missing | null {
  for (const { id, data } of book.tests) {
    if (!testIds.includes(id) || (data.kind !== "curve" && data.kind !== "thrust") || !data.motor) continue;
    const rows: readonly { readonly current?: unknown }[] = data.rows;
    const answer = rows.some(({ current }) => current !== undefined) ? motorAnswer(book, data.motor) : null;
    if (answer?.basis === "missing") return answer.missing;
  }
  return null;
}
