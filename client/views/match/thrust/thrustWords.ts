import type { Book } from "../../../../shared/book/resolve.ts";
import { formatQuantity } from "../../../../shared/units/format.ts";
import { type Outcome, propellerPoint } from "../../../state/outcome.ts";

/** @returns a force as what weighs as much, "312 g" */
export function pullText(force: number): string {
  return formatQuantity(force, "load", { decimals: 0 });
}

/** @returns a speed as the tachometer shows it, "12 400 rpm" */
export function rpmText(speed: number): string {
  return formatQuantity(speed, "speed", { decimals: 0 });
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
  return `${start} It turns at ${rpmText(point.speed)} and presses with ${pullText(point.thrust)}.`;
}
