/** What stands before a number's decimals, on the screen and in what is typed. */
export type DecimalMark = "." | ",";

let mark: DecimalMark = ".";

/**
 * Sets the mark that numbers are written with in this program, once, before any is; a point unless set. Files, addresses
 * and the API keep the point.
 *
 * @param next - the reader's own
 */
export function setDecimalMark(next: DecimalMark): void {
  mark = next;
}

/** @returns the mark that numbers are written with */
export const decimalMark = (): DecimalMark => mark;

/** @returns the mark that people of a language write, by the browser's own tables; a point where it is neither point nor comma */
export function markOfLanguage(language: string): DecimalMark {
  const parts = new Intl.NumberFormat(language).formatToParts(0.5);
  return parts.some(({ type, value }) => type === "decimal" && value === ",") ? "," : ".";
}

/** How the text of a plain number, written with a point, is spelt. */
export type Spelling = (text: string) => string;

/** As files spell it: the same for every reader. */
export const withPoint: Spelling = (text) => text;

/** @returns a plain number's text, written with a point, as the reader writes it */
export const asRead = (text: string): string => (mark === "." ? text : text.replace(/(?<=\d)\.(?=\d)/, mark));
