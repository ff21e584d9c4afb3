import type { RotorReadingPoint } from "../../fit/rotorPoints.ts";
import type { ReadingUncertainty } from "../../fit/rotorWeights.ts";
import type { CurveTest } from "../../model/tests/curve.ts";
import { type MotorConstants, RPM, shaftTorque } from "../../physics/motor.ts";
import { toSI } from "../../units/quantity.ts";
import { type MeteredFlow, plateFlow } from "./plateFlow.ts";
import { airOfDay, instrumentUncertainty, maybe, type Reading } from "./reading.ts";

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
