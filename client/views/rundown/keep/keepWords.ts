import { marginText, percentText, timeText } from "../../../../shared/decide/verdict/figures.ts";
import type { Keep } from "../../../../shared/physics/rundown/input.ts";
import { formatQuantity } from "../../../../shared/units/format.ts";
import type { Answered } from "../answer.ts";
import type { Course } from "./courses.ts";
import type { Wish } from "./wish.ts";

/** Units in which the maker reads suction and thrust, and sets a controller. */
export interface KeptUnits {
  readonly pressure: string;
  readonly thrust: string;
}

/** A run whose controller keeps a suction, or a thrust. */
export interface KeptRun {
  readonly wish: Wish;
  /** what that comes to [Pa], [N] */
  readonly keep: Keep;
  readonly units: KeptUnits;
  readonly dutyAtStart: number;
  /** [s]; null: to the end full throttle is enough */
  readonly fullThrottleFrom: number | null;
  readonly courses: readonly Course[];
}

/** @returns a suction or thrust in the unit that a controller is set by */
export function keptText(keep: Keep, units: KeptUnits): string {
  return "thrust" in keep
    ? formatQuantity(keep.thrust, "load", { unit: units.thrust })
    : formatQuantity(keep.pressure, "pressure", { unit: units.pressure });
}

function placeOf({ tracks }: Answered, angle: number | "worst"): string {
  if (angle === "worst") return "the worst attitude";
  return tracks.find((track) => track.angle === angle)?.name ?? `${angle}°`;
}

/** @returns what is kept: "1.50 × on the roof pane", "1200 Pa" */
export function wishWords(answered: Answered, { wish, keep, units }: KeptRun): string {
  if (wish.kind !== "margin") return keptText(keep, units);
  return `${marginText(wish.margin)} on ${placeOf(answered, wish.angle)}`;
}

/** @returns how one course is called in a table and a sentence */
export function courseName(answered: Answered, kept: KeptRun, { key, duty }: Course): string {
  if (key === "full") return "at full throttle";
  if (key === "fixed") return `at ${percentText(duty)} throttle, as the build has it`;
  return `keeping ${wishWords(answered, kept)}`;
}

const lasts = ({ holds, end }: Course): string =>
  holds === null ? `${timeText(end)} without holding anything` : timeText(holds);

/** @returns the courses side by side: "9.4 min keeping 1.50 × on the overhang, 5.7 min at full throttle." */
export function sideBySide(answered: Answered, kept: KeptRun): string {
  return `Holds for ${[...kept.courses]
    .reverse()
    .map((course) => `${lasts(course)} ${courseName(answered, kept, course)}`)
    .join(", ")}.`;
}

/** @returns what to set the controller to, and from when it can't any more */
export function setting({ keep, units, dutyAtStart, fullThrottleFrom }: KeptRun): string {
  const set = `Set the controller to ${keptText(keep, units)}`;
  if (fullThrottleFrom === 0) return `${set}; even on this charge full throttle isn't enough for it.`;
  const from = `${set}: ${percentText(dutyAtStart)} throttle at the start`;
  if (fullThrottleFrom === null) return `${from}, and never full throttle before the charge ends.`;
  return `${from}; from ${timeText(fullThrottleFrom)} on full throttle isn't enough.`;
}
