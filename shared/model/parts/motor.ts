import { z } from "zod";
import { MOTOR } from "../limits.ts";
import { name, nonNegative, note, positive, retired, within } from "../scalar.ts";
import { statedOf } from "../stated.ts";

const figures = {
  kv: positive("rpm/V", MOTOR.kv).optional(),
  resistance: positive("Ω at 20 °C, terminal to terminal", MOTOR.resistance).optional(),
  noLoadCurrent: nonNegative("A", MOTOR.noLoadCurrent).optional(),
  viscousTorque: nonNegative("N·m·s/rad", MOTOR.viscousTorque).default(0),
  thermalResistance: positive("K/W, winding to air", MOTOR.thermalResistance).optional(),
  thermalTimeConstant: positive("s", MOTOR.thermalTimeConstant).optional(),
  windingLimit: within("K", MOTOR.windingLimit).optional(),
  ratedVoltage: positive("V", MOTOR.ratedVoltage).optional(),
  maxCurrent: positive("A", MOTOR.maxCurrent).optional(),
  mass: nonNegative("kg", MOTOR.mass).optional(),
  diameter: positive("m", MOTOR.diameter).optional(),
  length: positive("m", MOTOR.length).optional(),
  price: nonNegative("any currency").optional(),
  leadTime: nonNegative("days until it is there", MOTOR.leadTime).optional(),
};

/** A motor as its maker states it; motor tests logged for it take the place of the stated constants, and give those that no one states. */
export const motor = z.strictObject({
  name: name(),
  ...figures,
  ...statedOf(figures),
  note: note(),
  retired: retired(),
});

export type Motor = z.output<typeof motor>;
