import type { BladePass } from "../../../../shared/fit/sound/bladePass.ts";
import { asRead } from "../../../../shared/units/decimalMark.ts";
import {
  decimalsByUncertainty,
  formatFixed,
  formatQuantity,
  inUnit,
  withUnit,
} from "../../../../shared/units/format.ts";
import { decimalsOf, unitOf } from "../../../../shared/units/showing.ts";
import { typedText } from "../../../../shared/units/shown.ts";

/** 5 to 95 % of a normal distribution, in standard deviations. */
const NINETY = 1.645;

/** A speed and its standard uncertainty [rad/s]. */
export interface HeardSpeed {
  readonly speed: number;
  readonly uncertainty: number;
}

const shownOf = (speed: number): number => inUnit(speed, "speed");

/** @returns a speed as a row takes it, with the digits that it is known to: "24012 rpm" */
export function speedText({ speed, uncertainty }: HeardSpeed): string {
  const decimals = Math.min(decimalsOf("speed", 2), decimalsByUncertainty(shownOf(uncertainty)));
  return `${asRead(shownOf(speed).toFixed(decimals))} ${unitOf("speed")}`;
}

/** @returns a standard uncertainty as its field takes it: "7 rpm" */
export function uncertaintyText({ uncertainty }: HeardSpeed): string {
  return typedText(uncertainty, "speed", 2);
}

/** @returns a speed with its uncertainty: "24 012 ± 12 rpm (90 %)" */
export function speedWords({ speed, uncertainty }: HeardSpeed): string {
  const decimals = decimalsByUncertainty(shownOf(uncertainty));
  const [value, error] = [shownOf(speed), NINETY * shownOf(uncertainty)].map((each) =>
    formatFixed(each, decimals),
  );
  return `${withUnit(`${value} ± ${error}`, unitOf("speed"))} (90 %)`;
}

/** @returns what stands beside a blade-passing frequency, in sentences */
export function notesOn({ other, shaft }: BladePass, blades: number): string[] {
  const speed = (frequency: number) =>
    formatQuantity((2 * Math.PI * frequency) / blades, "speed", { decimals: 0 });
  const notes: string[] = [];
  if (other !== null)
    notes.push(
      `Another sound is as clear, as of ${speed(other)}: narrow the range, or let one rotor run alone.`,
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
