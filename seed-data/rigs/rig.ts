import { bleedFlow } from "../../shared/fit/bleed.ts";
import { type Air, airFrom } from "../../shared/physics/air.ts";
import { frictionFromNoLoad, type MotorConstants, RPM } from "../../shared/physics/motor.ts";
import { noiseSource } from "../noise.ts";
import { MOTORS } from "../truth.ts";

export const DAY = { temperature: 291.15, pressure: 100400, humidity: 0.68 };
const DAY_AS_READ = {
  temperature: { value: 18, unit: "°C" },
  pressure: { value: 1004, unit: "hPa" },
  humidity: { value: 68, unit: "%" },
};
export const PLATE = [
  { diameter: 0.004, thickness: 0.003, count: 12 },
  { diameter: 0.01, thickness: 0.003, count: 36 },
];
export const PLATE_AS_READ = {
  holes: PLATE.map((kind) => ({
    diameter: { value: kind.diameter * 1000, unit: "mm" },
    thickness: { value: kind.thickness * 1000, unit: "mm" },
    count: kind.count,
    edge: "sharp",
  })),
};
/** what the invented plate lets through, against the tables for holes [-] */
const PLATE_TRUTH = 1.012;
const INVENTED = "Invented for the demo.";
export type Id<T> = keyof T & string;

/** @returns flow that the invented plate lets through with some of its holes open [m³/s] */
export function plateFlow(open: readonly number[], air: Air, pressure: number): number {
  const holes = PLATE.map((kind, k) => ({ ...kind, count: open[k] })).filter((kind) => kind.count > 0);
  if (holes.length === 0 || !(pressure > 0)) return 0;
  return PLATE_TRUTH * bleedFlow({ holes, air, pressure }).flow;
}

/** @returns constants of a motor as it really is, SI, kv in rpm/V */
export function motorTruth(id: Id<typeof MOTORS>): MotorConstants {
  const { kv, resistance, noLoadCurrent, viscousTorque } = MOTORS[id];
  return { kv, resistance, viscousTorque, frictionTorque: frictionFromNoLoad(kv, noLoadCurrent) };
}

/** Noisy instruments of the demo's bench, and what heads every test taken with them. */
export type Rig = ReturnType<typeof rigOf>;

/** @returns the instruments, reading the same numbers for the same seed */
export function rigOf(seed: number) {
  const { normal, read } = noiseSource(seed);
  return {
    normal,
    read,
    air: airFrom(DAY),
    head: (kind: string, title: string, date: string) => ({
      kind,
      title,
      date,
      air: DAY_AS_READ,
      note: INVENTED,
    }),
    volts: (value: number) => ({ value: read(value, 0.003, 0.01), unit: "V" }),
    amps: (value: number) => ({ value: read(value, 0.008, 0.01), unit: "A" }),
    rpm: (speed: number) => ({ value: read(speed / RPM, 0.003, 10), unit: "rpm" }),
    pascals: (value: number) => ({ value: read(value, 0.007, 1, 1.5), unit: "Pa" }),
  };
}
