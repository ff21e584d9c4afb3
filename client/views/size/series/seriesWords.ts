import type { RotorKind } from "../../../../shared/book/size/families.ts";
import type { Print, PrintSeries } from "../../../../shared/book/size/printSeries.ts";
import { percentText } from "../../../../shared/decide/verdict/figures.ts";
import { sizeText } from "../sizeWords.ts";

/** "53 mm", "50, 53 and 56 mm" */
function sizesText(prints: readonly Print[]): string {
  const texts = prints.map(({ diameter }) => sizeText(diameter));
  return texts.length < 2
    ? texts.join("")
    : `${texts.slice(0, -1).join(", ")} and ${texts[texts.length - 1]}`;
}

const FIRST = 3;

/** @returns what to print and test first, and what that would bring */
export function seriesSentence(name: string, { known, prints, together }: PrintSeries): string {
  if (known === null) return `Nothing of ${name}'s curve is uncertain, so no print can be said to tell more.`;
  const now = `its curve leaves the watts of its best sizes uncertain by ± ${percentText(known)} (90 %)`;
  const [first] = prints;
  if (!first)
    return `No print of ${name} would take 1 % off: ${now}, by what its instruments and other tests leave.`;
  const { diameter, isTested, cut } = first;
  const make = isTested ? "Test another print of" : "Print and test";
  const does = `${make} ${name} at ${sizeText(diameter)} first: ${now}, and that would take ${percentText(cut)} off it.`;
  if (together === null || together <= cut) return does;
  return `${does} ${sizesText(prints.slice(0, FIRST))} together would take ${percentText(together)}.`;
}

/** @returns the throttles of one print's test: "77 and 52 %", of a propeller "77 to 31 %" */
export const throttlesText = (kind: RotorKind, { throttles }: Print): string =>
  `${throttles.map((each) => Math.round(each * 100)).join(kind === "ducted" ? " and " : " to ")}\u202f%`;
