import { figureSpread } from "../../decide/figureSpread.ts";
import type { Foretold } from "../../model/api/record.ts";
import type { StoredOf } from "../../model/record.ts";
import type { CurveTest } from "../../model/tests/curve.ts";
import type { ThrustTest } from "../../model/tests/thrust.ts";
import { airFrom, type Weather } from "../../physics/air.ts";
import { assemble } from "../../physics/assembly.ts";
import { operatingPoint, operatingPoints } from "../../physics/operatingPoint.ts";
import type { PredictInput } from "../../physics/predict.ts";
import type { AnyPredictInput } from "../../physics/predictAny.ts";
import { isPropeller } from "../../physics/predictAny.ts";
import { predictPropeller } from "../../physics/propeller.ts";
import { toSI } from "../../units/quantity.ts";
import { type Book, findById } from "../book.ts";
import { type MotorBasis, motorBasis } from "../motorBasis.ts";
import { powerOf, propellerBasis } from "../propellerBasis.ts";
import { weatherOf } from "../pullPrediction.ts";
import { curveReadings } from "../readings/curve.ts";
import { inUse } from "../readings/reading.ts";
import { thrustReadings } from "../readings/thrust.ts";
import { rotorBasis, testedAt } from "../rotorBasis.ts";
import { STAND_VEHICLE } from "../standVehicle.ts";
import { Collector } from "../uncertainty/collector.ts";
import { addMotorUncertainty } from "../uncertainty/motorUncertainty.ts";
import { addRotorUncertainty, addSizeLaw, addThrustUncertainty } from "../uncertainty/rotorUncertainty.ts";
import { withScatter } from "./readingScatter.ts";

type Row = Omit<Foretold, "basis">;

/** Of one reading of speed and voltage together [-]. Common practice, no source. */
const READING = 0.01;

/** The reading that a test's speed is predicted for. */
interface Reading {
  readonly row: number;
  /** of the motor's supply, at full throttle [V] */
  readonly voltage: number;
}

/** A rotor that air flows past as it did in one reading. */
interface CurvePoint extends Reading {
  readonly flow: number;
  readonly pressure: number;
}

const FULL_THROTTLE = { duty: 1, driverResistance: 0, auxCurrent: 0 };

/** A supply that gives a voltage as read, whatever the current. */
const supplyAt = (voltage: number) => ({
  series: 1,
  parallel: 1,
  openCircuitVoltage: voltage,
  cellResistance: 0,
  wireResistance: 0,
});

/** The middle one by some measure stands for the test: all readings hang on one motor and one curve. */
function middleBy<R extends Reading>(readings: readonly R[], measure: (reading: R) => number): R | undefined {
  return [...readings].sort((a, b) => measure(a) - measure(b))[Math.floor(readings.length / 2)];
}

/** What lets through at any pressure what it let through in the reading: Q ∝ √Δp, as holes and valves do. */
function restrictionOf({ flow, pressure }: CurvePoint, air: Weather): PredictInput["skirt"] {
  const { density, viscosity } = airFrom(air);
  const none = { perimeter: 1, area: 1, gap: 0, roughness: 0, land: 0, lossSum: 1, openings: [], holes: [] };
  const measuredLeak =
    flow > 0 ? { coefficient: flow / Math.sqrt(pressure), exponent: 0.5, density, viscosity } : null;
  return { ...none, honeycombs: [], measuredLeak };
}

/** ω of an input's present numbers; 0 where it stands [rad/s]. */
function speedOf(input: AnyPredictInput): number {
  if (isPropeller(input)) return predictPropeller(input, []).point?.speed ?? 0;
  const { machine, leak } = assemble(input);
  return operatingPoint(operatingPoints(machine, leak))?.speed ?? 0;
}

interface Turned {
  readonly input: AnyPredictInput;
  readonly motor: StoredOf<"motors">;
  readonly basis: MotorBasis;
  /** what the rotor or propeller adds to it */
  readonly add: (into: Collector) => void;
}

function rowOf(reading: Reading, { input, motor, basis, add }: Turned): Row {
  const into = new Collector(input);
  add(into);
  addMotorUncertainty(motor.data, basis, into);
  const { sources: _said, ...asked } = into.result();
  const band = figureSpread(input, asked, (copy) => () => speedOf(copy));
  return { row: reading.row, figure: "speed", ...withScatter(band, READING), chance: null };
}

/** On a stand a reading takes seconds: the winding is as cold as in a motor test. */
const standMotor = ({ constants }: MotorBasis) => ({ ...constants, thermalResistance: null });

/** The motor that turned it, as the book knows it; null: not named, or not known. */
function motorOf(book: Book, id: string | null) {
  const motor = findById(book.motors, id);
  const basis = motor && motorBasis(book, motor.id);
  return motor && basis ? { motor, basis } : null;
}

/**
 * What the book as it is predicts for the speed of a curve test, at the reading in the middle of its flows.
 *
 *     the motor's and the rotor's torque balanced at the voltage read, through what let the reading's flow through: Q ∝ √Δp
 *
 * @param book - without the readings in question
 * @param test - the curve test
 * @param wanted - its rows in question [-]
 * @returns 5, 50 and 95 % of the speed [rad/s]; nothing where no motor or voltage is noted, or the book knows rotor or motor too little
 * @throws {OutOfRangeError} on a number in the book that can't be
 */
export function foretellCurveSpeed(book: Book, test: CurveTest, wanted: ReadonlySet<number>): Row[] {
  const turning = motorOf(book, test.motor);
  const rotor = findById(book.rotors, test.rotor);
  const basis = rotor && rotorBasis(book, rotor.id);
  if (!turning || !rotor || !basis || basis.basis === "missing" || !basis.lambda) return [];
  const points = inUse(curveReadings(test, null)).flatMap(({ row, flow, pressure }): CurvePoint[] => {
    const { voltage, density } = test.rows[row];
    const isUsable = wanted.has(row) && pressure > 0 && flow >= 0 && density === undefined;
    return voltage && isUsable ? [{ row, flow, pressure, voltage: toSI(voltage, "voltage") }] : [];
  });
  const reading = middleBy(points, ({ flow }) => flow);
  if (!reading) return [];
  const { psi, lambda, phiMin, phiMax } = basis;
  const diameter = toSI(test.diameter, "length");
  const correction = testedAt(basis, diameter);
  const air = weatherOf(test);
  const input: PredictInput = {
    air,
    rotor: {
      diameter,
      psi,
      lambda,
      phiMin,
      phiMax,
      sizeCorrection: correction && { ...correction, applied: 1 },
    },
    motor: standMotor(turning.basis),
    pack: supplyAt(reading.voltage),
    supply: FULL_THROTTLE,
    skirt: restrictionOf(reading, air),
    vehicle: STAND_VEHICLE,
  };
  const add = (into: Collector) => {
    addRotorUncertainty(book, rotor, basis, into);
    addSizeLaw(rotor.data.name, into);
  };
  return [rowOf(reading, { input, ...turning, add })];
}

/**
 * What the book as it is predicts for the speed of a thrust test, at the reading in the middle of its voltages at full throttle.
 *
 *     the motor's and the propeller's torque balanced at the voltage read
 *
 * @param book - without the readings in question
 * @param test - the thrust test
 * @param wanted - its rows in question [-]
 * @returns 5, 50 and 95 % of the speed [rad/s]; nothing where no motor or voltage is noted, or the book knows propeller or motor too little
 * @throws {OutOfRangeError} on a number in the book that can't be
 */
export function foretellThrustSpeed(book: Book, test: ThrustTest, wanted: ReadonlySet<number>): Row[] {
  const turning = motorOf(book, test.motor);
  const rotor = findById(book.rotors, test.rotor);
  const basis = rotor && propellerBasis(book, rotor.id);
  const power = basis && basis.basis === "measured" ? powerOf(basis) : null;
  if (!turning || !rotor || !basis || basis.basis === "missing" || !power) return [];
  const readings = inUse(thrustReadings(test, null)).flatMap(({ row, fullThrottle }): Reading[] => {
    const { voltage } = test.rows[row];
    return voltage && fullThrottle && wanted.has(row) ? [{ row, voltage: toSI(voltage, "voltage") }] : [];
  });
  const reading = middleBy(readings, ({ voltage }) => voltage);
  if (!reading) return [];
  const diameter = toSI(test.diameter, "length");
  const { thrust, referenceReynolds } = basis.fit;
  const input: AnyPredictInput = {
    air: weatherOf(test),
    rotor: {
      kind: "propeller",
      diameter,
      thrust,
      power,
      referenceReynolds,
      chord: basis.chordRatio * diameter,
    },
    motor: standMotor(turning.basis),
    pack: supplyAt(reading.voltage),
    supply: FULL_THROTTLE,
    vehicle: STAND_VEHICLE,
  };
  const add = (into: Collector) => addThrustUncertainty(rotor.data.name, basis, into);
  return [rowOf(reading, { input, ...turning, add })];
}
