import type { CurveTest } from "../../../../shared/model/tests/curve.ts";
import type { DischargeTest } from "../../../../shared/model/tests/discharge.ts";
import type { FrictionTest } from "../../../../shared/model/tests/friction.ts";
import type { BenchTest } from "../../../../shared/model/tests/index.ts";
import type { LeakTest } from "../../../../shared/model/tests/leak.ts";
import type { MotorTest } from "../../../../shared/model/tests/motor.ts";
import type { PullTest } from "../../../../shared/model/tests/pull.ts";
import type { RideHeightTest } from "../../../../shared/model/tests/rideHeight.ts";
import { RUN_OUTCOMES, type RunLogTest } from "../../../../shared/model/tests/runLog.ts";
import type { ThrustTest } from "../../../../shared/model/tests/thrust.ts";
import type { WeighInTest } from "../../../../shared/model/tests/weighIn.ts";
import { asRead } from "../../../../shared/units/decimalMark.ts";
import type { DimensionName } from "../../../../shared/units/dimensions.ts";
import { THIN_SPACE } from "../../../../shared/units/format.ts";
import { type TypedQuantity, toSI } from "../../../../shared/units/quantity.ts";
import { counted } from "../../../ui/count.ts";
import { groupSpeeds } from "../record/speeds.ts";

/** As it was typed, with the sign that is as wide as a plus. */
const numeral = (value: number): string => asRead(String(value)).replace("-", "−");

const shown = ({ value, unit }: TypedQuantity): string =>
  unit === "°" ? `${numeral(value)}°` : `${numeral(value)}${THIN_SPACE}${unit}`;

/** @returns readings from the least to the greatest, as they were typed: "380–430 g" */
export function range(readings: readonly TypedQuantity[], dimension: DimensionName): string {
  const sorted = [...readings].sort((a, b) => toSI(a, dimension) - toSI(b, dimension));
  const least = sorted[0];
  const most = sorted[sorted.length - 1];
  if (least === undefined || most === undefined) return "";
  if (toSI(least, dimension) === toSI(most, dimension)) return shown(least);
  if (least.unit !== most.unit) return `${shown(least)} to ${shown(most)}`;
  return `${numeral(least.value)}${least.value < 0 ? " to " : "–"}${shown(most)}`;
}

const isGiven = <T>(value: T | null | undefined): value is T => value !== null && value !== undefined;

function pullLine(rows: PullTest["rows"]): string {
  if (rows.length === 0) return "";
  const held = range(
    rows.map((row) => row.held),
    "load",
  );
  const letGo = rows.map((row) => row.letGo).filter(isGiven);
  const count = rows.length > 1 ? `${counted(rows.length, "pull")}: ` : "";
  const end = letGo.length === 0 ? "never pulled off" : `let go at ${range(letGo, "load")}`;
  return `${count}held ${held}, ${end}`;
}

/** Fewer points than this a speed: nobody set those speeds, the load moved them. A judgement. */
const LEAST_PER_SPEED = 3;

function curveLine(rows: CurveTest["rows"]): string {
  const groups = groupSpeeds(rows.map((row) => toSI(row.speed, "speed"))).length;
  const wandered = groups > 1 && groups > rows.length / LEAST_PER_SPEED;
  const speeds = rows.map((row) => row.speed);
  return `${counted(rows.length, "point")}, ${wandered ? range(speeds, "speed") : counted(groups, "speed")}`;
}

function motorLine(rows: MotorTest["rows"]): string {
  const free = rows.filter((row) => row.noLoad).length;
  const voltages = range(
    rows.map((row) => row.voltage),
    "voltage",
  );
  return [counted(rows.length, "run"), voltages, free > 0 ? `${free} without load` : ""]
    .filter(Boolean)
    .join(", ");
}

function leakLine(rows: LeakTest["rows"]): string {
  const pressures = range(
    rows.map((row) => row.pressure),
    "pressure",
  );
  return [counted(rows.length, "point"), pressures].filter(Boolean).join(", ");
}

function frictionLine(rows: FrictionTest["rows"]): string {
  const slid = rows.map((row) => row.slid).filter(isGiven);
  const held = rows.map((row) => row.held).filter(isGiven);
  if (slid.length > 0) return `${counted(rows.length, "slide")}, slid at ${range(slid, "angle")}`;
  return `${counted(rows.length, "slide")}, held ${range(held, "angle")}, never slid`;
}

function thrustLine(rows: ThrustTest["rows"]): string {
  const thrusts = range(
    rows.map((row) => row.thrust),
    "load",
  );
  const speeds = range(
    rows.map((row) => row.speed),
    "speed",
  );
  return `${counted(rows.length, "reading")}, ${thrusts} at ${speeds}`;
}

function dischargeLine(rows: DischargeTest["rows"]): string {
  const voltages = range(
    rows.map((row) => row.voltage),
    "voltage",
  );
  const drawn = rows.map((row) => row.charge).filter(isGiven);
  const most = drawn.reduce<TypedQuantity | null>(
    (least, each) => (least && toSI(least, "charge") >= toSI(each, "charge") ? least : each),
    null,
  );
  const rests = rows.filter((row) => toSI(row.current, "current") === 0).length;
  return [
    counted(rows.length, "reading"),
    voltages,
    most ? `${shown(most)} drawn` : "",
    rests > 0 ? `${rests} at rest` : "",
  ]
    .filter(Boolean)
    .join(", ");
}

function rideHeightLine(rows: RideHeightTest["rows"]): string {
  const heights = range(
    rows.map((row) => row.height),
    "length",
  );
  const loads = range(
    rows.map((row) => row.load),
    "load",
  );
  return `${counted(rows.length, "reading")}, ${heights} under ${loads}`;
}

function weighInLine(rows: WeighInTest["rows"]): string {
  const readings = range(
    rows.map((row) => row.reading),
    "load",
  );
  return rows.length > 1 ? `${counted(rows.length, "reading")}, ${readings}` : readings;
}

/** What happened how often, the falls first. */
function runLine(rows: RunLogTest["rows"]): string {
  const most = rows.map((row) => row.time).filter(isGiven);
  const outcomes = RUN_OUTCOMES.toReversed().flatMap((outcome) => {
    const ended = rows.filter((row) => row.outcome === outcome);
    const at = range(
      ended.map((row) => row.angle),
      "angle",
    );
    return ended.length > 0 ? [`${outcome} at ${at}`] : [];
  });
  return [...outcomes, most.length > 0 ? `${range(most, "time")} in` : ""].filter(Boolean).join(", ");
}

function lineOf(test: BenchTest): string {
  switch (test.kind) {
    case "pull":
      return pullLine(test.rows.filter(counts));
    case "curve":
      return curveLine(test.rows.filter(counts));
    case "motor":
      return motorLine(test.rows.filter(counts));
    case "leak":
      return leakLine(test.rows.filter(counts));
    case "friction":
      return frictionLine(test.rows.filter(counts));
    case "discharge":
      return dischargeLine(test.rows.filter(counts));
    case "thrust":
      return thrustLine(test.rows.filter(counts));
    case "ride-height":
      return rideHeightLine(test.rows.filter(counts));
    case "weigh-in":
      return weighInLine(test.rows.filter(counts));
    case "run-log":
      return runLine(test.rows.filter(counts));
  }
}

const counts = (row: { readonly setAside?: string }): boolean => row.setAside === undefined;

/** What a test found, in one line, from the readings as typed: "held 410 g, let go at 430 g". */
export function resultLine(test: BenchTest): string {
  const rows: readonly { readonly setAside?: string }[] = test.rows;
  const aside = rows.filter((row) => !counts(row)).length;
  if (aside === rows.length) return "every row is set aside";
  return aside > 0 ? `${lineOf(test)}; ${aside} set aside` : lineOf(test);
}
