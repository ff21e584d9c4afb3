import type { NextTest, NextTests } from "../../../../shared/book/nextTest/nextTests.ts";
import type { PlanKey } from "../../../../shared/book/nextTest/planned.ts";
import type { UncertaintyPart } from "../../../../shared/book/uncertainty/parts.ts";
import type { Spread } from "../../../../shared/decide/spread.ts";
import { formatFixed, THIN_SPACE } from "../../../../shared/units/format.ts";
import type { Outcome } from "../../../state/outcome.ts";
import { counted, inWords } from "../../../ui/count.ts";
import { shareText } from "../../../ui/uncertaintyWords.ts";
import { choicesOf } from "../ways/wanted.ts";
import type { Question } from "./question.ts";

const MINUS = "\u2212";

/** What to do, as the headline says it. */
const DO: Readonly<Record<PlanKey, string>> = {
  "pull-straight-off": "Pull it straight off",
  "pull-along": "Pull it along the surface",
  leak: "Take a leak test",
  "friction-wheels": "Tilt the wheels until they slide",
  "friction-skirt": "Tilt the skirt until it slides",
  curve: "Take a curve test",
  plate: "Calibrate the bleed plate",
  thrust: "Take a thrust test",
  motor: "Take a motor test",
  discharge: "Take a discharge test",
  weigh: "Weigh it",
  joint: "Measure the joint",
};

/** @returns the verdict that is spoken of: "the roof pane at 153°, driving" */
export function verdictWords(
  outcome: Outcome,
  { verdict, wanted }: Pick<Question, "verdict" | "wanted">,
  over: string | null = null,
): string {
  const choices = choicesOf(outcome);
  const name = (choices.find(({ attitude }) => attitude === wanted.attitude) ?? choices[0]).name;
  const driving = verdict.mode === "driving" ? ", driving" : "";
  const joint = over === null ? "" : `, over ${over}`;
  return `${name} at ${verdict.angle.toFixed(0)}°${driving}${joint}`;
}

/** @returns "−30 %" */
export const cutText = ({ cut }: Pick<NextTest, "cut">): string => `${MINUS}${shareText(cut)}`;

/** A number and its sign stay on one line of a sentence. */
const together = (sentence: string): string => sentence.replaceAll(THIN_SPACE, "\u202f");

/** @returns the answer: what to do first and what it would do */
export function headline(first: NextTest, where: string): string {
  return together(
    `${DO[first.key]} first: it would take ${shareText(first.cut)} off the uncertainty about ${where}.`,
  );
}

/** Half of the range that holds 90 % of the samples; null where some need no pull. */
function halfWidth({ p5, p95 }: Spread): number | null {
  return p5 === null || p95 === null ? null : (p95 - p5) / 2;
}

/** Decimals at which a range that shrinks is seen to, two to four. */
function decimalsFor(now: number, after: number): number {
  for (const decimals of [2, 3])
    if (formatFixed(now, decimals) !== formatFixed(after, decimals)) return decimals;
  return 4;
}

/** @returns "1.08 ± 0.05"; null where some samples need no pull */
export function spreadText(spread: Spread, decimals = 2): string | null {
  const half = halfWidth(spread);
  if (half === null || spread.p50 === null) return null;
  return `${formatFixed(spread.p50, 2)} ± ${formatFixed(half, decimals)}`;
}

/** @returns what the margin is known to, and then would be: "1.08 ± 0.05 → ± 0.04" */
export function knownText(before: Spread, { after }: Pick<NextTest, "after">): string | null {
  const [now, then] = [halfWidth(before), halfWidth(after)];
  if (now === null || then === null) return null;
  const decimals = decimalsFor(now, then);
  const text = spreadText(before, decimals);
  return text && `${text} → ± ${formatFixed(then, decimals)}${THIN_SPACE}×`;
}

/** @returns how many stored tests a calibrated plate corrects; null where it isn't one */
export function correctsText({ corrects }: Pick<NextTest, "corrects">): string | null {
  if (corrects.length === 0) return null;
  return `stands in ${counted(corrects.length, "test")} of these parts`;
}

/** @returns how many more tests cut something, and at most how much: "five more, 5 % and less" */
export function lesserText(lesser: readonly Pick<NextTest, "cut">[]): string {
  const most = Math.max(...lesser.map(({ cut }) => cut));
  return `${inWords(lesser.length)} more, ${shareText(most)}${lesser.length > 1 ? " and less" : ""}`;
}

/** Why one test more of what weighs most does little, or that no test tells it. */
function dominantText({ what, share, source }: UncertaintyPart): string {
  const most = `The largest part of the uncertainty about driving on the worst attitude, ${shareText(share)}, comes from ${what}`;
  if (source.test === null)
    return `${most}, which no bench test tells: measure it and state how well it is known.`;
  if (source.from === "stated") return `${most}, and no test that can be made now tells it better.`;
  return `${most}; one more such test would change little beside those that are there.`;
}

/** @returns why no test is named, and what the uncertainty is made of */
export function nothingText({ before }: NextTests, where: string, parts: readonly UncertaintyPart[]): string {
  const known = before && spreadText(before);
  if (!known)
    return `Some samples need no pull at all for ${where}: there is no margin that could be uncertain.`;
  const said = `No single test would take 1${THIN_SPACE}% off the uncertainty about ${where}: ${known}${THIN_SPACE}×.`;
  const [largest] = parts;
  return together(largest ? `${said} ${dominantText(largest)}` : said);
}

export const NOTHING_TO_SHRINK =
  "No uncertainty is stated, so no test can be said to shrink it: state the gap's and the scale's, and the next test is named here.";
