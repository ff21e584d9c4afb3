import type { SwapSet } from "../../../../shared/decide/swaps/swaps.ts";
import { percentText } from "../../../../shared/decide/verdict/figures.ts";
import type { Build } from "../../../../shared/model/build.ts";
import { formatFixed } from "../../../../shared/units/format.ts";
import { gramsText } from "../massWords.ts";
import type { SwapQuestion } from "./question.ts";

const priceText = (price: number) => formatFixed(price, Number.isInteger(price) ? 0 : 2);

/** @returns each swap of a set: "Foam wheel for Wheel with tyre, saves 22 g" */
export function swapTexts(build: Build, { places }: SwapQuestion, { choices }: SwapSet): string[] {
  return places.flatMap((at, i) => {
    const choice = choices[i];
    if (choice === null || choice === undefined) return [];
    const { name, mass, quantity, alternatives } = build.ledger[at];
    const saved = quantity * (mass - alternatives[choice].mass);
    const change = saved >= 0 ? `saves ${gramsText(saved)}` : `adds ${gramsText(-saved)}`;
    return [`${alternatives[choice].name} for ${name}, ${change}`];
  });
}

/** @returns what a set comes to: "498 g; 24 to spend; there in 5 days; 97 % chance of being light enough" */
export function setFigures({ mass, price, leadTime, chance, uncertainty }: SwapSet): string {
  return [
    gramsText(mass),
    price > 0 ? `${priceText(price)} to spend` : "nothing to spend",
    leadTime > 0
      ? `there in ${formatFixed(leadTime, 0)} ${leadTime === 1 ? "day" : "days"}`
      : "nothing to wait for",
    ...(uncertainty > 0 ? [`${percentText(chance)} chance of being light enough`] : []),
  ].join("; ");
}

/** @returns what no set reaches: "The lightest set comes to 620 g, 13 g more than the 607 g allowed." */
export function shortfallText(allowed: number, { mass }: SwapSet): string {
  return `No set of these swaps is light enough. The lightest comes to ${gramsText(mass)}, ${gramsText(mass - allowed)} more than the ${gramsText(allowed)} allowed.`;
}
