import { counted } from "../../ui/count.ts";
import { percent } from "./curveWords.ts";

export interface Contribution {
  readonly used: number;
  readonly aside: number;
  /** of what fixes the fit; null where nothing judges it [-] */
  readonly share: number | null;
  /** how much larger the main figure is with the test than without it, relative; null where it can't be told without it [-] */
  readonly shift: number | null;
}

/** @returns a test's contribution in words, a line each; `figure` is the main one: "K_v" */
export function contributionLines(
  of: Contribution,
  words: { readonly one: string; readonly figure: string; readonly alone: boolean },
): string[] {
  const { used, aside, share, shift } = of;
  const count = `${counted(used, words.one)}${aside > 0 ? `, ${aside} set aside` : ""}`;
  const part = share === null ? "" : `; ${percent(share)} of what fixes it`;
  if (words.alone || used === 0) return [`${count}${part}`];
  if (shift === null) return [`${count}${part}`, `Without it ${words.figure} could not be told.`];
  const way = shift < 0 ? "higher" : "lower";
  const without =
    Math.abs(shift) < NOTHING
      ? `Without it ${words.figure} would be the same.`
      : `Without it ${words.figure} would be ${percent(Math.abs(shift))} ${way}.`;
  return [`${count}${part}`, without];
}

/** A shift below this is none [-]. */
const NOTHING = 5e-4;
