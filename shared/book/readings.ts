import { bleedFlow } from "../fit/bleed.ts";
import type { DischargeReading } from "../fit/dischargeFit.ts";
import type { RotorReadingPoint } from "../fit/rotorPoints.ts";
import type { ReadingUncertainty } from "../fit/rotorWeights.ts";
import type { AirAsRead, Instrument, Plate } from "../model/tests/common.ts";
import type { CurveTest } from "../model/tests/curve.ts";
import type { DischargeTest } from "../model/tests/discharge.ts";
import type { FrictionTest } from "../model/tests/friction.ts";
import type { LeakTest } from "../model/tests/leak.ts";
import type { MotorTest } from "../model/tests/motor.ts";
import type { PullTest } from "../model/tests/pull.ts";
import type { RideHeightTest } from "../model/tests/rideHeight.ts";
import { pullContradiction, slideContradiction } from "../model/tests/rowContradictions.ts";
import type { ThrustTest } from "../model/tests/thrust.ts";
import { type Air, airFrom, DEFAULT_WEATHER } from "../physics/air.ts";
import { STANDARD_GRAVITY } from "../physics/constants.ts";
import { type MotorConstants, RPM, shaftTorque } from "../physics/motor.ts";
import type { DimensionName } from "../units/dimensions.ts";
import { type TypedQuantity, toSI } from "../units/quantity.ts";

/** A row of a test in SI, with its place in the test and why it is left out, where it is: set aside, or it contradicts itself. */
export type Reading<T> = T & { readonly row: number; readonly setAside: string | null };

const maybe = (typed: TypedQuantity | undefined, name: DimensionName): number | undefined =>
  typed && toSI(typed, name);

/** @returns the air of a test's day [kg/m³, Pa·s, m/s, Pa]; 20 °C, 101 325 Pa, 50 % where none was read */
export function airOfDay(read: AirAsRead | undefined): Air {
  if (!read) return airFrom(DEFAULT_WEATHER);
  return airFrom({
    temperature: toSI(read.temperature, "temperature"),
    pressure: toSI(read.pressure, "pressure"),
    humidity: toSI(read.humidity, "fraction"),
  });
}

/** @returns standard uncertainty of one reading [SI of the dimension]: percent and fixed part added as squares; 0 where none is stated */
export function instrumentUncertainty(
  instrument: Instrument | undefined,
  reading: number,
  name: DimensionName,
): number {
  if (!instrument) return 0;
  const relative = ((instrument.percent ?? 0) / 100) * reading;
  return Math.hypot(relative, maybe(instrument.absolute, name) ?? 0);
}

interface MeteredFlow {
  /** [m³/s] */
  readonly flow: number;
  /** standard, relative, of the plate's law [-] */
  readonly uncertainty: number;
}

const NO_FLOW: MeteredFlow = { flow: 0, uncertainty: 0 };

function plateFlow(
  plate: Plate | undefined,
  open: readonly number[] | undefined,
  air: Air,
  pressure: number,
): MeteredFlow {
  if (!plate || !open) return NO_FLOW;
  const holes = plate.holes.map((hole, k) => ({
    diameter: toSI(hole.diameter, "length"),
    thickness: toSI(hole.thickness, "length"),
    count: open[k] ?? 0,
    edge: hole.edge,
    dischargeCoefficient: hole.dischargeCoefficient,
  }));
  const openNow = holes.filter((kind) => kind.count > 0);
  if (openNow.length === 0 || !(pressure > 0)) return NO_FLOW;
  return bleedFlow({ holes: openNow, air, pressure });
}

/** @returns what the instruments leave uncertain in one row; null where the pressure sensor states nothing */
function uncertaintyOf(
  test: CurveTest,
  pressure: number,
  speed: number,
  flow: MeteredFlow,
): ReadingUncertainty | null {
  const { pressure: gauge, speed: tachometer, flow: meter } = test.instruments;
  const ofPressure = instrumentUncertainty(gauge, Math.abs(pressure), "pressure");
  if (!(ofPressure > 0)) return null;
  const fromPlate = test.flowFrom === "bleed-plate";
  const ofMeter = flow.flow > 0 ? instrumentUncertainty(meter, flow.flow, "flow") / flow.flow : 0;
  return {
    pressure: ofPressure,
    speed: instrumentUncertainty(tachometer, speed, "speed") / speed,
    flow: fromPlate ? flow.uncertainty : ofMeter,
    flowFromPressure: fromPlate,
  };
}

/** @returns shaft power [W] of a row: from the torque read, else from the current of a known motor; undefined where neither is there */
function rowShaftPower(
  row: CurveTest["rows"][number],
  speed: number,
  motor: MotorConstants | null,
): number | undefined {
  if (row.torque) return toSI(row.torque, "torque") * speed;
  if (!row.current || !motor) return undefined;
  return Math.max(0, shaftTorque(motor, toSI(row.current, "current"), speed)) * speed;
}

/** A curve test's row, and what its instruments leave uncertain (null where they state nothing). */
export type CurveReading = Reading<RotorReadingPoint> & { readonly doubt: ReadingUncertainty | null };

/**
 * A curve test's rows in SI, flows taken from the bleed plate where it was the flow meter.
 *
 * @param test - as stored
 * @param motor - constants of the motor that turned it, null where they aren't known
 * @returns points for {@link fitRotor}: rpm, flow [m³/s], pressure [Pa], density [kg/m³] where the row or the day states one, shaft power [W], diameter [m]
 * @throws {OutOfRangeError} on a plate pressure beyond the ambient's
 */
export function curveReadings(test: CurveTest, motor: MotorConstants | null): CurveReading[] {
  const air = airOfDay(test.air);
  const diameter = toSI(test.diameter, "length");
  return test.rows.map((row, index) => {
    const speed = toSI(row.speed, "speed");
    const pressure = toSI(row.pressure, "pressure");
    const metered: MeteredFlow =
      test.flowFrom === "known-flow"
        ? { flow: maybe(row.flow, "flow") ?? 0, uncertainty: 0 }
        : plateFlow(test.plate, row.open, air, pressure);
    return {
      rpm: speed / RPM,
      flow: metered.flow,
      pressure,
      density: maybe(row.density, "density") ?? (test.air ? air.density : undefined),
      diameter,
      shaftPower: rowShaftPower(row, speed, motor),
      doubt: uncertaintyOf(test, pressure, speed, metered),
      row: index,
      setAside: row.setAside ?? null,
    };
  });
}

/** A thrust test's row in SI. */
export interface ThrustReading {
  readonly rpm: number;
  /** towards the surface [N] */
  readonly thrust: number;
  /** [W]; undefined where neither torque nor the current of a known motor gives any */
  readonly shaftPower: number | undefined;
  /** as read [A] */
  readonly current: number | null;
  /** false: the current read is not the motor's */
  readonly fullThrottle: boolean;
  /** where the day's air was read [kg/m³] */
  readonly density: number | undefined;
  /** [m] */
  readonly diameter: number;
}

/** Below full throttle the ammeter in the pack's lead doesn't read the motor's current; a current that leaves no torque says nothing. */
function propellerPower(
  row: ThrustTest["rows"][number],
  speed: number,
  motor: MotorConstants | null,
): number | undefined {
  const current = maybe(row.current, "current");
  const known = motor && current !== undefined && isFullThrottle(row);
  const torque = maybe(row.torque, "torque") ?? (known ? shaftTorque(motor, current, speed) : 0);
  return torque > 0 ? torque * speed : undefined;
}

const isFullThrottle = ({ throttle }: ThrustTest["rows"][number]): boolean =>
  toSI(throttle, "fraction") === 1;

/**
 * A thrust test's rows in SI.
 *
 * @param test - as stored
 * @param motor - constants of the motor that turned it, null where they aren't known
 * @returns rows for {@link fitPropeller}: rpm, thrust [N], shaft power by torque, else by the motor's current [W], density [kg/m³], diameter [m]
 */
export function thrustReadings(test: ThrustTest, motor: MotorConstants | null): Reading<ThrustReading>[] {
  const density = test.air ? airOfDay(test.air).density : undefined;
  const diameter = toSI(test.diameter, "length");
  return test.rows.map((row, index) => {
    const speed = toSI(row.speed, "speed");
    return {
      rpm: speed / RPM,
      thrust: toSI(row.thrust, "load"),
      shaftPower: propellerPower(row, speed, motor),
      current: maybe(row.current, "current") ?? null,
      fullThrottle: isFullThrottle(row),
      density,
      diameter,
      row: index,
      setAside: row.setAside ?? null,
    };
  });
}

export interface MotorReading {
  readonly voltage: number;
  readonly current: number;
  readonly rpm: number;
  readonly noLoad: boolean;
  /** share of full throttle; elsewhere than at 1 the motor's own voltage isn't known [-] */
  readonly throttle: number;
}

/** @returns a motor test's rows: V, A, rpm, with nothing on the shaft or not, throttle */
export function motorRows(test: MotorTest): Reading<MotorReading>[] {
  return test.rows.map((row, index) => ({
    voltage: toSI(row.voltage, "voltage"),
    current: toSI(row.current, "current"),
    rpm: toSI(row.speed, "speed") / RPM,
    noLoad: row.noLoad,
    throttle: toSI(row.throttle, "fraction"),
    row: index,
    setAside: row.setAside ?? null,
  }));
}

/** @returns a leak test's points: cavity pressure [Pa] and flow [m³/s], the flow from a plate in series where it was the meter */
export function leakPoints(test: LeakTest): Reading<{ pressure: number; flow: number }>[] {
  const air = airOfDay(test.air);
  return test.rows.map((row, index) => {
    const drop = maybe(row.platePressure, "pressure") ?? 0;
    const flow =
      test.flowFrom === "known-flow"
        ? (maybe(row.flow, "flow") ?? 0)
        : plateFlow(test.plate, row.open, air, drop).flow;
    return { pressure: toSI(row.pressure, "pressure"), flow, row: index, setAside: row.setAside ?? null };
  });
}

export interface PullTrial {
  /** force on the surface that held [N] */
  readonly held: number;
  readonly letGo: number | null;
  /** [V], at the pack's terminals */
  readonly voltage: number | null;
  /** shim in the place of the set gap [m] */
  readonly gap: number | null;
}

/** How the rig's own weight counts: hung from a ceiling it is held as well; lifted off a floor the scale carries it; dragged along it is no part of the load. */
const RIG_SIGN = { ceiling: 1, "straight-off": -1, along: 0 } as const;

/** @returns what the rig itself adds to a load on the surface, below 0 where it takes from it [N] */
export function rigWeight({ direction, rigMass }: PullTest): number {
  return RIG_SIGN[direction] * toSI(rigMass, "mass") * STANDARD_GRAVITY;
}

/**
 * A pull test's brackets: the force on the surface, the rig's own weight accounted for.
 *
 * @param test - as stored
 * @returns held and let go [N], voltage [V], shim [m]; held 0 where it let go at once
 */
export function pullTrials(test: PullTest): Reading<PullTrial>[] {
  const rig = rigWeight(test);
  return test.rows.map((row, index) => {
    const held = toSI(row.held, "load");
    const letGo = row.letGo && toSI(row.letGo, "load");
    const atOnce = held === 0 && letGo !== null;
    return {
      held: atOnce ? 0 : Math.max(0, held + rig),
      letGo: letGo === null ? null : Math.max(0, letGo + rig),
      voltage: maybe(row.voltage, "voltage") ?? null,
      gap: maybe(row.gap, "length") ?? null,
      row: index,
      setAside: row.setAside ?? pullContradiction(row),
    };
  });
}

/** @returns a friction test's slides: tilt that held and tilt that slid [rad], null where not read */
export function frictionSlides(test: FrictionTest): Reading<{ held: number | null; slid: number | null }>[] {
  return test.rows.map((row, index) => ({
    held: row.held && toSI(row.held, "angle"),
    slid: row.slid && toSI(row.slid, "angle"),
    row: index,
    setAside: row.setAside ?? slideContradiction(row),
  }));
}

/** @returns standard uncertainty of the tilt board's angle [rad], the largest of the tests'; 0 where none is stated */
export function tiltUncertainty(tests: readonly FrictionTest[]): number {
  const ofTest = (test: FrictionTest) => {
    const steepest = Math.max(...frictionSlides(test).map((slide) => slide.slid ?? slide.held ?? 0));
    return instrumentUncertainty(test.instruments.angle, steepest, "angle");
  };
  return Math.max(0, ...tests.map(ofTest));
}

/** @returns a ride-height test's readings: load beside the vehicle's own weight [N], height of the lip [m] */
export function rideHeights(test: RideHeightTest): Reading<{ load: number; height: number }>[] {
  return test.rows.map((row, index) => ({
    load: toSI(row.load, "load"),
    height: toSI(row.height, "length"),
    row: index,
    setAside: row.setAside ?? null,
  }));
}

/** What the instruments of ride-height tests leave uncertain. */
export interface HeightInstruments {
  /** of one height, the largest of the tests' [m]; undefined where none is stated */
  readonly heightUncertainty: number | undefined;
  /** of one load, its fixed part [N] */
  readonly loadUncertainty: number;
  /** of the loads as a share of them, which the stiffness shares [-] */
  readonly loadShare: number;
}

/** @returns standard uncertainties of ride-height readings, the largest of the tests' */
export function heightInstruments(tests: readonly RideHeightTest[]): HeightInstruments {
  const height = (test: RideHeightTest) => {
    const highest = Math.max(...rideHeights(test).map((reading) => reading.height));
    return instrumentUncertainty(test.instruments.height, highest, "length");
  };
  const largest = (of: (test: RideHeightTest) => number) => Math.max(0, ...tests.map(of));
  return {
    heightUncertainty: largest(height) || undefined,
    loadUncertainty: largest(({ instruments }) => maybe(instruments.load?.absolute, "load") ?? 0),
    loadShare: largest(({ instruments }) => (instruments.load?.percent ?? 0) / 100),
  };
}

/** Charge drawn by each row [C]: as counted, else from current and time, the straight line between readings. */
function drawnByRow({ rows }: DischargeTest): number[] {
  const drawn: number[] = [];
  rows.forEach((row, i) => {
    const counted = maybe(row.charge, "charge");
    const before = rows[i - 1];
    if (counted !== undefined) drawn.push(counted);
    else if (!before) drawn.push(0);
    else {
      const span = (maybe(row.time, "time") ?? 0) - (maybe(before.time, "time") ?? 0);
      const mean = (toSI(row.current, "current") + toSI(before.current, "current")) / 2;
      drawn.push(drawn[i - 1] + Math.max(0, span) * mean);
    }
  });
  return drawn;
}

/**
 * A discharge test's rows, of one cell.
 *
 * @param test - as stored
 * @param pack - cells in series and parallel [-]
 * @returns charge drawn since full [C], voltage [V], current [A] of one cell
 */
export function dischargeReadings(
  test: DischargeTest,
  pack: { readonly series: number; readonly parallel: number },
): Reading<DischargeReading>[] {
  const series = test.across === "pack" ? pack.series : 1;
  const parallel = test.across === "cell" ? 1 : pack.parallel;
  const drawn = drawnByRow(test);
  return test.rows.map((row, index) => ({
    drawn: drawn[index] / parallel,
    voltage: toSI(row.voltage, "voltage") / series,
    current: toSI(row.current, "current") / parallel,
    row: index,
    setAside: row.setAside ?? null,
  }));
}

/** @returns the rows that take part in a fit */
export function inUse<T extends { readonly setAside: string | null }>(readings: readonly T[]): T[] {
  return readings.filter((reading) => reading.setAside === null);
}
