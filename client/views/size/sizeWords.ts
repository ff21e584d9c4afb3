import type { RotorKind } from "../../../shared/book/size/families.ts";
import type { LimitKey } from "../../../shared/decide/limits/limit.ts";
import type { SizeRow } from "../../../shared/decide/size/row.ts";
import { marginText, pullText, timeText } from "../../../shared/decide/verdict/figures.ts";
import { RPM } from "../../../shared/physics/motor.ts";
import { formatFixed, formatQuantity, formatShort, inUnit, withUnit } from "../../../shared/units/format.ts";
import { decimalsOf, unitOf } from "../../../shared/units/showing.ts";
import { type Answered, bestOf, foremost, type Sized } from "./answer.ts";
import type { Settings } from "./settings.ts";

/** Speeds and speed constants are shown to so many. */
const STEP = 10;

/** @returns "54 mm", "54.5 mm" */
export const sizeText = (diameter: number): string => {
  const decimals = decimalsOf("length", 1);
  return withUnit(formatShort(inUnit(diameter, "length"), decimals), unitOf("length"));
};
/** @returns "3 020 rpm/V" */
export const kvText = (kv: number): string =>
  formatQuantity(Math.round(kv / STEP) * STEP, "kv", { decimals: 0 });
/** @returns "21.0 W" */
export const powerText = (power: number): string => formatQuantity(power, "power");
/** @returns "28 500 rpm" */
export const speedText = (speed: number): string =>
  formatQuantity(Math.round(speed / RPM / (10 * STEP)) * 10 * STEP * RPM, "speed", { decimals: 0 });
/** @returns "48 °C" */
export const warmText = (temperature: number): string =>
  formatQuantity(temperature, "temperature", { decimals: 0 });

/** What a passed limit does, as a region of the picture is named. */
export const PASSED: Readonly<Record<LimitKey, string>> = {
  winding: "winding burns",
  "motor-voltage": "motor over its voltage",
  "motor-current": "motor over its current",
  "cell-current": "cell over its current",
  "cell-voltage": "cell below its minimum",
  "rotor-speed": "rotor beyond its safe speed",
};

/** @returns why a size is not to be had; null where it is */
export function stopOf({ packPower, exceeds, notes }: SizeRow): string | null {
  if (packPower === null)
    return notes[0]?.code === "power-missing" ? "power is missing" : "no winding does it";
  return exceeds.length > 0 ? PASSED[exceeds[0]] : null;
}

/** @returns the answer to "which size?" */
export function sizeSentence(answered: Answered): string {
  const first = foremost(answered);
  const best = first && bestOf(first);
  if (first && best && best.kv !== null && best.packPower !== null)
    return `${first.name} at ${sizeText(best.diameter)} takes least: ${powerText(best.packPower)} from the pack, wound for ${kvText(best.kv)}.${first.estimated ? " Its curve is estimated." : ""}`;
  if (answered.families.length === 0) return "No rotor family of the book has a curve to size.";
  const nearest = answered.families.flatMap(({ name, nearest: near }) => (near ? [{ name, ...near }] : []));
  const most = nearest.sort((a, b) => b.pull - a.pull)[0];
  const none = "No size makes this pull within every limit";
  if (!most) return `${none}.`;
  return `${none}; the most that can be had is ${pullText(most.pull)}, of ${most.name} at ${sizeText(most.diameter)}.`;
}

/** What is said where the largest size does not lie above the smallest. */
export const REVERSED: Readonly<Record<RotorKind, () => string>> = {
  ducted: () =>
    `The largest size must lie above the smallest, for example ${sizeText(0.03)} and ${sizeText(0.07)}.`,
  propeller: () =>
    `The largest propeller must lie above the smallest, for example ${sizeText(0.08)} and ${sizeText(0.16)}.`,
};

/** @returns what the vehicle needs, and what that takes of the air */
export function needSentence({ pull, duty }: Answered, { hold, cellVoltage }: Settings): string {
  const where = hold.angle === "worst" ? "the worst attitude" : `${formatFixed(hold.angle, 0)}°`;
  const at = `with cells at ${formatQuantity(cellVoltage, "voltage")} at rest`;
  const force = duty ? "pull" : "thrust";
  const need = `${marginText(hold.margin)} on ${where} is ${pullText(pull)} of ${force}, ${at}`;
  if (!duty) return `${need}.`;
  const { pressure, flow, airPower } = duty;
  return `${need}: ${formatQuantity(pressure, "pressure")} and ${formatQuantity(flow, "flow")}, ${powerText(airPower)} in the air; no fan does it with less.`;
}

/** @returns what one size says of itself, a line each */
export function rowWords(name: string, row: SizeRow): string[] {
  const { diameter, kv, speed, packPower, windingTemperature, holdTime, notes } = row;
  const stop = stopOf(row);
  return [
    `${name}, ${sizeText(diameter)}`,
    ...(packPower === null ? [] : [`${powerText(packPower)} from the pack`]),
    ...(kv === null ? [] : [`wound for ${kvText(kv)}`]),
    ...(speed === null ? [] : [speedText(speed)]),
    ...(windingTemperature === null ? [] : [`winding ${warmText(windingTemperature)}`]),
    ...(holdTime === null ? [] : [`does so for ${timeText(holdTime)} from a full charge`]),
    ...(stop ? [stop] : []),
    ...notes.map(({ message }) => message),
  ];
}

/** @returns what the picture shows, for those who don't see it */
export function pictureSentence(answered: Answered, shown: Sized): string {
  return `Watts from the pack against rotor diameter for ${answered.families
    .filter(({ kind }) => kind === shown.kind)
    .map(({ name }) => name)
    .join(", ")}; below, the speed constant and the minutes of ${shown.name}. ${sizeSentence(answered)}`;
}
