import { formatQuantity } from "../../units/format.ts";

/** @returns what a planned curve test is called; the diameter [m] as it is shown */
export const curveTitle = (rotor: string, diameter: number): string =>
  `Curve test of ${rotor}, ${formatQuantity(diameter, "length", { decimals: 1 })}, nine readings from blocked to open`;
