import { z } from "zod";
import { quantity } from "../quantity.ts";
import { reference } from "../reference.ts";
import { instrument, setAside, testHead } from "./common.ts";

export const thrustRow = z.strictObject({
  speed: quantity("speed", { positive: true, max: 3e4 }),
  thrust: quantity("load", { min: -1e5, max: 1e5 }).describe("towards the surface, as the scale shows it"),
  torque: quantity("torque", { min: 0, max: 100 }).optional(),
  current: quantity("current", { min: 0, max: 1000 })
    .optional()
    .describe("of the motor at full throttle; with its constants it gives shaft power"),
  voltage: quantity("voltage", { min: 0, max: 1000 }).optional(),
  throttle: quantity("fraction", { min: 0, max: 1 })
    .default({ value: 100, unit: "%" })
    .describe("below 100 % the current read is not the motor's and gives no shaft power"),
  setAside,
});

/** Thrust test: an open propeller on a scale, thrust against speed, shaft power from torque or from the motor's current. */
export const thrustTest = z.strictObject({
  kind: z.literal("thrust"),
  ...testHead,
  rotor: reference("rotors").describe("the propeller"),
  diameter: quantity("length", { positive: true, max: 2 }),
  motor: reference("motors")
    .nullable()
    .default(null)
    .describe("the motor that turned it: gives shaft power from its current"),
  instruments: z
    .strictObject({
      thrust: instrument("load").optional(),
      speed: instrument("speed").optional(),
      torque: instrument("torque").optional(),
      current: instrument("current").optional(),
    })
    .default({}),
  rows: z.array(thrustRow).min(1).max(5000),
});

export type ThrustTest = z.output<typeof thrustTest>;
