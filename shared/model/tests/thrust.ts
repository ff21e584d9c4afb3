import { z } from "zod";
import { TESTS } from "../limits.ts";
import { quantity } from "../quantity.ts";
import { reference } from "../reference.ts";
import { type Inlined, instrument, setAside, testHead } from "./common.ts";

export const thrustRow = z.strictObject({
  speed: quantity("speed", TESTS.thrust.rows.speed),
  thrust: quantity("load", TESTS.thrust.rows.thrust).describe("towards the surface, as the scale shows it"),
  torque: quantity("torque", TESTS.thrust.rows.torque).optional(),
  current: quantity("current", TESTS.thrust.rows.current)
    .optional()
    .describe("of the motor at full throttle; with its constants it gives shaft power"),
  voltage: quantity("voltage", TESTS.thrust.rows.voltage).optional(),
  throttle: quantity("fraction", TESTS.thrust.rows.throttle)
    .default({ value: 100, unit: "%" })
    .describe("below 100 % the current read is not the motor's and gives no shaft power"),
  setAside,
});

/** Thrust test: an open propeller on a scale, thrust against speed, shaft power from torque or from the motor's current. */
export const thrustTest = z.strictObject({
  kind: z.literal("thrust"),
  ...testHead,
  rotor: reference("rotors").describe("the propeller"),
  diameter: quantity("length", TESTS.thrust.diameter),
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

/** As fits read it: whatever it names of the book is described in its place. */
export type ThrustTest = Inlined<z.output<typeof thrustTest>>;
