import { listed } from "../../../../shared/decide/verdict/attitudeWords.ts";
import { STANDARD_GRAVITY } from "../../../../shared/physics/constants.ts";
import { fallingEnergy, fallingSpeed } from "../../../../shared/physics/limits/energy.ts";
import { formatFixed } from "../../../../shared/units/format.ts";
import type { Answered } from "./answer.ts";

const THIN = "\u202f";
/** Times below so many seconds are said in hundredths [s]. */
const SHORT = 1;

const seconds = (time: number) => `${formatFixed(time, time < SHORT ? 2 : 1)}${THIN}s`;

/** @returns how long it holds once the power is cut: "After a power cut it lets go of the overhang after 0.08 s, the wall after 0.13 s." */
export function cutText({ held, notHeld }: Answered): string {
  if (held.length === 0)
    return notHeld.length === 0 ? "No attitude needs a pull, so a power cut lets go of nothing." : "";
  const each = held.map(({ name, after }, i) => `${i === 0 ? "of " : ""}${name} after ${seconds(after)}`);
  return `When the power goes it lets go ${listed(each)}, parked.`;
}

/** @returns how long it must be held by hand once switched on */
export function onText({ toHold, held, notHeld }: Answered): string {
  if (held.length + notHeld.length === 0) return "";
  if (toHold === null) return "Switched on, it never holds everywhere it has to go.";
  return `Switched on, cold and standing, it holds everywhere it has to go after ${seconds(toHold)}: hold it by hand until then.`;
}

/** @returns the fall that follows, from the height at which it works; what is missing without one */
export function fallText(mass: number, height: number | null): string {
  if (height === null)
    return "How far it falls isn't known: give the height above the ground where it works, in the build.";
  const time = Math.sqrt((2 * height) / STANDARD_GRAVITY);
  return `From ${formatFixed(height, 1)}${THIN}m it hits the ground ${seconds(time)} later, at ${formatFixed(fallingSpeed(height), 1)}${THIN}m/s with ${formatFixed(fallingEnergy(mass, height), 1)}${THIN}J. Tether it.`;
}
