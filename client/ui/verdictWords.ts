import { listed } from "../../shared/decide/verdict/attitudeWords.ts";
import type { Mode } from "../../shared/physics/hold/holdAt.ts";

export type Grade = "good" | "near" | "bad";

/** A grade in words: colour never speaks alone. */
export const GRADE_WORDS = { good: "holds", near: "little to spare", bad: "falls" } as const;

const MODE_WORDS: Readonly<Record<Mode, string>> = {
  liftOff: "lift-off",
  slide: "slide",
  tip: "tip",
  climb: "climb",
};

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
