import type { MotorBasis } from "../../../../shared/book/motorBasis.ts";
import type { MotorFit } from "../../../../shared/fit/motorFit.ts";
import { formatFixed, formatQuantity } from "../../../../shared/units/format.ts";
import { counted } from "../../../ui/count.ts";
import type { MotorPage } from "./motorData.ts";

const PERCENT = 100;

/** @returns "7 810 ± 40 rpm/V": digits by the standard error where one is known */
export function withError(value: number, error: number | null, name: "kv" | "resistance"): string {
  if (error === null) return formatQuantity(value, name);
  const text = formatQuantity(value, name, { uncertainty: error });
  const [number, ...unit] = text.split("\u202f").length > 1 ? splitUnit(text) : [text];
  const plain = splitUnit(formatQuantity(error, name, { uncertainty: error }))[0];
  return `${number} ± ${plain}\u202f${unit.join("")}`;
}

function splitUnit(text: string): [string, string] {
  const at = text.lastIndexOf("\u202f");
  return [text.slice(0, at), text.slice(at + 1)];
}

/** @returns the winding's resistance with its uncertainty, or that an ohmmeter gave it */
export function resistanceText({ resistance, standardErrors }: MotorFit): string {
  const given = standardErrors.resistance === null && standardErrors.kv !== null;
  const text = withError(resistance, standardErrors.resistance, "resistance");
  return given ? `${text} by ohmmeter` : text;
}

/** @returns the answer of a motor's page, made from its tests */
export function motorSentence({ motor, basis, tests, points }: MotorPage): string {
  const { name } = motor.data;
  const { fit, constants } = basis;
  const used = points.filter((point) => point.aside === null && point.fullThrottle).length;
  if (tests.length === 0)
    return `No motor test of ${name} is logged: its maker's ${formatQuantity(constants.kv, "kv")} and ${formatQuantity(constants.resistance, "resistance")} are used.`;
  if (!fit) return `The tests of ${name} don't settle its constants yet: its maker's figures are used.`;
  const kv = withError(fit.kv, fit.standardErrors.kv, "kv");
  const resistance = resistanceText(fit);
  return `${name} turns at ${kv} and has ${resistance}, from ${counted(used, "row")} of ${counted(tests.length, "test")}.`;
}

/** @returns the throttle at which the motor begins to turn, with its uncertainty; null where no sweep shows it */
export function throttleText({ throttle }: MotorBasis): string | null {
  if (!throttle) return null;
  const percent = (share: number) => formatFixed(PERCENT * share, 1);
  const error = throttle.standardError === null ? "" : ` ± ${percent(throttle.standardError)}`;
  return `${percent(throttle.offset)}${error}\u202f%`;
}

/** @returns a friction torque in millinewton metres, and what no-load current it draws */
export function frictionText(torque: number, viscous: number): string {
  const still = formatQuantity(torque, "torque", { decimals: 3 });
  return viscous > 0 ? `${still} + ${formatFixed(viscous * 1e9, 1)}\u202fnN·m·s × ω` : still;
}
