import type { SizeSpread } from "../../../../shared/decide/size/spread.ts";
import { figureIn } from "../../../../shared/units/format.ts";
import { unitOf } from "../../../../shared/units/showing.ts";
import { bestOf, type Sized } from "../answer.ts";
import { powerText, sizeText } from "../sizeWords.ts";

/** Ends of a range that are one and the same when they are shown. */
const whole = (diameter: number) => figureIn(diameter, "length", 0);

/** @returns how far the best size and its watts are known; null where nothing can be said */
export function spreadSentence(shown: Sized, { best, power }: SizeSpread): string | null {
  const row = bestOf(shown);
  if (!row || row.packPower === null || !power || power.p5 === null || power.p95 === null) return null;
  const watts = `takes ${powerText(power.p5 * row.packPower)} to ${powerText(power.p95 * row.packPower)}`;
  const why = "as far as curve, leak, mass and friction are known (90 %)";
  if (!best || best.p5 === null || best.p95 === null || whole(best.p5) === whole(best.p95))
    return `${shown.name} at ${sizeText(row.diameter)} ${watts}, ${why}.`;
  return `The best size of ${shown.name} lies between ${whole(best.p5)} and ${whole(best.p95)} ${unitOf("length")} and ${watts}, ${why}.`;
}
