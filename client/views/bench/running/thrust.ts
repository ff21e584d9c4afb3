import type { Book } from "../../../../shared/book/book.ts";
import { findById } from "../../../../shared/book/book.ts";
import { motorBasis } from "../../../../shared/book/motorBasis.ts";
import { chordOf } from "../../../../shared/book/propellerBasis.ts";
import { inUse, type Reading } from "../../../../shared/book/readings/reading.ts";
import { type ThrustReading, thrustReadings } from "../../../../shared/book/readings/thrust.ts";
import { driftOverRange } from "../../../../shared/fit/propellerBands.ts";
import { fitPropeller, type PropellerFit } from "../../../../shared/fit/propellerFit.ts";
import type { ThrustTest } from "../../../../shared/model/tests/thrust.ts";
import { STANDARD_AIR_DENSITY } from "../../../../shared/physics/constants.ts";
import { propellerCoefficients } from "../../../../shared/physics/fanlaws/propeller.ts";
import { RPM } from "../../../../shared/physics/motor.ts";
import { formatQuantity } from "../../../../shared/units/format.ts";
import { toSI } from "../../../../shared/units/parse.ts";
import {
  attempt,
  digits,
  type Figure,
  NOTHING_YET,
  type RowName,
  type Running,
  withError,
} from "./result.ts";
import { thrustSketch } from "./sketches.ts";

function rowText(reading: ThrustReading): string {
  const { thrust, shaftPower, diameter, rpm, density = STANDARD_AIR_DENSITY } = reading;
  const state = { diameter, speed: rpm * RPM, density };
  const found = propellerCoefficients({ thrust, shaftPower: shaftPower ?? null }, state);
  const level = `C_T\u00a0${digits(found.thrust)}`;
  if (found.power !== null) return `${level} C_P\u00a0${digits(found.power)}`;
  return reading.fullThrottle || reading.current === null
    ? level
    : `${level}, no C_P: throttle below 100\u00a0%`;
}

function driftText(fit: PropellerFit): string {
  const drift = driftOverRange(fit, "thrust") ?? 0;
  if (drift === 0) return "none shown";
  return `${drift > 0 ? "+" : ""}${digits(100 * drift, 2)} % over the speeds tested`;
}

function figuresOf(fit: PropellerFit): Figure[] {
  return [
    { label: "C_T", text: withError(fit.thrust[0], fit.standardErrors.thrust) },
    {
      label: "C_P",
      text: fit.power
        ? withError(fit.power[0], fit.standardErrors.power)
        : "not yet: needs torque, or current and motor",
    },
    { label: "Drift of C_T", text: driftText(fit) },
    {
      label: "Residuals of the thrust",
      text: fit.dof.thrust > 0 ? formatQuantity(fit.residualSd.thrust, "load", { digits: 2 }) : "–",
    },
  ];
}

/** What would tell more, once the readings answer at all. */
function wish(test: ThrustTest, fit: PropellerFit, used: readonly Reading<ThrustReading>[]): string | null {
  if (!fit.power) {
    if (used.some((reading) => reading.current !== null) && !test.motor)
      return "Name the motor that turned it: shaft power follows from its current.";
    return "Log the motor's current at full throttle, or the torque: without shaft power no build can be answered for.";
  }
  const blind = fit.warnings.some((note) => note.code === "no-drift-seen");
  return blind
    ? "Read another speed, by the supply's voltage: with three or more a drift of the coefficients can be seen."
    : null;
}

/** C_T and C_P so far, row by row and fitted, and what to measure next. */
export function runThrust(test: ThrustTest, names: readonly RowName[], book: Book): Running {
  if (test.diameter === undefined) return { ...NOTHING_YET, next: "Give the propeller's diameter." };
  if (test.rows.length === 0)
    return { ...NOTHING_YET, next: "Type a first reading: speed, thrust, and the motor's current." };
  const motor = test.motor ? (motorBasis(book, test.motor)?.constants ?? null) : null;
  const diameter = toSI(test.diameter, "length");
  const rotor = findById(book.rotors, test.rotor);
  const chord = rotor && !chordOf(rotor).assumed ? chordOf(rotor).ratio * diameter : undefined;
  const readings = thrustReadings(test, motor);
  const { found, next } = attempt(() => ({
    byRow: new Map(readings.map((reading, i) => [names[i].key, rowText(reading)])),
  }));
  const used = inUse(readings);
  const fitted = attempt(() => fitPropeller({ diameter, chord, rows: used }));
  const fit = fitted.found;
  return {
    figures: fit ? figuresOf(fit) : [],
    byRow: found?.byRow ?? new Map(),
    next: next ?? fitted.next ?? (fit && wish(test, fit, used)),
    notes: fit?.warnings.map((note) => note.message) ?? [],
    sketch: thrustSketch(readings, fit, names),
  };
}
