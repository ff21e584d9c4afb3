import { chanceAt } from "../../../../shared/decide/map/chance.ts";
import { SURE } from "../../../../shared/decide/verdict/verdict.ts";
import { formatFixed, THIN_SPACE } from "../../../../shared/units/format.ts";
import { type Drawing, valuesOf } from "../mapPlot.ts";
import { insideOf, type StopKind } from "../regions.ts";

const PERCENT = 100;

/** Of what bursts or burns no chance is said, as in the verdict. */
const DESTROYED: readonly StopKind[] = ["bursts", "burns"];
/** Beyond these a few hundred samples say no more [-]. */
const [FEWEST, MOST] = [0.01, 0.99];

/** "87 %", "> 99 %": a chance by as many samples as a place of the map has. */
function chanceText(share: number): string {
  if (share > MOST) return `>${THIN_SPACE}99${THIN_SPACE}%`;
  if (share < FEWEST) return `<${THIN_SPACE}1${THIN_SPACE}%`;
  return `${formatFixed(PERCENT * share, 0)}${THIN_SPACE}%`;
}

/** @returns "87 % chance of holding" at a place with a margin; nothing where the chance isn't shown, not known there, or the build doesn't last */
export function chanceLine(
  { chance, shown }: Drawing,
  { x, y }: { readonly x: number; readonly y: number },
  { margin, stop }: { readonly margin: number; readonly stop: StopKind | null },
): string[] {
  if (shown !== "chance" || !chance || (stop && DESTROYED.includes(stop))) return [];
  const share = chanceAt(chance, x, y, margin);
  return Number.isNaN(share) ? [] : [`${chanceText(share)} chance of holding`];
}

/** @returns on how much of the map it lasts, by a chance of holding that counts as sure, in a sentence; nothing where the chance is not shown */
export function sureSentence(drawing: Drawing): string {
  if (drawing.shown !== "chance" || !drawing.chance) return "";
  const values = valuesOf(drawing);
  const lost = DESTROYED.map((kind) => insideOf(drawing.field, drawing.question, kind));
  const lasts = (i: number) => lost.every((inside) => !(inside[i] > 0));
  const share = values.filter((each, i) => each >= PERCENT * SURE && lasts(i)).length / values.length;
  const whole = (part: number) => `${formatFixed(PERCENT * part, 0)}${THIN_SPACE}%`;
  return ` On ${whole(share)} it lasts and the chance of holding is ${whole(SURE)} or more.`;
}

/** @returns how closely the chance was worked out, in a sentence */
export function closenessText({ chance }: Pick<Drawing, "chance">): string {
  const how = "the margin is solved at every point, its spread";
  if (!chance) return `Chance of holding: ${how} is being sampled.`;
  const { x, y, samples } = chance;
  return `Chance of holding: ${how} sampled at ${x.values.length} × ${y.values.length} places, ${samples} times at each, and read between them. Each number is as uncertain as in Match.`;
}
