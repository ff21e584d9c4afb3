import type { Sensitivities } from "../../../../shared/decide/sensitivities.ts";
import { formatFixed } from "../../../../shared/units/format.ts";
import type { Table } from "../../../ui/table.ts";
import { listed } from "../../../ui/verdictWords.ts";
import { inputName } from "./names.ts";

/** One input's bar. */
export interface Bar {
  readonly path: string;
  readonly name: string;
  /** % of margin per % of the input */
  readonly elasticity: number;
  /** of the variance of the worst driving margin; null where it is not known */
  readonly share: number | null;
}

export type Shares = readonly { readonly path: string; readonly share: number }[];

/** Bars drawn at most, and the least one. */
const [MOST, LEAST] = [10, 0.005];
const THIN = "\u2009";
const PERCENT = 100;

/** A whole curve has the shares of its coefficients. */
function shareOf(shares: Shares | null, path: string): number | null {
  const own = shares?.filter((each) => each.path === path || each.path.startsWith(`${path}.`)) ?? [];
  return own.length === 0 ? null : own.reduce((sum, { share }) => sum + share, 0);
}

/** @returns every input's bar, largest first */
export function barsOf({ sensitivities }: Sensitivities, shares: Shares | null): Bar[] {
  return sensitivities.map(({ path, elasticity }) => ({
    path,
    name: inputName(path),
    elasticity,
    share: shareOf(shares, path),
  }));
}

/** @returns the bars that are drawn: those that move anything */
export function drawnBars(bars: readonly Bar[]): Bar[] {
  return bars.filter(({ elasticity }) => Math.abs(elasticity) >= LEAST).slice(0, MOST);
}

/** @returns "+1.57", "−0.95" */
export function elasticityText(elasticity: number): string {
  return `${elasticity < 0 ? "" : "+"}${formatFixed(elasticity, 2)}`;
}

/** @returns "31 % of the doubt"; "" where it is not known */
export function shareText(share: number | null): string {
  if (share === null) return "";
  const percent = PERCENT * share;
  return percent < 1 ? `under 1${THIN}% of the doubt` : `${formatFixed(percent, 0)}${THIN}% of the doubt`;
}

/** @returns the answer in one sentence: what moves the margin most, and which way */
export function barsSentence(bars: readonly Bar[]): string {
  const [most] = bars;
  if (!most) return "Nothing here moves the margin.";
  const size = formatFixed(Math.abs(most.elasticity), 2);
  return `1${THIN}% more ${inLine(most.name)} is ${size}${THIN}% ${most.elasticity > 0 ? "more" : "less"} margin: it moves it most.`;
}

/** @returns the picture in words: each bar with its sign, most first */
export function barsInWords(bars: readonly Bar[]): string {
  const each = bars.map(({ name, elasticity }) => `${inLine(name)} ${elasticityText(elasticity)}`);
  return `Per cent of margin per per cent of: ${listed(each)}.`;
}

const inLine = (name: string) =>
  /^\p{Lu}\p{Ll}/u.test(name) ? name.charAt(0).toLowerCase() + name.slice(1) : name;

/** @returns every input as a table */
export function barsTable(bars: readonly Bar[]): Table {
  return {
    columns: ["input", "% of margin per %", "share of the doubt, %"],
    rows: bars.map(({ name, elasticity, share }) => [
      name,
      elasticity,
      share === null ? null : PERCENT * share,
    ]),
  };
}
