import { listed } from "../../shared/decide/verdict/attitudeWords.ts";
import type { VerdictState } from "../../shared/decide/verdict/states.ts";
import type { Mode } from "../../shared/physics/hold/holdAt.ts";

/** How a margin is coloured: as good as none where the build doesn't last, without colour where something else decides. */
export type Grade = "good" | "near" | "bad" | "void" | "even";

/** A margin's colour and its word: colour never speaks alone. */
export interface Graded {
  readonly grade: Grade;
  readonly word: string;
}

/** What gives, as a sentence says it before "first". */
const GIVES: Readonly<Record<Mode, string>> = {
  liftOff: "lifts off",
  slide: "slips",
  tip: "tips",
  climb: "stops climbing",
};

/** What a margin that is large enough comes to, under what the whole build comes to. */
function enough(state: VerdictState | null): Graded {
  if (state === "falls") return { grade: "even", word: "enough here" };
  return state === "over-rating"
    ? { grade: "even", word: "enough, over a rating" }
    : { grade: "good", word: "holds" };
}

/**
 * What one margin comes to under the verdict on the whole build: none is good where the build bursts, burns, falls or is over a rating.
 *
 * @param margin - null where no suction is needed [-]
 * @param target - margin that is wanted [-]
 * @param state - of the build's verdict; null where it has none yet
 * @returns bad below 1, near below the target
 */
export function gradeOf(margin: number | null, target: number, state: VerdictState | null): Graded {
  if (state === "bursts") return { grade: "void", word: "bursts first" };
  if (margin !== null && margin < 1) return { grade: "bad", word: "falls" };
  if (state === "burns") return { grade: "void", word: "until it burns" };
  if (margin === null) return enough(state);
  return margin < target ? { grade: "near", word: "little to spare" } : enough(state);
}

/** @returns what ends the hold: "slips", "lifts off and slips", "stops climbing" */
export function firstInWords(modes: readonly string[]): string {
  return listed(modes.map((mode) => GIVES[mode as Mode] ?? mode));
}
