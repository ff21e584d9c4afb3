import { decimalMark } from "./decimalMark.ts";

/** Spaces and apostrophes between groups of three digits. */
const GROUPS = /(?<=\d)[\u2009\u202f\u00a0\u2007'’ ](?=\d{3}(?!\d))/gu;
const POINT = /^[+-]?(\d+\.?\d*|\.\d+)(e[+-]?\d+)?$/i;
/** Groups with the other sign before the decimals, or two groups and more: only one way to read them. */
const COMMAS = /^[+-]?\d{1,3}(,\d{3})+\.\d+$|^[+-]?\d{1,3}(,\d{3}){2,}$/;
const POINTS = /^[+-]?\d{1,3}(\.\d{3})+,\d+$|^[+-]?\d{1,3}(\.\d{3}){2,}$/;
const COMMA = /^([+-]?)(\d*),(\d+)(e[+-]?\d+)?$/i;

function withComma(bare: string): number | null {
  const [, sign, whole, decimals, exponent = ""] = COMMA.exec(bare) ?? [];
  if (decimals === undefined) return null;
  const couldBeThousands =
    decimalMark() !== "," &&
    decimals.length === 3 &&
    whole !== "" &&
    !/^0+$/.test(whole) &&
    whole.length <= 3;
  return couldBeThousands ? null : Number(`${sign}${whole || "0"}.${decimals}${exponent}`);
}

/**
 * Reads one number as people write it: decimal point or comma, thin spaces or apostrophes between thousands, a true minus.
 *
 * @param text - the number alone, no unit
 * @returns the number, or null when it can be read in two ways ("1,200", unless a comma is the reader's decimal mark) or in none
 */
export function parseNumber(text: string): number | null {
  const bare = text.trim().replace("\u2212", "-").replace(GROUPS, "");
  if (/\s/u.test(bare)) return null;
  if (POINT.test(bare)) return Number(bare);
  if (COMMAS.test(bare)) return Number(bare.replaceAll(",", ""));
  if (POINTS.test(bare)) return Number(bare.replaceAll(".", "").replace(",", "."));
  return withComma(bare);
}

/** A number at the start of a text, and what follows it. */
export interface Head {
  /** null: it can be read in two ways, or in none */
  readonly value: number | null;
  readonly rest: string;
  /** written as a fraction: "3/4", "1½" */
  readonly fraction: boolean;
}

const VULGAR: Readonly<Record<string, number>> = {
  "½": 1 / 2,
  "⅓": 1 / 3,
  "⅔": 2 / 3,
  "¼": 1 / 4,
  "¾": 3 / 4,
  "⅕": 1 / 5,
  "⅖": 2 / 5,
  "⅗": 3 / 5,
  "⅘": 4 / 5,
  "⅙": 1 / 6,
  "⅚": 5 / 6,
  "⅛": 1 / 8,
  "⅜": 3 / 8,
  "⅝": 5 / 8,
  "⅞": 7 / 8,
};
const SIGNS = Object.keys(VULGAR).join("");
/** "½", "1½", "1 ½" */
const WITH_SIGN = new RegExp(`^([+-]?)(\\d*)\\s*([${SIGNS}])(?![\\d.,/])`, "u");
/** "3/4", "1 1/2", "1-1/2" */
const WITH_STROKE = /^([+-]?)(?:(\d+)(?:\s+|-))?(\d+)\s?[/⁄]\s?(\d+)(?![\d.,/⁄])/;
/** Rules and drills are marked down to such parts of an inch. Common practice, no source. */
const FINEST = 128;
const DECIMAL =
  /^[+-]?(?:\d[\d.,]*(?:[\u2009\u202f\u00a0\u2007'’ ]\d{3}(?!\d)[\d.,]*)*|[.,]\d+)(?:e[+-]?\d+)?/iu;

const signed = (sign: string, size: number) => (sign === "-" ? -size : size);

function fractionAt(text: string): Head | null {
  const [whole, sign, units, vulgar] = WITH_SIGN.exec(text) ?? [];
  if (whole !== undefined)
    return {
      value: signed(sign, Number(units) + VULGAR[vulgar]),
      rest: text.slice(whole.length),
      fraction: true,
    };
  const [all, minus, before, over, under] = WITH_STROKE.exec(text) ?? [];
  if (all === undefined) return null;
  const proper = Number(over) < Number(under) && Number(under) <= FINEST;
  const size = Number(before ?? 0) + Number(over) / Number(under);
  return { value: proper ? signed(minus, size) : null, rest: text.slice(all.length), fraction: true };
}

/**
 * The number that a text begins with: decimals, "24 000", "3/4", "1 1/2", "½".
 *
 * @param text - without spaces before it
 * @returns the number and what follows it; null where the text begins with none
 */
export function headOf(text: string): Head | null {
  const said = text.replace(/^\u2212/, "-");
  const fraction = fractionAt(said);
  if (fraction) return fraction;
  const [digits] = DECIMAL.exec(said) ?? [];
  if (digits === undefined) return null;
  return { value: parseNumber(digits), rest: said.slice(digits.length), fraction: false };
}
