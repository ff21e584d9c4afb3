import { dsvFormat } from "d3";

/** The text can't be read as a table; the message says why and what would do. */
export class CsvError extends Error {
  readonly code = "csv";
  constructor(message: string) {
    super(message);
    this.name = "CsvError";
  }
}

export interface CsvLine {
  /** as an editor counts them, the first is 1 */
  readonly line: number;
  readonly cells: readonly string[];
}

export interface CsvTable {
  readonly delimiter: string;
  readonly decimal: "." | ",";
  /** "# key = text" lines above the header */
  readonly head: Readonly<Record<string, string>>;
  readonly header: readonly string[];
  readonly lines: readonly CsvLine[];
}

export interface CsvChoices {
  readonly delimiter?: string;
  readonly decimal?: "." | ",";
}

export const DELIMITERS = [",", ";", "\t", "|"] as const;

const BYTE_ORDER_MARK = /^\uFEFF/;
const HEAD_LINE = /^"?#\s*([\w.]+)\s*=\s*(.*)$/;

/** @returns how often a delimiter stands outside quotes */
function countOutsideQuotes(line: string, delimiter: string): number {
  return line.replace(/"[^"]*"/g, "").split(delimiter).length - 1;
}

function guessDelimiter(header: string): string {
  const counts = DELIMITERS.map((delimiter) => countOutsideQuotes(header, delimiter));
  const most = Math.max(...counts);
  return most === 0 ? "," : DELIMITERS[counts.indexOf(most)];
}

function guessDecimal(rows: readonly (readonly string[])[]): "." | "," {
  let commas = 0;
  let points = 0;
  for (const cell of rows.flat()) {
    if (/^\s*[+-]?\d*,\d+/.test(cell)) commas++;
    else if (/^\s*[+-]?\d*\.\d+/.test(cell)) points++;
  }
  return commas > points ? "," : ".";
}

/** A head line's text, as it was before a spreadsheet added empty cells or quotes. */
function headText(raw: string): string {
  const bare = raw.replace(/[,;\t]+$/, "").trim();
  if (!bare.startsWith('"')) return bare.replace(/"$/, "").replaceAll('""', '"');
  try {
    return String(JSON.parse(bare));
  } catch (error) {
    if (error instanceof SyntaxError) return bare;
    throw error;
  }
}

function splitHead(text: string): { head: Record<string, string>; body: string; skipped: number } {
  const head: Record<string, string> = {};
  let body = text;
  let skipped = 0;
  for (;;) {
    const end = body.search(/\r\n|\r|\n/);
    const line = end < 0 ? body : body.slice(0, end);
    if (!/^"?#/.test(line) && line.trim() !== "") break;
    const [, key, raw] = HEAD_LINE.exec(line) ?? [];
    if (key !== undefined) head[key] = headText(raw);
    if (end < 0) return { head, body: "", skipped };
    body = body.slice(end).replace(/^(\r\n|\r|\n)/, "");
    skipped++;
  }
  return { head, body, skipped };
}

const newlines = (text: string): number => text.split(/\r\n|\r|\n/).length - 1;

/** Numbers lines as an editor does, cells that run over several of them included. */
function numbered(rows: readonly (readonly string[])[], first: number): CsvLine[] {
  let line = first;
  return rows.map((cells) => {
    const here = { line, cells };
    line += 1 + cells.reduce((sum, cell) => sum + newlines(cell), 0);
    return here;
  });
}

const isBlank = ({ cells }: CsvLine): boolean => cells.every((cell) => cell.trim() === "");

/**
 * Reads delimited text: finds the delimiter and the decimal sign unless they are given, takes off a byte-order mark,
 * reads "# key = text" lines above the header, leaves out blank lines.
 *
 * @throws {CsvError} on text without a header and at least one row under it
 */
export function readCsv(text: string, choices: CsvChoices = {}): CsvTable {
  const { head, body, skipped } = splitHead(text.replace(BYTE_ORDER_MARK, ""));
  if (body.trim() === "")
    throw new CsvError("There is nothing in it. A header and one line a reading are needed.");
  const delimiter = choices.delimiter ?? guessDelimiter(body.split(/\r\n|\r|\n/, 1)[0]);
  const [header, ...lines] = numbered(dsvFormat(delimiter).parseRows(body), skipped + 1);
  const filled = lines.filter((line) => !isBlank(line));
  if (filled.length === 0)
    throw new CsvError(
      `There is only a header (${header.cells.join(", ")}), no line with readings under it.`,
    );
  const decimal = choices.decimal ?? guessDecimal(filled.map((line) => line.cells));
  return { delimiter, decimal, head, header: header.cells.map((cell) => cell.trim()), lines: filled };
}

const NUMBER = /^[+-]?(\d+\.?\d*|\.\d+)(e[+-]?\d+)?$/i;

/** @returns a bare number as the file writes it; null where the cell is none */
export function readCell(cell: string, decimal: "." | ","): number | null {
  const bare = cell
    .trim()
    .replace(/(?<=\d)[\u2009\u202f\u00a0' ](?=\d{3}(?!\d))/gu, "")
    .replace("\u2212", "-");
  const pointed = decimal === "," ? withPoint(bare) : bare;
  if (!NUMBER.test(pointed)) return null;
  const value = Number(pointed);
  return Number.isFinite(value) ? value : null;
}

function withPoint(text: string): string {
  const grouped = /^([+-]?\d{1,3})((?:\.\d{3})+),(\d+)$/.exec(text);
  if (grouped) return `${grouped[1]}${grouped[2].replaceAll(".", "")}.${grouped[3]}`;
  return text.includes(".") ? "no number" : text.replace(",", ".");
}
