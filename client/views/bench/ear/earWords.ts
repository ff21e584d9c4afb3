import type { BladePass } from "../../../../shared/fit/sound/bladePass.ts";
import { decimalsByUncertainty, formatFixed, fromUnit, inUnit } from "../../../../shared/units/format.ts";

/** 5 to 95 % of a normal distribution, in standard deviations. */
const NINETY = 1.645;

/** A speed and its standard uncertainty [rad/s]. */
export interface HeardSpeed {
  readonly speed: number;
  readonly uncertainty: number;
}

const rpmOf = (speed: number): number => inUnit(speed, "speed", "rpm");

/** @returns a speed as a row takes it, with the digits that it is known to: "24012 rpm" */
export function speedText({ speed, uncertainty }: HeardSpeed): string {
  return `${rpmOf(speed).toFixed(Math.min(2, decimalsByUncertainty(rpmOf(uncertainty))))} rpm`;
}

/** @returns a standard uncertainty as its field takes it: "7 rpm" */
export function uncertaintyText({ uncertainty }: HeardSpeed): string {
  return `${Number(rpmOf(uncertainty).toPrecision(2))} rpm`;
}

/** @returns a speed with its uncertainty: "24 012 ± 12 rpm (90 %)" */
export function speedWords({ speed, uncertainty }: HeardSpeed): string {
  const decimals = decimalsByUncertainty(rpmOf(uncertainty));
  const [value, error] = [rpmOf(speed), NINETY * rpmOf(uncertainty)].map((each) =>
    formatFixed(each, decimals),
  );
  return `${value} ± ${error}\u202frpm (90 %)`;
}

/** @returns what stands beside a blade-passing frequency, in sentences */
export function notesOn({ other, shaft }: BladePass, blades: number): string[] {
  const rpm = (frequency: number) => formatFixed((frequency * 60) / blades, 0);
  const notes: string[] = [];
  if (other !== null)
    notes.push(
      `Another sound is as clear, as of ${rpm(other)}\u202frpm: narrow the range, or let one rotor run alone.`,
    );
  if (shaft.says === "agrees")
    notes.push("The shaft's own rate is heard too, and agrees with the blade count.");
  if (shaft.says === "other")
    notes.push(
      `The shaft's own rate speaks for ${shaft.blades} blades: count them, the speed is based on it.`,
    );
  if (shaft.says === "nothing")
    notes.push(`The shaft's own rate isn't heard: the speed is based on the count of ${blades} blades.`);
  return notes;
}

/** @returns a speed in rpm as SI [rad/s] */
export const fromRpm = (rpm: number): number => fromUnit(rpm, "speed", "rpm");
