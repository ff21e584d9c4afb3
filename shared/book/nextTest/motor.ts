import type { MotorTest } from "../../model/tests/motor.ts";
import { RPM, torqueConstant } from "../../physics/motor.ts";
import { predictAny } from "../../physics/predictAny.ts";
import { findById } from "../book.ts";
import { solvable } from "../resolve.ts";
import { type Asked, type Planned, plannedHead, scatter, withTest } from "./planned.ts";

/** Voltages, and loads as parts of the stall current. Judgement. */
const VOLTAGES = [0.6, 0.8, 1];
const LOADS = [0.1, 0.2, 0.3];
/** What single readings of speed scatter by [-]. Judgement. */
const SCATTER = 0.004;

/** @returns a motor test without load and under three loads at three voltages, by the constants now held true; null without a voltage */
export function plannedMotor({ book, build, resolved }: Asked): Planned | null {
  const motor = findById(book.motors, build.motor)?.data;
  const input = solvable(resolved);
  const point = input && predictAny(input, []).point;
  if (!motor || !input || !point || !resolved.motor) return null;
  const { kv, resistance, frictionTorque, viscousTorque } = resolved.motor.constants;
  const k = torqueConstant(kv);
  const most = build.supply.duty * point.packVoltage;
  const idle = (voltage: number) =>
    (frictionTorque + (viscousTorque * voltage) / k) / (k + (viscousTorque * resistance) / k);
  const asked = VOLTAGES.flatMap((share) => {
    const voltage = share * most;
    const loads = LOADS.map((load) => ({ voltage, current: (load * voltage) / resistance, noLoad: false }));
    return [{ voltage, current: idle(voltage), noLoad: true }, ...loads];
  });
  const zs = scatter(asked.length);
  const rows = asked.map(({ voltage, current, noLoad }, i) => ({
    voltage: { value: voltage, unit: "V" },
    current: { value: current, unit: "A" },
    speed: { value: (((voltage - current * resistance) / k) * (1 + SCATTER * zs[i])) / RPM, unit: "rpm" },
    noLoad,
    throttle: { value: 100, unit: "%" },
  }));
  const test: MotorTest = { kind: "motor", ...plannedHead, motor: build.motor, instruments: {}, rows };
  return {
    key: "motor",
    kind: "motor",
    title: `Motor test of ${motor.name}, three voltages, free and under three loads`,
    takes: "a bench supply, three brakes or fans that load it differently, tachometer; 15 minutes",
    book: withTest(book, "motor", test),
    build,
  };
}
