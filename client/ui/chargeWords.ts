import { formatFixed } from "../../shared/units/format.ts";

const PERCENT = 100;
/** A charge that rounds to 100 % is a full one. */
const FULL = 0.995;

/** @returns the charge from which minutes are counted, "a full charge", "80 % charge" */
export function chargeText(charge: number): string {
  return charge >= FULL ? "a full charge" : `${formatFixed(charge * PERCENT, 0)}\u202f% charge`;
}
