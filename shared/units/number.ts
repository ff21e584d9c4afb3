/**
 * Reads one number as people write it: decimal point or comma, thin spaces or apostrophes between thousands.
 *
 * @param text - the number alone, no unit
 * @returns the number, or null when it can be read in two ways ("1,200") or in none
 */
export function parseNumber(text: string): number | null {
  const bare = text.trim().replace(/(?<=\d)[\u2009\u202f\u00a0' ](?=\d{3}(?!\d))/gu, "");
  if (/\s/u.test(bare)) return null;
  const point = /^[+-]?(\d+\.?\d*|\.\d+)(e[+-]?\d+)?$/i;
  if (point.test(bare)) return Number(bare);
  const comma = /^([+-]?)(\d*),(\d+)(e[+-]?\d+)?$/i.exec(bare);
  if (!comma) return null;
  const [, sign, whole, decimals, exponent = ""] = comma;
  const couldBeThousands = decimals.length === 3 && whole !== "" && !/^0+$/.test(whole) && whole.length <= 3;
  if (couldBeThousands) return null;
  return Number(`${sign}${whole || "0"}.${decimals}${exponent}`);
}
