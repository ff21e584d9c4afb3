import type { Sensitivities } from "../../../../shared/decide/sensitivities.ts";
import { TOGETHER } from "../../../../shared/decide/spread.ts";
import { listed } from "../../../../shared/decide/verdict/attitudeWords.ts";
import { formatFixed, THIN_SPACE } from "../../../../shared/units/format.ts";
import type { BarPlot } from "../../../charts/model/bars.ts";
import { known, type Table } from "../../../ui/table.ts";
import { inputName } from "./names.ts";

/** One input's bar. */
export interface Bar {
  readonly path: string;
  readonly name: string;
  /** % of margin per % of the input */
  readonly elasticity: number;
  /** of the variance of the worst driving margin; null where it is not known */
  readonly share: number | null;
  /** names of other inputs whose uncertainty is tied to this one's: the share is theirs together */
  readonly tied: readonly string[];
}

export type Shares = readonly { readonly path: string; readonly share: number }[];

/** Bars drawn at most, and the least one. */
const [MOST, LEAST] = [10, 0.005];
const PERCENT = 100;

const belongs = (path: string, to: string) => path === to || path.startsWith(`${to}.`);

/** The shares that name an input: a whole curve has those of its coefficients; tied uncertainties have one together. */
function sharesOf(shares: Shares | null, path: string): Shares {
  return shares?.filter((each) => each.path.split(TOGETHER).some((one) => belongs(one, path))) ?? [];
}

/** @returns every input's bar, largest first */
export function barsOf({ sensitivities }: Sensitivities, shares: Shares | null): Bar[] {
  return sensitivities.map(({ path, elasticity }) => {
    const own = sharesOf(shares, path);
    const others = sensitivities.filter(
      (other) => other.path !== path && sharesOf(own, other.path).length > 0,
    );
    return {
      path,
      name: inputName(path),
      elasticity,
      share: own.length === 0 ? null : own.reduce((sum, { share }) => sum + share, 0),
      tied: others.map((other) => inputName(other.path)),
    };
  });
}

/** @returns the bars that are drawn: those that move anything */
export function drawnBars(bars: readonly Bar[]): Bar[] {
  return bars.filter(({ elasticity }) => Math.abs(elasticity) >= LEAST).slice(0, MOST);
}

/** @returns "+1.57", "−0.95" */
export function elasticityText(elasticity: number): string {
  return `${elasticity < 0 ? "" : "+"}${formatFixed(elasticity, 2)}`;
}

/** @returns "31 % of the uncertainty", with a dagger where it is shared; "" where it is not known */
export function shareText({ share, tied }: Pick<Bar, "share" | "tied">): string {
  if (share === null) return "";
  const percent = PERCENT * share;
  const size = percent < 1 ? "under 1" : formatFixed(percent, 0);
  return `${size}${THIN_SPACE}%${tied.length > 0 ? "†" : ""} of the uncertainty`;
}

/** @returns what the dagger means; null where none is drawn */
export function tiedText(bars: readonly Bar[]): string | null {
  const groups = bars
    .filter(({ share, tied }) => share !== null && tied.length > 0)
    .map(({ name, tied }) => [name, ...tied].map(inLine).sort());
  const each = [...new Set(groups.map((names) => listed(names)))];
  return each.length === 0
    ? null
    : `† The same share for numbers whose uncertainties are tied: ${each.join("; ")}.`;
}

/** @returns the answer in one sentence: what moves the margin most, and which way */
export function barsSentence(bars: readonly Bar[]): string {
  const [most] = bars;
  if (!most) return "Nothing here moves the margin.";
  const size = formatFixed(Math.abs(most.elasticity), 2);
  return `1${THIN_SPACE}% more ${inLine(most.name)} is ${size}${THIN_SPACE}% ${most.elasticity > 0 ? "more" : "less"} margin: it moves it most.`;
}

/** @returns the picture in words: each bar with its sign, most first */
export function barsInWords(bars: readonly Bar[]): string {
  const each = bars.map(({ name, elasticity }) => `${inLine(name)} ${elasticityText(elasticity)}`);
  return `Per cent of margin per per cent of: ${listed(each)}.`;
}

const inLine = (name: string) =>
  /^\p{Lu}\p{Ll}/u.test(name) ? name.charAt(0).toLowerCase() + name.slice(1) : name;

/** @returns the bars as the chart draws them, each figure with its share of the uncertainty */
export function barPlot(bars: readonly Bar[]): BarPlot {
  return {
    bars: bars.map((bar) => ({
      key: bar.path,
      name: bar.name,
      figure: [shareText(bar), elasticityText(bar.elasticity)].filter(Boolean).join(", "),
      value: bar.elasticity,
      tone: "ink",
    })),
    sides: { below: "← less margin", above: "more margin →" },
  };
}

/** @returns what a bar under the pointer says, a line each */
export function barLines(bars: readonly Bar[], path: string): string[] {
  const bar = bars.find((each) => each.path === path);
  if (!bar) return [];
  const share = shareText({ share: bar.share, tied: [] });
  const tied = share && bar.tied.length > 0 ? `, together with ${listed(bar.tied.map(inLine))}` : "";
  const size = `${formatFixed(Math.abs(bar.elasticity), 2)}${THIN_SPACE}%`;
  return [
    bar.name,
    `1${THIN_SPACE}% more of it: ${size} ${bar.elasticity > 0 ? "more" : "less"} margin`,
    ...(share ? [`${share}${tied}`] : []),
  ];
}

/** So many samples as are taken tell a share to about this [%]. */
const SHARE_KNOWN_TO = 1;

/** @returns every input as a table */
export function barsTable(bars: readonly Bar[]): Table {
  return {
    columns: ["input", "% of margin per %", "share of the uncertainty, %", "tied to"],
    rows: bars.map(({ name, elasticity, share, tied }) => [
      name,
      elasticity,
      share === null ? null : known(PERCENT * share, SHARE_KNOWN_TO),
      tied.join(", "),
    ]),
  };
}
