import { percentText } from "../../../../shared/decide/verdict/figures.ts";
import { formatFixed, formatQuantity } from "../../../../shared/units/format.ts";
import { sizeText } from "../sizeWords.ts";
import type { Used } from "./suits.ts";

/** Share of its best efficiency from which a family suits a duty. Judgement. */
const SUITS_FROM = 0.9;
/** Good fans scatter so far about the published line [-]. */
const ABOUT = 1.25;

const number = (value: number) => formatFixed(value, 2);

function dutyText({ row }: Used): string {
  const flow = formatQuantity(row.flow ?? 0, "flow");
  return `${flow} at ${formatQuantity(row.pressure ?? 0, "pressure")}`;
}

/** @returns whether a family suits the duty, and what would suit it better */
export function suitsSentence(used: Used): string {
  const { name, row, suits } = used;
  const { share, best, used: there, diameter } = suits;
  const runs = `${name} at ${sizeText(row.diameter)} runs at ${percentText(share)} of its best efficiency`;
  const numbers = `specific speed ${number(there.speed)}, best at ${number(best.speed)}`;
  if (share >= SUITS_FROM) return `${runs} (${numbers}): the family suits ${dutyText(used)}.`;
  const [kind, moves] =
    there.speed > best.speed
      ? ["faster, more axial", "more air than it is best at"]
      : ["narrower, more radial", "less air than it is best at"];
  return `${runs}: it moves ${moves} (${numbers}). A ${kind} rotor would suit ${dutyText(used)} better at this size; this one would at ${sizeText(Number(diameter.toFixed(3)))}.`;
}

/** @returns how the family itself compares with published good fans; null outside the published line */
export function lineSentence({ suits: { overLine } }: Used): string | null {
  if (overLine === null) return "At its best it lies outside the published line of good fans.";
  if (overLine <= ABOUT && overLine >= 1 / ABOUT)
    return "At its best it lies on the published line of good fans.";
  const off = percentText(Math.abs(overLine - 1));
  return overLine > 1
    ? `At its best it turns ${off} faster than good fans of its specific diameter: it makes little pressure for its tip speed.`
    : `At its best it turns ${off} slower than good fans of its specific diameter: it makes much pressure for its tip speed.`;
}

/** @returns what one point of the picture says */
export function pointWords(used: Used, which: "best" | "used"): string[] {
  const at = used.suits[which];
  const what = which === "best" ? "at its best efficiency" : `as used at ${sizeText(used.row.diameter)}`;
  return [
    `${used.name}, ${what}`,
    `specific speed ${number(at.speed)}`,
    `specific diameter ${number(at.diameter)}`,
    ...(which === "used" ? [`${percentText(used.suits.share)} of its best efficiency`] : []),
  ];
}
