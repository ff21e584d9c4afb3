import { chanceAt } from "../../../../shared/decide/map/chance.ts";
import { percentText } from "../../../../shared/decide/verdict/figures.ts";
import { SURE } from "../../../../shared/decide/verdict/verdict.ts";
import { formatFixed, THIN_SPACE } from "../../../../shared/units/format.ts";
import { type Drawing, valuesOf } from "../mapPlot.ts";

const PERCENT = 100;

/** @returns "87 % chance of holding" at a place with a margin; nothing where the chance isn't shown, or not known there */
export function chanceLine({ chance, shown }: Drawing, x: number, y: number, margin: number): string[] {
  if (shown !== "chance" || !chance) return [];
  const share = chanceAt(chance, x, y, margin);
  return Number.isNaN(share) ? [] : [`${percentText(share)} chance of holding`];
}

/** @returns on how much of the map it is all but sure to hold, in a sentence; nothing where the chance isn't shown */
export function sureSentence(drawing: Drawing): string {
  if (drawing.shown !== "chance" || !drawing.chance) return "";
  const values = valuesOf(drawing);
  const share = values.filter((each) => each >= PERCENT * SURE).length / values.length;
  const whole = (part: number) => `${formatFixed(PERCENT * part, 0)}${THIN_SPACE}%`;
  return ` On ${whole(share)} of it the chance of holding is ${whole(SURE)} or more.`;
}

/** @returns how closely the chance was worked out, in a sentence */
export function closenessText({ chance }: Pick<Drawing, "chance">): string {
  const how = "the margin is solved at every point, its spread";
  if (!chance) return `Chance of holding: ${how} is being sampled.`;
  const { x, y, samples } = chance;
  return `Chance of holding: ${how} sampled at ${x.values.length} × ${y.values.length} places, ${samples} times at each, and read between them. Each number is as uncertain as in Match.`;
}
