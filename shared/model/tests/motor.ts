import { z } from "zod";
import { quantity } from "../quantity.ts";
import { reference } from "../reference.ts";
import { instrument, setAside, testHead } from "./common.ts";

export const motorRow = z.strictObject({
  voltage: quantity("voltage", { min: 0, max: 1000 }).describe("at the driver or the motor, under load"),
  current: quantity("current", { min: 0, max: 1000 }),
  speed: quantity("speed", { min: 0, max: 3e4 }).describe("0 = blocked"),
  noLoad: z.boolean().default(false).describe("nothing on the shaft"),
  throttle: quantity("fraction", { min: 0, max: 1 }).default({ value: 100, unit: "%" }),
  setAside,
});

/** Motor test: voltage, current and speed under several loads, without load, and an ohmmeter's reading where there is one. */
export const motorTest = z.strictObject({
  kind: z.literal("motor"),
  ...testHead,
  motor: reference("motors"),
  resistance: quantity("resistance", { positive: true, max: 1e4 })
    .optional()
    .describe("ohmmeter, leads taken off"),
  instruments: z
    .strictObject({
      voltage: instrument("voltage").optional(),
      current: instrument("current").optional(),
      speed: instrument("speed").optional(),
    })
    .default({}),
  rows: z.array(motorRow).min(1).max(5000),
});

export type MotorTest = z.output<typeof motorTest>;
