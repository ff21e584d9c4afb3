import { torqueAt, voltageBands } from "../../../../shared/fit/motorBands.ts";
import { RPM, torqueConstant } from "../../../../shared/physics/motor.ts";
import { formatFixed, inUnit } from "../../../../shared/units/format.ts";
import { headed } from "../../../../shared/units/showing.ts";
import { axisOver } from "../../../charts/model/axis.ts";
import type { Band, Bracket, Line, Mark, Plot } from "../../../charts/model/plot.ts";
import { testName } from "../typed.ts";
import type { MotorPage, MotorPoint } from "./motorData.ts";
import { currentAt, usualVoltage } from "./motorFacts.ts";

const STEPS = 40;
const BEYOND = 1.08;
const MILLI = 1000;

const speedShown = (rpm: number) => inUnit(rpm * RPM, "speed");
const torqueShown = (torque: number) => inUnit(torque, "torque");
const fastest = (page: MotorPage) => Math.max(1, ...page.points.map((point) => point.rpm));

function speeds(page: MotorPage): number[] {
  const end = fastest(page) * BEYOND;
  return Array.from({ length: STEPS + 1 }, (_, i) => (end * i) / STEPS);
}

function markOf(point: MotorPoint, y: number, tone: Mark["tone"] = "rotor"): Mark {
  const { key, test, rpm, aside } = point;
  const out = aside !== null || !point.fullThrottle;
  return { key, x: speedShown(rpm), y, shape: test, tone, aside: out, outlier: false };
}

const shapesOf = (page: MotorPage) =>
  page.tests.map((test, shape) => ({ key: test.id, shape, text: testName(test) }));

function backEmfLine(page: MotorPage): Line {
  const perRpm = torqueConstant(page.basis.constants.kv) * RPM;
  return {
    key: "back-emf",
    tone: "rotor",
    style: page.basis.fit ? "solid" : "dashed",
    points: speeds(page).map((rpm) => ({ x: speedShown(rpm), y: perRpm * rpm })),
    label: page.basis.fit ? "back-EMF, fitted" : "back-EMF, as stated",
  };
}

/** Band of the back-EMF line: the standard error of K_v times t. */
function backEmfBand(page: MotorPage, quantile: number): Band[] {
  const error = page.basis.fit?.standardErrors.kv;
  if (!error) return [];
  const { kv } = page.basis.constants;
  const perRpm = torqueConstant(kv) * RPM;
  const share = (quantile * error) / kv;
  const points = speeds(page).map((rpm) => ({
    x: speedShown(rpm),
    lo: perRpm * rpm * (1 - share),
    hi: perRpm * rpm * (1 + share),
  }));
  return [{ key: "kv", tone: "rotor", strength: "mean", points }];
}

/** Voltage against speed: the reading above, what the winding's resistance leaves of it on the back-EMF line, the drop between as a bar. */
export function voltagePlot(page: MotorPage, quantile: number): Plot {
  const drops = page.points.map((point): Bracket => {
    const { key, rpm, backEmf, voltage, aside, fullThrottle } = point;
    return {
      key: `${key}-drop`,
      along: "y",
      at: speedShown(rpm),
      lo: backEmf,
      hi: voltage,
      tone: "quiet",
      aside: aside !== null || !fullThrottle,
    };
  });
  const line = backEmfLine(page);
  return {
    x: axisOver(headed("speed", "speed"), [speedShown(fastest(page) * BEYOND)], [0]),
    y: axisOver("voltage, V", [...page.points.map((p) => p.voltage), ...line.points.map((p) => p.y)], [0]),
    bands: backEmfBand(page, quantile),
    lines: [line],
    brackets: drops,
    marks: page.points.map((point) => markOf(point, point.backEmf)),
    shapes: shapesOf(page),
  };
}

/** Current against speed, with what friction alone draws. */
export function currentPlot(page: MotorPage): Plot {
  const { kv, frictionTorque, viscousTorque } = page.basis.constants;
  const perAmpere = torqueConstant(kv);
  const free: Line = {
    key: "free",
    tone: "leak",
    style: "long",
    points: speeds(page).map((rpm) => ({
      x: speedShown(rpm),
      y: (frictionTorque + viscousTorque * rpm * RPM) / perAmpere,
    })),
    label: "friction alone",
  };
  return {
    x: axisOver(headed("speed", "speed"), [speedShown(fastest(page) * BEYOND)], [0]),
    y: axisOver("current, A", [...page.points.map((p) => p.current), ...free.points.map((p) => p.y)], [0]),
    lines: [free],
    marks: page.points.map((point) => markOf(point, point.current)),
    shapes: shapesOf(page),
  };
}

/** Bands of the fitted voltage along the speed, at the current that the motor draws there at the highest voltage [mV]. */
function voltageBandsOf(page: MotorPage): Band[] {
  const { fit } = page.basis;
  if (!fit) return [];
  const voltage = usualVoltage(page);
  return (["prediction", "mean"] as const).map((strength) => ({
    key: strength,
    tone: "rotor",
    strength,
    points: speeds(page).map((rpm) => {
      const current = Math.max(0, currentAt(fit.voltage, voltage, rpm));
      const half = MILLI * (voltageBands(fit.voltage, { current, rpm })?.[strength] ?? Number.NaN);
      return { x: speedShown(rpm), lo: -half, hi: half };
    }),
  }));
}

/** Shaft torque against speed at the highest voltage, with its band; each row brought to that voltage along its own residual. */
export function torquePlot(page: MotorPage): Plot {
  const { fit, constants } = page.basis;
  const voltage = usualVoltage(page);
  const { kv, resistance, frictionTorque, viscousTorque } = constants;
  const perAmpere = torqueConstant(kv);
  const lost = (rpm: number) => frictionTorque + viscousTorque * rpm * RPM;
  const along = speeds(page).map((rpm) => {
    const plain = (perAmpere * (voltage - perAmpere * RPM * rpm)) / resistance - lost(rpm);
    const { low, high } = fit
      ? torqueAt(fit.voltage, constants, voltage, rpm).mean
      : { low: Number.NaN, high: Number.NaN };
    return { x: speedShown(rpm), y: torqueShown(plain), lo: torqueShown(low), hi: torqueShown(high) };
  });
  const seen = along.filter(({ y }) => y >= 0);
  const marks = page.points
    .filter((point) => point.fullThrottle)
    .map((point) =>
      markOf(
        point,
        torqueShown((perAmpere * (voltage - point.backEmf)) / resistance - lost(point.rpm)),
        "rotor",
      ),
    );
  return {
    x: axisOver(headed("speed", "speed"), [speedShown(fastest(page) * BEYOND)], [0]),
    y: axisOver(
      headed(`shaft torque at ${formatFixed(voltage, 1)}\u202fV`, "torque"),
      seen.map(({ y }) => y),
      [0],
    ),
    bands: fit ? [{ key: "torque", tone: "rotor", strength: "mean", points: along }] : [],
    lines: [{ key: "torque", tone: "rotor", style: fit ? "solid" : "dashed", points: along }],
    marks,
    shapes: shapesOf(page),
  };
}

/** What the constants miss each reading by. */
export function motorResidualPlot(page: MotorPage): Plot {
  const marks = page.points
    .filter((point) => point.fullThrottle)
    .map((point) => markOf(point, point.residual * MILLI));
  const most = Math.max(1, ...marks.filter((mark) => !mark.aside).map((mark) => Math.abs(mark.y)));
  return {
    x: axisOver(headed("speed", "speed"), [speedShown(fastest(page) * BEYOND)], [0]),
    y: axisOver("residual, mV", [-most, most]),
    bands: voltageBandsOf(page),
    levels: [{ key: "zero", along: "x", at: 0, tone: "quiet" }],
    marks,
    shapes: shapesOf(page),
    namedAbove: true,
  };
}
