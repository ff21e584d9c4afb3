import type { Mode } from "../../shared/physics/hold/holdAt.ts";
import { formatFixed } from "../../shared/units/format.ts";

export type Grade = "good" | "near" | "bad";

/** A grade in words: colour never speaks alone. */
export const GRADE_WORDS = { good: "holds", near: "little to spare", bad: "falls" } as const;

const MODE_WORDS: Readonly<Record<Mode, string>> = {
  liftOff: "lift-off",
  slide: "slide",
  tip: "tip",
  climb: "climb",
};

/** Steepness beyond the wall is an overhang. */
const WALL = 90;
const CEILING = 180;
/** Attitudes this close are the same one to a reader [°]. */
export const SAME_ANGLE = 0.5;

/** @returns bad below 1, near below the target, else good; where no suction is needed, good */
export function gradeOf(margin: number | null, target: number): Grade {
  if (margin === null) return "good";
  if (margin < 1) return "bad";
  return margin < target ? "near" : "good";
}

/** @returns the modes that govern, in words: "slide", "lift-off and slide" */
export function governsInWords(modes: readonly string[]): string {
  return listed(modes.map((mode) => MODE_WORDS[mode as Mode] ?? mode));
}

/** @returns words in a row: "wall, ceiling and roof" */
export function listed(words: readonly string[], joint = "and"): string {
  if (words.length < 2) return words.join("");
  return `${words.slice(0, -1).join(", ")} ${joint} ${words.at(-1)}`;
}

/** So many attitudes are named in a sentence, of more the first three. */
const NAMED = 5;
const FIRST = 3;

/** @returns names of attitudes in a row; of many, the first and how many others: "the wall, the ceiling, the roof and 9 other attitudes" */
export function listedAttitudes(names: readonly string[], joint = "and"): string {
  if (names.length <= NAMED) return listed(names, joint);
  return listed([...names.slice(0, FIRST), `${names.length - FIRST} other attitudes`], joint);
}

/** @returns what the worst attitude is called */
export function worstName(angle: number): string {
  if (Math.abs(angle - WALL) < SAME_ANGLE) return "the wall";
  if (Math.abs(angle - CEILING) < SAME_ANGLE) return "the ceiling";
  if (angle < SAME_ANGLE) return "the floor";
  return angle > WALL ? "the overhang" : "the slope";
}

/** A margin below 1 that two or three decimals would round up to it [-] */
const NEARLY = { two: 0.995, three: 0.9995 } as const;

/** @returns a margin as shown: "1.50 ×", or that no pull is needed; one below 1 never reads as 1 */
export function marginText(margin: number | null): string {
  if (margin === null) return "no pull needed";
  if (margin < 1 && margin >= NEARLY.three) return "just under 1\u2009×";
  return `${formatFixed(margin, margin < 1 && margin >= NEARLY.two ? 3 : 2)}\u2009×`;
}
