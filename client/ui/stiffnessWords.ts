import type { StiffnessBasis } from "../../shared/book/stiffnessBasis.ts";
import { decimalsFor, formatFixed, inUnit, withUnit } from "../../shared/units/format.ts";
import { unitOf } from "../../shared/units/showing.ts";
import { counted } from "./count.ts";

const DIGITS = 3;

/** @returns "6.2 ± 0.4 N/mm": as many digits as show two of the uncertainty */
export function stiffnessText(stiffness: number, uncertainty: number | null): string {
  const [k, error] = [stiffness, uncertainty ?? 0].map((each) => inUnit(each, "stiffness"));
  const decimals =
    error > 0 ? Math.min(decimalsFor(error, 2), decimalsFor(k, DIGITS)) : decimalsFor(k, DIGITS);
  const spread = error > 0 ? ` ± ${formatFixed(error, decimals)}` : "";
  return withUnit(formatFixed(k, decimals) + spread, unitOf("stiffness"));
}

/** @returns "gives by 6.2 ± 0.4 N/mm, from 1 ride-height test"; null where it is taken as rigid */
export function stiffnessWords({ basis, value, uncertainty, testIds }: StiffnessBasis): string | null {
  if (value === null) return null;
  const said = basis === "stated" ? "as stated" : `from ${counted(testIds.length, "ride-height test")}`;
  return `gives by ${stiffnessText(value, uncertainty)}, ${said}`;
}
