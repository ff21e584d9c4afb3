/** A chart's numbers: column headings with their units, rows of text or numbers. */
export interface Table {
  readonly columns: readonly string[];
  readonly rows: readonly (readonly (string | number | null)[])[];
}

/** Spreadsheets run a cell that starts so as a formula; a leading apostrophe keeps it text. */
const FORMULA = /^[=+\-@\t\r]/;

/** @returns a text that no spreadsheet runs */
export const guarded = (text: string): string => (FORMULA.test(text) ? `'${text}` : text);

/** @returns a text as it was before it was {@link guarded} */
export const unguarded = (text: string): string => (/^'[=+\-@\t\r]/.test(text) ? text.slice(1) : text);

function cell(value: string | number | null): string {
  if (value === null) return "";
  if (typeof value === "number") return String(value);
  const safe = guarded(value);
  return /[",\n\r]/.test(safe) ? `"${safe.replaceAll('"', '""')}"` : safe;
}

/** @returns the table as CSV (RFC 4180), decimal points, one heading line */
export function toCsv({ columns, rows }: Table): string {
  return [columns, ...rows]
    .map((row) => row.map(cell).join(","))
    .join("\r\n")
    .concat("\r\n");
}
