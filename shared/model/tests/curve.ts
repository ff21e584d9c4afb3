import { z } from "zod";
import { quantity } from "../quantity.ts";
import { reference } from "../reference.ts";
import { instrument, openHoles, plate, setAside, testHead } from "./common.ts";
import { checkFlowReadings } from "./flow.ts";

export const curveRow = z.strictObject({
  speed: quantity("speed", { positive: true, max: 3e4 }),
  pressure: quantity("pressure", { min: -1e5, max: 1e5 }),
  flow: quantity("flow", { min: 0, max: 10 }).optional(),
  open: openHoles.optional(),
  voltage: quantity("voltage", { min: 0, max: 1000 }).optional(),
  current: quantity("current", { min: 0, max: 1000 }).optional(),
  torque: quantity("torque", { min: 0, max: 100 }).optional(),
  density: quantity("density", { min: 0.1, max: 5 }).optional().describe("in the place of the day's air"),
  setAside,
});

/** Curve test: pressure against flow of one rotor, the flow known or taken from a bleed plate. */
export const curveTest = z
  .strictObject({
    kind: z.literal("curve"),
    ...testHead,
    rotor: reference("rotors"),
    diameter: quantity("length", { positive: true, max: 2 }),
    motor: reference("motors")
      .nullable()
      .default(null)
      .describe("the motor that turned it: gives shaft power from its current"),
    flowFrom: z.enum(["bleed-plate", "known-flow"]),
    plate: plate.optional(),
    instruments: z
      .strictObject({
        pressure: instrument("pressure").optional(),
        flow: instrument("flow").optional(),
        speed: instrument("speed").optional(),
        current: instrument("current").optional(),
      })
      .default({}),
    rows: z.array(curveRow).min(1).max(5000),
  })
  .superRefine(checkFlowReadings);

export type CurveTest = z.output<typeof curveTest>;
