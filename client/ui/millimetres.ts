import { asRead } from "../../shared/units/decimalMark.ts";
import { inUnit } from "../../shared/units/format.ts";

/** @returns a length in metres as a maker would type it, "42 mm" */
export function millimetres(metres: number): string {
  return `${asRead(String(Number(inUnit(metres, "length", "mm").toPrecision(6))))} mm`;
}
