import { DIMENSION_NAMES, dimension } from "../../shared/units/dimensions.ts";

/** A number with its standard uncertainty, which sets the digits that it is shown and saved with. */
export interface Figure {
  readonly value: number;
  readonly uncertainty: number;
}

export type Cell = string | number | Figure | null;

/** @returns a number with its uncertainty, where that is known and not none */
export const known = (value: number, uncertainty: number | null | undefined): number | Figure =>
  uncertainty && uncertainty > 0 ? { value, uncertainty } : value;

/** A figure down to the last place that two digits of its uncertainty reach (JCGM 100:2008, 7.2.6) */
function roundedFigure({ value, uncertainty }: Figure): number {
  const place = Math.floor(Math.log10(uncertainty)) - 1;
  const unit = 10 ** place;
  return place > 0 ? Math.round(value / unit) * unit : Number(value.toFixed(Math.min(-place, MOST_PLACES)));
}

/** Decimals beyond these no figure has. */
const MOST_PLACES = 20;

/** A chart's numbers: column headings with their units, rows of text or numbers. */
export interface Table {
  readonly columns: readonly string[];
  readonly rows: readonly (readonly Cell[])[];
}

/** Spreadsheets run a cell that starts so as a formula; a leading apostrophe keeps it text. */
const FORMULA = /^[=+\-@\t\r]/;

/** @returns a text that no spreadsheet runs */
export const guarded = (text: string): string => (FORMULA.test(text) ? `'${text}` : text);

/** @returns a text as it was before it was {@link guarded} */
export const unguarded = (text: string): string => (/^'[=+\-@\t\r]/.test(text) ? text.slice(1) : text);

function quoted(text: string): string {
  const safe = guarded(text);
  return /[",\n\r]/.test(safe) ? `"${safe.replaceAll('"', '""')}"` : safe;
}

const UNITS: ReadonlySet<string> = new Set(
  DIMENSION_NAMES.flatMap((name) => {
    const { si, shown } = dimension(name);
    return [si, ...shown.map(({ label }) => label)].filter((label) => label !== "1");
  }),
);

/** A column's name in a file, its unit in brackets, as files are read: "flow, L/s" → "flow [L/s]". */
function headingInFile(column: string): string {
  const [, what, unit] = /^(.+), (\S+)$/.exec(column) ?? [];
  return unit !== undefined && UNITS.has(unit) ? `${what} [${unit}]` : column;
}

/** @returns the table as CSV (RFC 4180), decimal points, one heading line, units in brackets; numbers with the digits that they are known to, at most six */
export function toCsv({ columns, rows }: Table): string {
  return [columns.map(headingInFile).map(quoted), ...rows.map((row) => row.map(savedText))]
    .map((row) => row.join(","))
    .join("\r\n")
    .concat("\r\n");
}

/** Significant digits of a saved number whose uncertainty is not known, or is smaller. */
const MOST_DIGITS = 6;

function savedText(cell: Cell): string {
  if (cell === null) return "";
  if (typeof cell === "string") return quoted(cell);
  const value = typeof cell === "number" ? cell : shownValue(cell);
  return Number.isFinite(value) ? String(Number(value.toPrecision(MOST_DIGITS))) : "";
}

/** @returns a figure as it is shown and saved: rounded where its uncertainty is known */
export const shownValue = (figure: Figure): number =>
  figure.uncertainty > 0 ? roundedFigure(figure) : figure.value;
