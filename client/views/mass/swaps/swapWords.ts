import type { BuildSwaps } from "../../../../shared/book/mass/buildSwaps.ts";
import { type Exchange, exchangedParts } from "../../../../shared/book/mass/exchange.ts";
import { ledgerOf, type PartLine, pieceMass } from "../../../../shared/book/mass/ledger.ts";
import type { Book } from "../../../../shared/book/resolve.ts";
import type { PartSwapSet } from "../../../../shared/decide/swaps/partSwaps.ts";
import type { Build } from "../../../../shared/model/build.ts";
import { formatFixed } from "../../../../shared/units/format.ts";
import { typedText } from "../../../../shared/units/shown.ts";
import { sureText } from "../../../ui/uncertaintyWords.ts";
import { massText } from "../massWords.ts";

const priceText = (price: number) => formatFixed(price, Number.isInteger(price) ? 0 : 2);
const changeText = (saved: number) => (saved >= 0 ? `saves ${massText(saved)}` : `adds ${massText(-saved)}`);

/** A part as a set names it: "Straight seven, 42 mm". */
function partName(book: Book, build: Build, part: PartLine): string {
  const list: readonly { readonly id: string; readonly data: { readonly name: string } }[] = book[`${part}s`];
  const name = list.find(({ id }) => id === build[part])?.data.name ?? "none";
  return part === "rotor" ? `${name}, ${typedText(build.diameter, "length", 4)}` : name;
}

/** "Bell motor, 22 mm for Bell motor, 18 mm"; a skirt may be left off, or be the first one. */
function exchangeText(book: Book, [build, changed]: readonly [Build, Build], part: PartLine): string {
  if (changed[part] === null) return `without ${partName(book, build, part)}`;
  if (build[part] === null) return `with ${partName(book, changed, part)}`;
  return `${partName(book, changed, part)} for ${partName(book, build, part)}`;
}

const massOf = (book: Book, build: Build, part: PartLine): number =>
  ledgerOf(book, build).lines.find(({ of }) => of === part)?.mass ?? 0;

function partTexts(book: Book, build: Build, exchange: Exchange): string[] {
  const changed = { ...build, ...exchange };
  return exchangedParts(exchange).map((part) => {
    const saved = massOf(book, build, part) - massOf(book, changed, part);
    return `${exchangeText(book, [build, changed], part)}, ${changeText(saved)}`;
  });
}

/** @returns each swap of a set: "Foam wheel for Wheel with tyre, saves 22 g" */
export function swapTexts(
  book: Book,
  build: Build,
  { places, ways }: Pick<BuildSwaps, "places" | "ways">,
  { choices, parts }: PartSwapSet,
): string[] {
  const lines = places.flatMap((at, i) => {
    const choice = choices[i];
    if (choice === null || choice === undefined) return [];
    const { name, quantity, alternatives } = build.ledger[at];
    const mass = pieceMass(build.ledger[at]);
    return [
      `${alternatives[choice].name} for ${name}, ${changeText(quantity * (mass - alternatives[choice].mass))}`,
    ];
  });
  return [...partTexts(book, build, ways[parts]), ...lines];
}

/** @returns what a set comes to: "498 g of 530 g; 24 to spend; there in 5 days; 97 % chance of being light enough" */
export function setFigures({ mass, price, leadTime, chance, uncertainty, allowed }: PartSwapSet): string {
  return [
    `${massText(mass)} of ${massText(allowed)} allowed`,
    price > 0 ? `${priceText(price)} to spend` : "nothing to spend",
    leadTime > 0
      ? `there in ${formatFixed(leadTime, 0)} ${leadTime === 1 ? "day" : "days"}`
      : "nothing to wait for",
    ...(uncertainty > 0 ? [`${sureText(chance)} chance of being light enough`] : []),
  ].join("; ");
}

/** @returns what no set reaches: "The nearest set comes to 620 g, 13 g more than the 607 g allowed." */
export function shortfallText({ mass, allowed }: PartSwapSet): string {
  const over = `${massText(mass - allowed)} more than the ${massText(allowed)} allowed`;
  return `No set of these swaps is light enough. The nearest comes to ${massText(mass)}, ${over}.`;
}

/** @returns which setting alone would bring the rest, on top of that set */
export function settingsText(ways: readonly string[]): string {
  if (ways.length === 0) return "No gap, number of cells or rotor size alone brings the rest.";
  return `With that set, one of these alone brings the rest: ${ways.join("; ")}.`;
}
