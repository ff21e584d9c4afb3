import type { FitStack } from "../../../shared/book/fitUp/fitStack.ts";
import type { StackVerdict } from "../../../shared/decide/fitUp/stack.ts";
import { percentText } from "../../../shared/decide/verdict/figures.ts";
import type { SizeBasis, StackKind } from "../../../shared/model/stacks.ts";
import { figureIn, withUnit } from "../../../shared/units/format.ts";
import { unitOf } from "../../../shared/units/showing.ts";

/** From this length on calipers tell tenths of a millimetre, below it hundredths [m]. */
const LONG = 0.01;

/** @returns a length without its unit: "0.35", "24.0" */
export function sizeFigure(metres: number): string {
  return figureIn(metres, "length", Math.abs(metres) < LONG ? 2 : 1);
}

/** @returns a length: "0.35 mm" */
export const sizeText = (metres: number): string => withUnit(sizeFigure(metres), unitOf("length"));

/** @returns both ends of a range: "−0.10 to 0.70 mm" */
export const rangeText = ([low, high]: readonly [number, number]): string =>
  `${sizeFigure(low)} to ${sizeText(high)}`;

export const VERDICT_WORDS: Readonly<Record<StackVerdict, string>> = {
  closes: "closes",
  "may-not-close": "may not close",
  "will-not-close": "will not close",
};

export const VERDICT_TONES: Readonly<Record<StackVerdict, "good" | "near" | "bad">> = {
  closes: "good",
  "may-not-close": "near",
  "will-not-close": "bad",
};

export const BASIS_WORDS: Readonly<Record<SizeBasis, string>> = {
  drawn: "as drawn",
  measured: "measured",
  free: "room that must stay",
};

export const KIND_WORDS: Readonly<Record<StackKind, string>> = {
  height: "Height under the cover",
  pocket: "Motor in its pocket",
  casing: "Rotor in its casing, height",
  tip: "Tip clearance",
  inlet: "Room before the inlet",
  gap: "Skirt over the surface",
  other: "Another stack",
};

/** Round ones have their clearance on both sides. */
export const isRound = (kind: StackKind): boolean => kind === "pocket" || kind === "tip";

type Solved = FitStack & { readonly stack: NonNullable<FitStack["stack"]> };

const isSolved = (fit: FitStack): fit is Solved => fit.stack !== null;

const ORDER: readonly StackVerdict[] = ["will-not-close", "may-not-close", "closes"];

/** @returns the stacks that have an answer, the tightest first */
export function tightestFirst(fits: readonly FitStack[]): Solved[] {
  return fits
    .filter(isSolved)
    .sort(
      (a, b) =>
        ORDER.indexOf(a.stack.verdict) - ORDER.indexOf(b.stack.verdict) ||
        a.stack.worstCase[0] - b.stack.worstCase[0],
    );
}

const lowered = (text: string) => text.charAt(0).toLowerCase() + text.slice(1);

/** @returns the answer in one sentence: what doesn't close and by how much, or what is tightest */
export function fitSentence(fits: readonly FitStack[]): string {
  const [tightest] = tightestFirst(fits);
  if (!tightest) return fits.length === 0 ? "No stack is entered yet." : "No stack has all its sizes yet.";
  const { name, stack } = tightest;
  const [low] = stack.worstCase;
  if (stack.verdict === "will-not-close")
    return `Will not close: ${lowered(name)} is ${sizeText(-stack.clearance)} short.`;
  if (stack.verdict === "may-not-close")
    return `May not close: ${lowered(name)} is ${sizeText(-low)} short at worst.`;
  return `Everything closes; tightest is ${lowered(name)}, ${sizeText(low)} left at worst.`;
}

/** @returns how the stacks stand: "2 close, 1 may not close, 1 lacks a size" */
export function fitFigures(fits: readonly FitStack[]): string {
  const count = (verdict: StackVerdict) => fits.filter(({ stack }) => stack?.verdict === verdict).length;
  const open = fits.filter(({ stack }) => stack === null).length;
  const closing = count("closes");
  return [
    closing > 0 ? `${closing} ${closing === 1 ? "closes" : "close"}` : "",
    ...(["may-not-close", "will-not-close"] as const).map((verdict) =>
      count(verdict) > 0 ? `${count(verdict)} ${VERDICT_WORDS[verdict]}` : "",
    ),
    open > 0 ? `${open} ${open === 1 ? "lacks" : "lack"} a size` : "",
  ]
    .filter(Boolean)
    .join(", ");
}

/** @returns what is left, on each side where it is round */
export function leftText({ kind, stack }: Solved): string {
  if (!isRound(kind)) return sizeText(stack.clearance);
  return `${sizeText(stack.clearance)}, ${sizeText(stack.clearance / 2)} a side`;
}

/** A chance this near to certain says no more than that [-]. */
const CERTAIN = 0.999;

/** @returns a chance: "97 %", "over 99.9 %" */
function certainty(chance: number): string {
  const isNearly = chance > CERTAIN && chance < 1;
  return isNearly ? `over ${percentText(CERTAIN)}` : percentText(chance);
}

/** @returns a chance of closing, normal and evenly spread: "97 %; 94 % were the errors spread evenly" */
export function chanceText(normal: number, uniform: number): string {
  const [one, other] = [certainty(normal), certainty(uniform)];
  return one === other ? one : `${one}; ${other} were the errors spread evenly`;
}
