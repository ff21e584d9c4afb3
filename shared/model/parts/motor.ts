import { z } from "zod";
import { name, nonNegative, note, positive, within } from "../scalar.ts";
import { statedOf } from "../stated.ts";

const figures = {
  kv: positive("rpm/V", 1e6).optional(),
  resistance: positive("Ω at 20 °C, terminal to terminal", 1e4).optional(),
  noLoadCurrent: nonNegative("A", 1e3).optional(),
  viscousTorque: nonNegative("N·m·s/rad", 1).default(0),
  thermalResistance: positive("K/W, winding to air", 1e4).optional(),
  thermalTimeConstant: positive("s", 1e5).optional(),
  windingLimit: within("K", 273.15, 600).optional(),
  ratedVoltage: positive("V", 1e3).optional(),
  maxCurrent: positive("A", 1e3).optional(),
  mass: nonNegative("kg", 50).optional(),
  diameter: positive("m", 1).optional(),
  length: positive("m", 1).optional(),
  price: nonNegative("any currency").optional(),
};

/** A motor as its maker states it; motor tests logged for it take the place of the stated constants, and give those that no one states. */
export const motor = z.strictObject({
  name: name(),
  ...figures,
  ...statedOf(figures),
  note: note(),
});

export type Motor = z.output<typeof motor>;
