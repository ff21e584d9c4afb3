import { z } from "zod";
import { TESTS } from "../limits.ts";
import { quantity } from "../quantity.ts";
import { reference } from "../reference.ts";
import { type Inlined, instrument, setAside, testHead } from "./common.ts";

export const pullRow = z
  .strictObject({
    held: quantity("load", TESTS.pull.rows.held).describe("largest load that held; 0 if it let go at once"),
    letGo: quantity("load", TESTS.pull.rows.letGo)
      .nullable()
      .describe("smallest load that let go; null if stopped before"),
    voltage: quantity("voltage", TESTS.pull.rows.voltage)
      .optional()
      .describe("at the pack's terminals, fan running"),
    gap: quantity("length", TESTS.pull.rows.gap)
      .optional()
      .describe("shim under the skirt, in the place of its set gap"),
    setAside,
  })
  .describe("one pull: a bracket of loads");

/** Pull test: loads that held and loads that let go, with the parts and the rig they were taken on. */
export const pullTest = z.strictObject({
  kind: z.literal("pull"),
  ...testHead,
  rotor: reference("rotors"),
  diameter: quantity("length", TESTS.pull.diameter),
  motor: reference("motors"),
  pack: reference("packs"),
  skirt: reference("skirts"),
  surface: reference("surfaces"),
  direction: z
    .enum(["straight-off", "along", "ceiling"])
    .describe("straight off the surface, along it, or hung from the ceiling"),
  rigMass: quantity("mass", TESTS.pull.rigMass).describe("mass of what hangs on the skirt besides the load"),
  duty: quantity("fraction", TESTS.pull.duty)
    .default({ value: 100, unit: "%" })
    .describe("throttle as it was set; a sweep in the motor's tests shows where it begins to turn"),
  charge: quantity("fraction", TESTS.pull.charge)
    .optional()
    .describe("state of charge, where no voltage was read"),
  instruments: z
    .strictObject({ load: instrument("load").optional(), voltage: instrument("voltage").optional() })
    .default({}),
  rows: z.array(pullRow).min(1).max(1000),
});

/** As fits read it: whatever it names of the book is described in its place. */
export type PullTest = Inlined<z.output<typeof pullTest>>;
