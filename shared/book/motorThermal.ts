import type { Motor } from "../model/parts/motor.ts";
import { estimateThermalResistance } from "../physics/winding.ts";

/** How a motor's winding sheds its heat, and what that rests on. */
export interface MotorThermal {
  /** winding to air [K/W]; null: neither stated nor to be estimated, the winding is taken cold */
  readonly thermalResistance: number | null;
  /** of the winding [s]; null where it isn't stated, or no thermal resistance is known */
  readonly thermalTimeConstant: number | null;
  readonly basis: "stated" | "estimated" | "unknown";
}

const ESTIMATES = ["thermalResistance", "thermalTimeConstant"];

/** @returns the motor's thermal figures as stated, R_th estimated from the can's surface where it isn't; marked as estimated where either is a guess [K/W, s] */
export function motorThermal(motor: Motor): MotorThermal {
  const { diameter, length, thermalTimeConstant = null } = motor;
  if (motor.thermalResistance !== undefined) {
    const guessed = motor.estimated.some((path) => ESTIMATES.includes(path));
    const basis = guessed ? "estimated" : "stated";
    return { thermalResistance: motor.thermalResistance, thermalTimeConstant, basis };
  }
  if (diameter === undefined || length === undefined)
    return { thermalResistance: null, thermalTimeConstant: null, basis: "unknown" };
  const { thermalResistance } = estimateThermalResistance(diameter, length);
  return { thermalResistance, thermalTimeConstant, basis: "estimated" };
}
