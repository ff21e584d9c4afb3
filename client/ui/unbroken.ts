const THIN_SPACE = "\u2009";
const NARROW_NO_BREAK_SPACE = "\u202f";

/** @returns text in which no line breaks between a figure and its unit */
export function unbroken(text: string): string {
  return text.replaceAll(THIN_SPACE, NARROW_NO_BREAK_SPACE);
}
