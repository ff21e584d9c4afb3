import { z } from "zod";
import { TESTS } from "../limits.ts";
import { quantity } from "../quantity.ts";
import { reference } from "../reference.ts";
import { type Inlined, instrument, setAside, testHead } from "./common.ts";

export const motorRow = z.strictObject({
  voltage: quantity("voltage", TESTS.motor.rows.voltage).describe(
    "at the speed controller or the motor, under load",
  ),
  current: quantity("current", TESTS.motor.rows.current),
  speed: quantity("speed", TESTS.motor.rows.speed).describe("0 = blocked"),
  noLoad: z.boolean().default(false).describe("nothing on the shaft"),
  throttle: quantity("fraction", TESTS.motor.rows.throttle).default({ value: 100, unit: "%" }),
  setAside,
});

/** Motor test: voltage, current and speed under several loads, without load, and an ohmmeter's reading where there is one. */
export const motorTest = z.strictObject({
  kind: z.literal("motor"),
  ...testHead,
  motor: reference("motors"),
  resistance: quantity("resistance", TESTS.motor.resistance).optional().describe("ohmmeter, leads taken off"),
  instruments: z
    .strictObject({
      voltage: instrument("voltage").optional(),
      current: instrument("current").optional(),
      speed: instrument("speed").optional(),
    })
    .default({}),
  rows: z.array(motorRow).min(1).max(5000),
});

/** As fits read it: whatever it names of the book is described in its place. */
export type MotorTest = Inlined<z.output<typeof motorTest>>;
