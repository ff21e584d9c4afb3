import type { CurveReading } from "../../../../shared/book/readings/curve.ts";
import type { MotorReading } from "../../../../shared/book/readings/motor.ts";
import type { Reading } from "../../../../shared/book/readings/reading.ts";
import type { ThrustReading } from "../../../../shared/book/readings/thrust.ts";
import type { DischargeFit, DischargeReading } from "../../../../shared/fit/dischargeFit.ts";
import type { LeakFit } from "../../../../shared/fit/leakFit.ts";
import type { MotorFit } from "../../../../shared/fit/motorFit.ts";
import { propellerBand } from "../../../../shared/fit/propellerBands.ts";
import type { PropellerFit } from "../../../../shared/fit/propellerFit.ts";
import { heightUnder, type RideHeightFit } from "../../../../shared/fit/rideHeightFit.ts";
import type { RotorFit } from "../../../../shared/fit/rotorFit.ts";
import { type RotorPoint, usualDensity } from "../../../../shared/fit/rotorPoints.ts";
import { evaluatePolynomial } from "../../../../shared/numeric/polynomial.ts";
import { STANDARD_AIR_DENSITY } from "../../../../shared/physics/constants.ts";
import { type RotorState, readingOf } from "../../../../shared/physics/fanlaws/coefficients.ts";
import { propellerUnits } from "../../../../shared/physics/fanlaws/propeller.ts";
import { RPM } from "../../../../shared/physics/motor.ts";
import type { DimensionName } from "../../../../shared/units/dimensions.ts";
import { formatQuantity, inUnit } from "../../../../shared/units/format.ts";
import { unitOf } from "../../../../shared/units/showing.ts";
import type { Line, Point } from "../../../charts/model/plot.ts";
import type { RowName } from "./result.ts";
import { pointSketch, type Sketch, type SketchPoint } from "./sketch.ts";

/** How finely a fitted line is drawn. */
const STEPS = 40;

/** One axis of a sketch: what it is called, and an SI value in the unit that it is shown in. */
export function axisOf(what: string, name: DimensionName, unit = unitOf(name)) {
  return { label: `${what}, ${unit}`, of: (si: number) => inUnit(si, name, unit) };
}

function pointsOf<T extends Reading<object>>(
  readings: readonly T[],
  names: readonly RowName[],
  at: (reading: T, i: number) => Point,
): SketchPoint[] {
  return readings.map((reading, i) => ({
    ...names[reading.row],
    ...at(reading, i),
    aside: reading.setAside,
  }));
}

function between(values: readonly number[]): number[] {
  const used = values.filter(Number.isFinite);
  const [from, to] = [Math.min(...used), Math.max(...used)];
  return Array.from({ length: STEPS + 1 }, (_, i) => from + ((to - from) * i) / STEPS);
}

const fitted = (points: readonly Point[]): Line[] => [{ key: "fit", tone: "quiet", style: "solid", points }];

function middleOf(values: readonly number[]): number {
  const inOrder = [...values].sort((a, b) => a - b);
  return inOrder[Math.floor(inOrder.length / 2)];
}

/** Suction over flow, every row brought to one speed by the fan laws. */
export function curveSketch(
  readings: readonly CurveReading[],
  points: readonly RotorPoint[],
  fit: RotorFit | null,
  names: readonly RowName[],
): Sketch | null {
  const rpm = middleOf(readings.map((reading) => reading.rpm));
  const diameter = readings[0].diameter ?? 0;
  const state: RotorState = { diameter, speed: rpm * RPM, density: usualDensity(readings) };
  const [x, y] = [axisOf("flow", "flow"), axisOf("suction", "pressure")];
  const at = (phi: number, psi: number): Point => {
    const { flow, pressure } = readingOf({ phi, psi, lambda: null }, state);
    return { x: x.of(flow), y: y.of(pressure) };
  };
  const counted = readings.flatMap((reading, i) => (reading.setAside === null ? [i] : []));
  const outliers = new Set(fit?.outliers.map((i) => counted[i]));
  return pointSketch({
    title: `Suction over flow, brought to ${formatQuantity(rpm * RPM, "speed")}`,
    row: "point",
    x: x.label,
    y: y.label,
    points: pointsOf(readings, names, (_, i) => at(points[i].phi, points[i].psi)).map((point, i) => ({
      ...point,
      outlier: outliers.has(i),
    })),
    lines: fit
      ? fitted(between([0, fit.phiMin, fit.phiMax]).map((phi) => at(phi, evaluatePolynomial(fit.psi, phi))))
      : [],
  });
}

/** Flow over suction, with the leak's law. */
export function leakSketch(
  readings: readonly Reading<{ pressure: number; flow: number }>[],
  fit: LeakFit | null,
  names: readonly RowName[],
): Sketch | null {
  const [x, y] = [axisOf("suction", "pressure"), axisOf("flow", "flow")];
  const pressures = between([0, ...readings.map(({ pressure }) => pressure)]).filter((each) => each >= 0);
  return pointSketch({
    title: "Leak over suction",
    row: "point",
    x: x.label,
    y: y.label,
    points: pointsOf(readings, names, ({ pressure, flow }) => ({ x: x.of(pressure), y: y.of(flow) })),
    lines: fit
      ? fitted(pressures.map((each) => ({ x: x.of(each), y: y.of(fit.coefficient * each ** fit.exponent) })))
      : [],
  });
}

/** Speed over the voltage that turns the motor: the supply's less what the winding takes, once its resistance is known. */
export function motorSketch(
  readings: readonly Reading<MotorReading>[],
  fit: MotorFit | null,
  names: readonly RowName[],
): Sketch | null {
  const what = fit ? "voltage less R·I" : "voltage";
  const [x, y] = [axisOf(what, "voltage"), axisOf("speed", "speed")];
  const driving = ({ voltage, current }: MotorReading) => voltage - (fit?.resistance ?? 0) * current;
  const points = pointsOf(readings, names, (reading) => ({
    x: x.of(driving(reading)),
    y: y.of(reading.rpm * RPM),
  }));
  return pointSketch({
    title: `Speed over ${what}`,
    row: "run",
    x: x.label,
    y: y.label,
    points: points.map((point, i) =>
      readings[i].throttle === 1 || point.aside !== null
        ? point
        : { ...point, aside: "throttle below 100 %" },
    ),
    lines: fit
      ? fitted(between([0, ...points.map((p) => p.x)]).map((v) => ({ x: v, y: y.of(v * fit.kv * RPM) })))
      : [],
  });
}

/** Thrust over speed, with the fitted coefficient. */
export function thrustSketch(
  readings: readonly Reading<ThrustReading>[],
  fit: PropellerFit | null,
  names: readonly RowName[],
): Sketch | null {
  const [x, y] = [axisOf("speed", "speed"), axisOf("thrust", "load")];
  const speeds = readings.map(({ rpm }) => rpm);
  const { diameter, density = STANDARD_AIR_DENSITY } = readings[0];
  const fastest = Math.max(...speeds);
  const at = (rpm: number): Point => {
    const reynolds = ((fit?.testedReynolds[1] ?? 0) * rpm) / fastest;
    const coefficient = fit && propellerBand(fit, "thrust", reynolds)?.value;
    const unit = propellerUnits({ diameter, speed: rpm * RPM, density }).thrust;
    return { x: x.of(rpm * RPM), y: y.of((coefficient ?? 0) * unit) };
  };
  return pointSketch({
    title: "Thrust over speed",
    row: "reading",
    x: x.label,
    y: y.label,
    points: pointsOf(readings, names, ({ rpm, thrust }) => ({ x: x.of(rpm * RPM), y: y.of(thrust) })),
    lines: fit ? fitted(between(speeds).map(at)) : [],
  });
}

/** Voltage of a cell over the charge drawn, with the open-circuit curve above it. */
export function dischargeSketch(
  readings: readonly Reading<DischargeReading>[],
  fit: DischargeFit | null,
  names: readonly RowName[],
): Sketch | null {
  const [x, y] = [axisOf("charge drawn from a cell", "charge"), axisOf("a cell", "voltage")];
  const open: Line[] = fit
    ? [
        {
          key: "open",
          tone: "quiet",
          style: "dashed",
          points: fit.curve.map(([charge, volts]) => ({ x: x.of((1 - charge) * fit.capacity), y: volts })),
        },
      ]
    : [];
  return pointSketch({
    title: fit
      ? "Voltage over charge drawn; dashed: the cell at rest, as fitted"
      : "Voltage over charge drawn",
    row: "reading",
    x: x.label,
    y: y.label,
    points: pointsOf(readings, names, ({ drawn, voltage }) => ({ x: x.of(drawn), y: voltage })),
    lines: open,
  });
}

/** Height of the lip over the load, with the fitted line. */
export function rideHeightSketch(
  readings: readonly Reading<{ load: number; height: number }>[],
  fit: RideHeightFit | null,
  names: readonly RowName[],
): Sketch | null {
  const [x, y] = [axisOf("load", "load"), axisOf("height of the lip", "length")];
  const loads = between(readings.map(({ load }) => load));
  return pointSketch({
    title: "Height of the lip over load",
    row: "reading",
    x: x.label,
    y: y.label,
    points: pointsOf(readings, names, ({ load, height }) => ({ x: x.of(load), y: y.of(height) })),
    lines: fit
      ? fitted(loads.map((load) => ({ x: x.of(load), y: y.of(heightUnder(fit, load).height) })))
      : [],
  });
}
