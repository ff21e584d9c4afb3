import { RPM } from "../../physics/motor.ts";
import { formatFixed, formatQuantity, inUnit, THIN_SPACE } from "../../units/format.ts";
import { unitOf } from "../../units/showing.ts";

const [PERCENT, MINUTE] = [100, 60];
/** Speeds are shown to this many rpm. */
const RPM_STEP = 100;
/** Seconds are said up to so many [s]. */
const SECONDS = 120;
/** More decimals than these would pretend. */
const MOST_DECIMALS = 4;

/** A margin below 1 that two or three decimals would round up to it [-] */
const NEARLY = { two: 0.995, three: 0.9995 } as const;

/** @returns a margin as shown: "1.50 ×", or that no pull is needed; one below 1 never reads as 1 */
export function marginText(margin: number | null): string {
  if (margin === null) return "no pull needed";
  if (margin < 1 && margin >= NEARLY.three) return `just under 1${THIN_SPACE}×`;
  return `${formatFixed(margin, margin < 1 && margin >= NEARLY.two ? 3 : 2)}${THIN_SPACE}×`;
}

/** @returns a wanted margin, with no more digits than it has: "1.5 ×" */
export function targetText(target: number): string {
  return `${formatFixed(target, Number.isInteger(target * 10) ? 1 : 2)}${THIN_SPACE}×`;
}

/** @returns decimals at which two figures that differ also look different, from `decimals` on */
function decimalsApart(a: number, b: number, decimals: number): number {
  const same = (digits: number) => formatFixed(a, digits) === formatFixed(b, digits);
  let digits = decimals;
  while (digits < MOST_DECIMALS && a !== b && same(digits)) digits++;
  return digits;
}

/** @returns a figure and its limit, with digits enough to tell them apart */
export function pairText(value: number, limit: number, unit: string, decimals: number): [string, string] {
  const digits = decimalsApart(value, limit, decimals);
  const text = (figure: number) => `${formatFixed(figure, digits)}${THIN_SPACE}${unit}`;
  return [text(value), text(limit)];
}

/** @returns a share in percent that never reads 100 where it isn't: "92 %", "99.6 %" */
export function percentText(share: number): string {
  const percent = PERCENT * share;
  return `${formatFixed(percent, decimalsApart(percent, PERCENT, 0))}${THIN_SPACE}%`;
}

/** @returns a speed, rounded down: "26 000 rpm" */
export function rpmText(speed: number): string {
  return formatQuantity(Math.floor(speed / RPM / RPM_STEP) * RPM_STEP * RPM, "speed", { decimals: 0 });
}

/** @returns a pull as the mass that weighs it: "893 g" */
export function pullText(newton: number): string {
  return formatQuantity(newton, "load", { decimals: 0 });
}

/** @returns two temperatures, with digits enough to tell them apart */
export function temperaturePair(value: number, limit: number): [string, string] {
  const [one, other] = [value, limit].map((kelvin) => inUnit(kelvin, "temperature"));
  return pairText(one, other, unitOf("temperature"), 0);
}

/** @returns an angle: "128°" */
export function degreesText(angle: number): string {
  return `${formatFixed(angle, 0)}°`;
}

/** @returns a time: "48 s", "3.4 min" */
export function timeText(time: number): string {
  if (time < 1) return "less than a second";
  if (time < SECONDS) return `${formatFixed(time, 0)}${THIN_SPACE}s`;
  return `${formatFixed(time / MINUTE, 1)}${THIN_SPACE}min`;
}
