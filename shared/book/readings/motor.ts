import type { MotorTest } from "../../model/tests/motor.ts";
import { RPM } from "../../physics/motor.ts";
import { toSI } from "../../units/quantity.ts";
import type { Reading } from "./reading.ts";

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
