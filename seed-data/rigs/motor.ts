import { torqueConstant } from "../../shared/physics/motor.ts";
import { MOTORS } from "../truth.ts";
import { type Id, motorTruth, type Rig } from "./rig.ts";

/** @returns a motor test at some supplies [V]: without load, and loaded to three shares of the stall current */
export function motor(
  { read, volts, amps, rpm, head }: Rig,
  id: Id<typeof MOTORS>,
  date: string,
  supplies: readonly number[],
  ohmmeter: boolean,
) {
  const truth = motorTruth(id);
  const k = torqueConstant(truth.kv);
  const row = (voltage: number, current: number, noLoad: boolean) => {
    const speed = (voltage - current * truth.resistance) / k;
    return { voltage: volts(voltage), current: amps(current), speed: rpm(speed), noLoad };
  };
  const idle = (voltage: number) =>
    (truth.frictionTorque + (truth.viscousTorque * voltage) / k) /
    (k + (truth.viscousTorque * truth.resistance) / k);
  const rows = supplies.flatMap((voltage) => [
    row(voltage, idle(voltage), true),
    ...[0.1, 0.18, 0.28].map((share) => row(voltage, (share * voltage) / truth.resistance, false)),
  ]);
  const resistance = ohmmeter ? { resistance: { value: read(truth.resistance, 0.02, 0.01), unit: "Ω" } } : {};
  return {
    ...head("motor", `${MOTORS[id].name}, ${supplies.length} voltages`, date),
    motor: id,
    ...resistance,
    instruments: { voltage: "multimeter-volts", current: "multimeter-amps", speed: "optical-tachometer" },
    rows,
  };
}
