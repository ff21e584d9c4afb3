import type { BuildUncertainty } from "../../shared/book/buildUncertainty.ts";
import { type UncertaintyPart, uncertaintyParts } from "../../shared/book/uncertainty/parts.ts";
import type { Spread } from "../../shared/decide/spread.ts";
import type { Share } from "../../shared/decide/uncertainty.ts";
import { formatFixed } from "../../shared/units/format.ts";

const PERCENT = 100;
/** Beyond these the tails speak, and nobody measured those [-]. */
const [ALMOST_NEVER, ALMOST_ALWAYS] = [0.001, 0.999];
/** Nearer to the ends than this a share is worth a decimal [-]. */
const ENDS = 0.01;
/** Shares below this are not worth a line [-]. */
const SMALL_SHARE = 0.005;

/** @returns "98 %", "99.4 %"; never 0 or 100 % */
export function sureText(share: number): string {
  if (share > ALMOST_ALWAYS) return `>\u202f${formatFixed(PERCENT * ALMOST_ALWAYS, 1)}\u202f%`;
  if (share < ALMOST_NEVER) return `<\u202f${formatFixed(PERCENT * ALMOST_NEVER, 1)}\u202f%`;
  const decimals = share < ENDS || share > 1 - ENDS ? 1 : 0;
  return `${formatFixed(PERCENT * share, decimals)}\u202f%`;
}

/** @returns "1.79 to 2.46 ×", the margins between which 90 % of the samples lie; null where one of them needs no pull */
export function rangeText({ p5, p95 }: Pick<Spread, "p5" | "p95">): string | null {
  if (p5 === null || p95 === null) return null;
  return `${formatFixed(p5, 2)} to ${formatFixed(p95, 2)}\u202f×`;
}

export const NOTHING_STATED =
  "No uncertainty is stated, so how sure can't be said: state the gap's and the scale's.";

/** @returns the parts of the uncertainty that are worth a line, largest first, those of one source together */
export function shareParts(
  shares: readonly Share[],
  sources: BuildUncertainty["sources"],
): UncertaintyPart[] {
  return uncertaintyParts(shares, sources).filter(({ share }) => share >= SMALL_SHARE);
}

/** @returns "mass of Roof crawler (default)": a value that nobody stated carries its mark */
export function partText({ what, source }: Pick<UncertaintyPart, "what" | "source">): string {
  return source.from === "default" ? `${what} (default)` : what;
}

/** @returns what is counted and too small for a line: "Less than 0.5 % each: …"; null where there is none */
export function smallPartsText(
  shares: readonly Share[],
  sources: BuildUncertainty["sources"],
): string | null {
  const small = uncertaintyParts(shares, sources).filter(({ share }) => share < SMALL_SHARE);
  const named = small.map(partText).join("; ");
  return small.length > 0
    ? `Less than ${formatFixed(PERCENT * SMALL_SHARE, 1)}\u202f% each: ${named}.`
    : null;
}

/** @returns "38 %" */
export function shareText(share: number): string {
  return `${formatFixed(PERCENT * share, 0)}\u202f%`;
}
