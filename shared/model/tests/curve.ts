import { z } from "zod";
import { TESTS } from "../limits.ts";
import { quantity } from "../quantity.ts";
import { reference } from "../reference.ts";
import { type Inlined, instrument, openHoles, plate, setAside, testHead } from "./common.ts";
import { checkFlowReadings } from "./flow.ts";

export const curveRow = z.strictObject({
  speed: quantity("speed", TESTS.curve.rows.speed),
  pressure: quantity("pressure", TESTS.curve.rows.pressure),
  flow: quantity("flow", TESTS.curve.rows.flow).optional(),
  open: openHoles.optional(),
  voltage: quantity("voltage", TESTS.curve.rows.voltage).optional(),
  current: quantity("current", TESTS.curve.rows.current).optional(),
  torque: quantity("torque", TESTS.curve.rows.torque).optional(),
  density: quantity("density", TESTS.curve.rows.density).optional().describe("in the place of the day's air"),
  setAside,
});

/** Curve test: pressure against flow of one rotor, the flow known or taken from a bleed plate. */
export const curveTest = z
  .strictObject({
    kind: z.literal("curve"),
    ...testHead,
    rotor: reference("rotors"),
    diameter: quantity("length", TESTS.curve.diameter),
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

/** As fits read it: whatever it names of the book is described in its place. */
export type CurveTest = Inlined<z.output<typeof curveTest>>;
