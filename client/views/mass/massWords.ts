import { type MassBasis, type MassFigure, sumOf } from "../../../shared/book/mass/ledger.ts";
import { Z90 } from "../../../shared/book/mass/workings.ts";
import { targetText } from "../../../shared/decide/verdict/figures.ts";
import { MASS_GROUPS, type MassGroup } from "../../../shared/model/massGroups.ts";
import { formatQuantity, THIN_SPACE } from "../../../shared/units/format.ts";
import { type Headroom, tightestFirst } from "./headroom.ts";

/** Below this, tenths of a gram are shown [kg]. */
const SMALL = 0.02;
const TENTH = 1e-4;

/** @returns a mass: "133 g", "4.5 g" */
export function massText(kilograms: number): string {
  const tenths = Math.round(kilograms / TENTH);
  const isFine = Math.abs(kilograms) < SMALL && tenths % 10 !== 0;
  return formatQuantity(kilograms, "mass", { decimals: isFine ? 1 : 0 });
}

/** @returns half of the band that holds 90 %: "± 7 g"; nothing where it isn't known */
export function halfBand({ uncertainty }: Pick<MassFigure, "uncertainty">): string {
  return uncertainty > 0 ? `± ${massText(Z90 * uncertainty)}` : "";
}

/** @returns how unsure a mass is: " ± 7 g (90 %)"; nothing where it isn't said */
export function plusMinus({ uncertainty }: MassFigure): string {
  return uncertainty > 0 ? ` ${halfBand({ uncertainty })} (90${THIN_SPACE}%)` : "";
}

/** @returns the answer in one sentence: what is left, where it is tightest and for the wall */
export function headroomSentence(of: Headroom): string {
  const { mass, target } = of;
  const [tightest, ...others] = tightestFirst(of);
  if (!tightest) return `${massText(mass)} on board.`;
  const other = others.find(({ angle }) => angle === 90) ?? others[0];
  const left = tightest.atTarget - mass;
  const rest = other && other.atTarget - mass;
  const also = (text: string) => (other && rest >= 0 ? `${text} ${massText(rest)} for ${other.name}.` : "");
  if (left >= 0) return `${massText(left)} left for ${tightest.name}, the tightest${also(";") || "."}`;
  const over = `Too heavy by ${massText(-left)} for ${targetText(target)} on ${tightest.name}`;
  return `${over}${also("; left:") || "."}`;
}

/** @returns what the sentence stands on: mass, uncertainty, target */
export function massFigures({ ledger, target }: Headroom): string {
  const from = ledger.whole ? "as one number" : "as the sum of its lines";
  return `${massText(ledger.mass.value)}${plusMinus(ledger.mass)} on board, ${from}; margin wanted ${targetText(target)}, parked and driving`;
}

/** @returns what the lines leave open of a whole: null where they leave nothing, or there is no whole */
export function unaccountedSentence({ ledger: { unaccounted, whole, sum } }: Headroom): string | null {
  if (unaccounted === null || whole === null) return null;
  const least = 5e-4;
  if (Math.abs(unaccounted) < least) return null;
  return unaccounted > 0
    ? `${massText(unaccounted)} of the ${massText(whole.value)} are on no line yet.`
    : `The lines come to ${massText(sum.value)}, more than the ${massText(whole.value)} typed for the whole. Correct one of them.`;
}

/** Groups that every vehicle has in the end, and that are easily forgotten on paper. */
const OFTEN_FORGOTTEN: readonly MassGroup[] = [
  "drive",
  "electronics",
  "structure",
  "cover",
  "paint and filler",
  "wiring",
];

/** @returns which groups no line stands for; null where none is missing */
export function forgottenSentence({ ledger }: Headroom): string | null {
  const there = new Set(ledger.lines.map(({ group }) => group));
  const missing = OFTEN_FORGOTTEN.filter((group) => !there.has(group));
  if (missing.length === 0) return null;
  const list =
    missing.length === 1
      ? missing[0]
      : `${missing.slice(0, -1).join(", ")} or ${missing[missing.length - 1]}`;
  return `Nothing is entered for ${list}. Screws and glue count too.`;
}

export const BASIS_WORDS: Readonly<Record<MassBasis, string>> = {
  weighed: "weighed",
  estimated: "estimated",
  missing: "not weighed",
};

/** @returns a group as a heading */
export const groupTitle = (group: MassGroup): string => group.charAt(0).toUpperCase() + group.slice(1);

export interface GroupSum extends MassFigure {
  readonly group: MassGroup | "on no line";
}

/** @returns the mass of each group that has one, in the ledger's order, then what is on no line [kg] */
export function groupSums({ ledger }: Pick<Headroom, "ledger">): GroupSum[] {
  const sums = MASS_GROUPS.map((group) => {
    const own = ledger.lines.filter((line) => line.group === group);
    return { group, ...sumOf(own) };
  });
  const { unaccounted } = ledger;
  const rest = { group: "on no line" as const, value: unaccounted ?? 0, uncertainty: 0 };
  return [...sums, rest].filter(({ value }) => value > 0);
}
