import type { Book } from "../../../../shared/book/resolve.ts";
import { STANDARD_GRAVITY } from "../../../../shared/physics/constants.ts";
import { RPM } from "../../../../shared/physics/motor.ts";
import { formatFixed, formatQuantity } from "../../../../shared/units/format.ts";
import { type Outcome, propellerPoint } from "../../../state/outcome.ts";

const GRAMS = 1000;

/** @returns a force as grams of weight, "312" */
export function grams(force: number): string {
  return formatFixed((force / STANDARD_GRAVITY) * GRAMS, 0);
}

/** @returns a speed as the tachometer shows it, "12 400 rpm" */
export function rpmText(speed: number): string {
  return `${formatFixed(Math.round(speed / RPM), 0)}\u202frpm`;
}

/** @returns the curve's direct label: "Glass prop" and "127 mm" */
export function thrustLabel(book: Book, { build, resolved }: Outcome): [string, string] {
  const rotor = book.rotors.find((each) => each.id === build.rotor)?.data.name ?? "propeller";
  const scaled = resolved?.scaledFrom ? ", scaled" : "";
  return [rotor, `${formatQuantity(build.diameter, "length")}${scaled}`];
}

/** @returns what the picture shows, for those who don't see it */
export function thrustSentence(outcome: Outcome): string {
  const start = `Thrust of ${outcome.build.name} against the propeller's speed, with the force that each attitude needs.`;
  const point = propellerPoint(outcome);
  if (!point) return `${start} The propeller stands still.`;
  return `${start} It turns at ${rpmText(point.speed)} and presses with ${grams(point.thrust)} grams.`;
}
