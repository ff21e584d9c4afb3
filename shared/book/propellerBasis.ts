import { fitPropeller, type PropellerFit, USUAL_CHORD } from "../fit/propellerFit.ts";
import type { StoredOf } from "../model/record.ts";
import { NotEnoughDataError } from "../numeric/errors.ts";
import { type Book, findById, oncePerBook, testsOf } from "./book.ts";
import type { Missing } from "./missing.ts";
import { motorBasis, motorBehind } from "./motorBasis.ts";
import { inUse, type Reading } from "./readings/reading.ts";
import { type ThrustReading, thrustReadings } from "./readings/thrust.ts";
import { testedTipSpeeds } from "./testedSizes.ts";

/** A reading of a propeller with the test it stands in. */
export type ThrustPoint = Reading<ThrustReading> & { readonly testId: string };

/** Coefficients of a propeller family and what they rest on. */
export interface PropellerBasis {
  readonly basis: "measured";
  readonly fit: PropellerFit;
  /** at 75 % radius, over the diameter [-] */
  readonly chordRatio: number;
  /** no chord is stated: a tenth of the diameter stands in for it */
  readonly chordAssumed: boolean;
  /** every reading, those set aside included; none of coefficients that came without their tests */
  readonly points: readonly ThrustPoint[];
  /** by rising size [m] */
  readonly testedDiameters: readonly number[];
  /** least and greatest of the readings in use [m/s] */
  readonly tipSpeeds: readonly [number, number] | null;
  /** why its power is not known, and what gives it; null where it is known */
  readonly lacksPower: Missing | null;
  readonly testIds: readonly string[];
  /** motor tests behind the shaft power */
  readonly motorTestIds: readonly string[];
}

export type PropellerAnswer = PropellerBasis | { readonly basis: "missing"; readonly missing: Missing };

/** @returns every reading of a propeller's thrust tests, those set aside included, whether or not they make coefficients */
export function thrustPoints(book: Book, rotorId: string): ThrustPoint[] {
  return testsOf(book, "thrust")
    .filter((test) => test.data.rotor === rotorId)
    .flatMap((test) => {
      const motor = test.data.motor ? motorBasis(book, test.data.motor) : null;
      const readings = thrustReadings(test.data, motor?.constants ?? null);
      return readings.map((reading) => ({ ...reading, testId: test.id }));
    });
}

/** @returns chord at 75 % radius over the diameter [-], and whether it is only the usual one */
export function chordOf({ data }: StoredOf<"rotors">): { readonly ratio: number; readonly assumed: boolean } {
  if (data.chord === undefined) return { ratio: USUAL_CHORD, assumed: true };
  return { ratio: data.chord / data.sizes[0].diameter, assumed: false };
}

function missingTest(message: string): PropellerAnswer {
  return { basis: "missing", missing: { path: "rotor", message, test: "thrust" } };
}

/** @returns the coefficients of power as a prediction takes them; null where there are none that take power */
export function powerOf({ fit }: Pick<PropellerBasis, "fit">): PropellerFit["power"] {
  return fit.power && fit.power[0] > 0 ? fit.power : null;
}

const noCurrent = (named: boolean): string =>
  named
    ? "log the motor's current in its thrust test, at full throttle, or read the torque."
    : "in its thrust test name the motor and log its current at full throttle, or read the torque.";

function currentTellsNothing(named: boolean, read: readonly ThrustPoint[]): string {
  if (!named) return "name the motor in its thrust test, so that shaft power follows from the current.";
  return read.some((point) => point.fullThrottle)
    ? "the current read is no more than its motor takes by itself. Check the ammeter, and test the motor without load."
    : "the current was read at part throttle, where it isn't the motor's own. Read it at full throttle and change the supply's voltage, or read the torque.";
}

/** What a propeller's power is told by. */
type Powered = Pick<PropellerBasis, "fit" | "points" | "testIds">;

function powerMissing(book: Book, basis: Powered): Missing | null {
  if (powerOf(basis)) return null;
  const motor = motorBehind(book, basis.testIds);
  if (motor) return motor;
  const used = inUse(basis.points);
  const named = testsOf(book, "thrust").some(
    ({ id, data }) => basis.testIds.includes(id) && data.motor !== null,
  );
  const read = used.filter((point) => point.current !== null);
  const why = read.length === 0 ? noCurrent(named) : currentTellsNothing(named, read);
  const message = `The propeller's power is not known: ${why}`;
  return { path: "rotor.power", message, test: "thrust" };
}

function motorTests(book: Book, points: readonly ThrustPoint[]): string[] {
  const tests = new Set(points.map((point) => point.testId));
  const motors = testsOf(book, "thrust").flatMap(({ id, data }) => (tests.has(id) ? [data.motor] : []));
  return [...new Set(motors)].flatMap((id) => (id && motorBasis(book, id)?.testIds) || []);
}

function fitted(book: Book, rotor: StoredOf<"rotors">, points: readonly ThrustPoint[]): PropellerAnswer {
  const used = inUse(points);
  const diameter = used[0].diameter;
  const { ratio, assumed } = chordOf(rotor);
  const chord = assumed ? undefined : ratio * diameter;
  const fit = fitPropeller({ diameter, chord, rows: used });
  const testedDiameters = [...new Set(used.map((point) => point.diameter))].sort((a, b) => a - b);
  const testIds = [...new Set(points.map((point) => point.testId))];
  return {
    basis: "measured",
    fit,
    chordRatio: ratio,
    chordAssumed: assumed,
    points,
    testedDiameters,
    tipSpeeds: testedTipSpeeds(used, testedDiameters),
    lacksPower: powerMissing(book, { fit, points, testIds }),
    testIds,
    motorTestIds: motorTests(book, used),
  };
}

/** @returns under which key a book has a propeller's coefficients */
export const propellerKey = (id: string): string => `propeller ${id}`;

function answerFor(book: Book, rotorId: string): PropellerAnswer {
  const rotor = findById(book.rotors, rotorId);
  if (!rotor) return { basis: "missing", missing: { path: "rotor", message: "The book has no such rotor." } };
  const points = thrustPoints(book, rotorId);
  if (inUse(points).length === 0)
    return missingTest(
      `No thrust test of ${rotor.data.name} is logged: weigh its thrust at three speeds or more, and log the motor's current.`,
    );
  try {
    return fitted(book, rotor, points);
  } catch (error) {
    if (!(error instanceof NotEnoughDataError)) throw error;
    return missingTest(error.message);
  }
}

/** @returns the propeller's coefficients from all its thrust tests, else what is missing */
export function propellerBasis(book: Book, rotorId: string): PropellerAnswer {
  return oncePerBook(book, propellerKey(rotorId), () => answerFor(book, rotorId));
}
