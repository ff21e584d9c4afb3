import type { DimensionName } from "./dimensions.ts";
import { type Head, headOf } from "./number.ts";
import { refuse, refuseUnit, TWO_NUMBERS, type TypedQuantity, toSI } from "./quantity.ts";
import { conversionOf } from "./readUnit.ts";
import { unitOf } from "./showing.ts";

export { type TypedQuantity, toSI, UnitError } from "./quantity.ts";

/** A number and the unit behind it; empty where none stands there. */
interface Part {
  readonly value: number;
  readonly unit: string;
  readonly fraction: boolean;
}

const THOUSAND = 1000;
/** "28k", "28k rpm": thousands, where no unit begins so. */
const THOUSANDS = /^k(?![a-z])\s*/i;
/** Where the next number of "1 lb 3 oz" or 5'3" begins. */
const NEXT = /(?<=[a-z°.])\s+(?=[\d½¼¾⅛⅜⅝⅞])|(?<=['"′″])\s*(?=[\d½¼¾⅛⅜⅝⅞])/iu;
const MOST_PARTS = 3;

/** The number and the unit in which it is meant, "k" read as thousands where it is no unit. */
function partOf({ value, rest, fraction }: Head, text: string, name: DimensionName): Part {
  if (value === null) throw refuse(text, name, "The number can be read in two ways or in none.");
  const unit = rest.trim().replace(/(?<=[a-z])\.$/i, "");
  if (unit === "" || conversionOf(name, unit)) return { value, unit, fraction };
  const thousands = unit.replace(THOUSANDS, "");
  if (thousands !== unit && (thousands === "" || conversionOf(name, thousands)))
    return { value: value * THOUSAND, unit: thousands, fraction };
  throw refuseUnit(text, unit, name);
}

function partsOf(text: string, name: DimensionName): Part[] {
  const parts: Part[] = [];
  let left = text;
  while (left !== "") {
    const head = headOf(left);
    if (!head || parts.length === MOST_PARTS) throw refuse(text, name, "There is no number in it.");
    const next = NEXT.exec(head.rest);
    const end = next ? next.index : head.rest.length;
    parts.push(partOf({ ...head, rest: head.rest.slice(0, end) }, text, name));
    left = head.rest.slice(end).trim();
  }
  return parts;
}

const NEAR = 1e-9;
const rounded = (ratio: number) =>
  Math.abs(ratio - Math.round(ratio)) < NEAR * ratio ? Math.round(ratio) : ratio;

/** "1 lb 3 oz" as 19 oz: whole parts first, each less than one of the unit before. */
function together(parts: readonly Part[], text: string, name: DimensionName): TypedQuantity {
  const factors = parts.map(({ unit }) => conversionOf(name, unit)?.factor ?? Number.NaN);
  const last = factors[factors.length - 1];
  const total = parts.reduce((sum, { value, unit }, i) => {
    const whole = i === parts.length - 1 || (Number.isInteger(value) && value >= 0);
    const fits = i === 0 || (value >= 0 && value * factors[i] < factors[i - 1] * (1 - NEAR));
    if (unit === "" || !whole || !fits || conversionOf(name, unit)?.offset !== 0)
      throw refuse(text, name, TWO_NUMBERS);
    return sum + value * rounded(factors[i] / last);
  }, 0);
  return { value: total, unit: parts[parts.length - 1].unit };
}

/** A part of a whole is half of it, not half a percent. */
function meantUnit(name: DimensionName, fraction: boolean, defaultUnit: string | undefined): string {
  if (name === "fraction" && fraction) return "1";
  return defaultUnit ?? unitOf(name);
}

/**
 * Splits what a person typed into number and unit, and checks the unit.
 *
 * @param text - such as "12 mmH2O", "0,4 psi", "38", "1 lb 3 oz", "1 1/2 in", "28k"
 * @param name - which quantity it must be
 * @param defaultUnit - the unit meant when none is typed
 * @returns the quantity as typed, the default unit filled in; a sum of units in the last of them
 * @throws {UnitError} when there is no number, the number is ambiguous, there are two, or the unit is of another quantity
 */
export function parseQuantity(text: string, name: DimensionName, defaultUnit?: string): TypedQuantity {
  const trimmed = text.trim();
  if (trimmed === "") throw refuse(trimmed, name, "Nothing was typed.");
  const [first, ...more] = partsOf(trimmed, name);
  const typed =
    more.length > 0
      ? together([first, ...more], trimmed, name)
      : { value: first.value, unit: first.unit || meantUnit(name, first.fraction, defaultUnit) };
  toSI(typed, name, trimmed);
  return typed;
}
