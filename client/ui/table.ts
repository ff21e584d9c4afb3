/** A chart's numbers: column headings with their units, rows of text or numbers. */
export interface Table {
  readonly columns: readonly string[];
  readonly rows: readonly (readonly (string | number | null)[])[];
}

/** Spreadsheets run a cell that starts so as a formula; a leading apostrophe keeps it text. */
const FORMULA = /^[=+\-@\t\r]/;

function cell(value: string | number | null): string {
  if (value === null) return "";
  if (typeof value === "number") return String(value);
  const safe = FORMULA.test(value) ? `'${value}` : value;
  return /[",\n\r]/.test(safe) ? `"${safe.replaceAll('"', '""')}"` : safe;
}

/** @returns the table as CSV (RFC 4180), decimal points, one heading line */
export function toCsv({ columns, rows }: Table): string {
  return [columns, ...rows]
    .map((row) => row.map(cell).join(","))
    .join("\r\n")
    .concat("\r\n");
}
