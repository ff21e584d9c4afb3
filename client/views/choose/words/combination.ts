import type { Book } from "../../../../shared/book/book.ts";
import { findById } from "../../../../shared/book/book.ts";
import {
  formatFixed,
  formatPlain,
  formatQuantity,
  inUnit,
  withUnit,
} from "../../../../shared/units/format.ts";
import { unitOf } from "../../../../shared/units/showing.ts";
import type { MarkWord } from "../../../ui/Mark.tsx";
import type { Combination } from "../answers.ts";

const PERCENT = 100;
const SIZE_DIGITS = 4;
/** A calibrated gap has more digits than it is known to. */
const GAP_DIGITS = 3;

/** A length with no more digits than it has. */
export function sizeText(metres: number, digits = SIZE_DIGITS): string {
  return withUnit(formatPlain(inUnit(metres, "length"), digits), unitOf("length"));
}

/** @returns what turns: motor and rotor with its size */
export function sizedRotorText(
  book: Book,
  { parts, diameter }: Pick<Combination, "parts" | "diameter">,
): string {
  const motor = findById(book.motors, parts.motor)?.data.name ?? parts.motor;
  const rotor = findById(book.rotors, parts.rotor)?.data.name ?? parts.rotor;
  return `${motor} · ${rotor} ${sizeText(diameter)}`;
}

/** @returns throttle where it isn't full, and pack */
export function packText(book: Book, { parts, duty }: Combination): string {
  const pack = findById(book.packs, parts.pack)?.data.name ?? parts.pack;
  return duty < 1 ? `throttle ${formatFixed(duty * PERCENT, 0)}\u202f% · ${pack}` : pack;
}

/** @returns whether a combination is pressed on by an open propeller, whatever its gap */
export const isOpenCombination = ({ gap }: Pick<Combination, "gap">): boolean => gap === null;

/** @returns what presses a combination on */
export const kindText = (combination: Pick<Combination, "gap">): string =>
  isOpenCombination(combination) ? "open propeller" : "ducted rotor";

/** @returns skirt with its gap; a propeller's has none, if there is a skirt at all */
export function skirtText(book: Book, { parts, gap }: Combination): string {
  if (parts.skirt === null) return "no skirt";
  const skirt = findById(book.skirts, parts.skirt)?.data.name ?? parts.skirt;
  return gap === null ? `over ${skirt}` : `gap ${sizeText(gap, GAP_DIGITS)}, ${skirt}`;
}

/** @returns the rest: throttle where it isn't full, pack, skirt with its gap; of a propeller that it is one */
export function restText(book: Book, combination: Combination): string {
  const skirt = skirtText(book, combination);
  return `${packText(book, combination)} · ${isOpenCombination(combination) ? `${kindText(combination)}, ${skirt}` : skirt}`;
}

/** One word that a combination carries, and what stands behind it. */
export interface TrustMark {
  readonly word: MarkWord;
  readonly title: string;
}

const ratio = (value: number) => `×${formatFixed(value, 2)}`;

/** @returns diameter of the tested size that a combination is scaled from [m]; null where it isn't scaled */
export function scaledFrom({ trust, diameter }: Combination): number | null {
  return trust.scaled && trust.sizeRatio ? diameter / trust.sizeRatio : null;
}

/** What lies beyond the tested range: of a propeller the speed, by its Reynolds number. */
const beyond = (combination: Combination): string => (isOpenCombination(combination) ? "speed" : "flow");

/** @returns the words of a combination that does not rest on measurements of its own size alone; none: measured */
export function trustMarks(combination: Combination): TrustMark[] {
  const { trust } = combination;
  const from = scaledFrom(combination);
  const marks: (TrustMark | null)[] = [
    trust.basis === "estimated"
      ? { word: "estimated", title: "rotor curve from its geometry, ± 30 %" }
      : null,
    trust.basis === "two-point"
      ? { word: "two-point", title: "rotor curve from blocked and open readings alone" }
      : null,
    from === null
      ? null
      : { word: "scaled", title: `from ${sizeText(from)} (${ratio(trust.sizeRatio ?? 1)})` },
    // Of an estimate nothing was tested, so there is no range to be beyond of.
    trust.extrapolated && trust.basis !== "estimated"
      ? { word: "extrapolated", title: `${beyond(combination)} beyond the tested range` }
      : null,
  ];
  return marks.filter((mark) => mark !== null);
}

function speedText(speedRatio: number | null): string {
  if (speedRatio === null) return "";
  if (speedRatio === 1) return "within the tested tip speeds";
  return speedRatio > 1
    ? `at ${ratio(speedRatio)} the fastest tested tip speed`
    : `at ${ratio(speedRatio)} the slowest tested tip speed`;
}

const BASIS = {
  measured: "measured at this size",
  "two-point": "two-point: known from blocked and open readings alone",
  estimated: "estimated from its geometry, ± 30 %, nothing of it was tested",
} as const;

/** @returns how far a combination rests on measurement: "scaled from 44 mm (×1.20), within the tested tip speeds" */
export function trustText(combination: Combination): string {
  const { trust } = combination;
  const from = scaledFrom(combination);
  const scaled = from === null ? "" : `scaled from ${sizeText(from)} (${ratio(trust.sizeRatio ?? 1)})`;
  const basis = trust.basis === "measured" && scaled !== "" ? scaled : BASIS[trust.basis];
  const also = trust.basis !== "measured" ? scaled : "";
  const flow =
    trust.extrapolated && trust.basis !== "estimated"
      ? `its ${beyond(combination)} beyond the tested range`
      : "";
  const cold = trust.coldWinding ? "winding taken cold, its thermal resistance is not known" : "";
  const said = [basis, also, speedText(trust.speedRatio), flow, cold].filter(Boolean).join(", ");
  return `${isOpenCombination(combination) ? "Propeller" : "Rotor"} ${said}.`;
}

/** @returns a size and a mass for a sentence: "534 g" */
export const massText = (kilograms: number): string => formatQuantity(kilograms, "mass");
