import { dsvFormat } from "d3";
import { DIMENSION_NAMES } from "../../../../shared/units/dimensions.ts";
import { conversionOf } from "../../../../shared/units/readUnit.ts";
import { unguarded } from "../../../ui/table.ts";
import { findHeader, namesOf, type TablePlace } from "./findHeader.ts";
import { guessDecimal, guessDelimiter } from "./sniff.ts";

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
  /** names of the columns, with the units of a line under them */
  readonly header: readonly string[];
  /** line of the names; null where none has them */
  readonly headerLine: number | null;
  /** lines of the file's beginning that may be the header */
  readonly top: readonly CsvLine[];
  readonly lines: readonly CsvLine[];
}

export interface CsvChoices {
  readonly delimiter?: string;
  readonly decimal?: "." | ",";
  /** line of the names; 0 where none has them */
  readonly header?: number;
}

const BYTE_ORDER_MARK = /^\uFEFF/;
const HEAD_LINE = /^("?)#\s*([\w.]+)\s*=\s*(.*)$/;

/** @returns a head line's text without the quotes and empty cells that a spreadsheet, or our own export, put around it */
const unquoted = (quote: string, raw: string): string => {
  const bare = raw.replace(/[,;\t]+$/, "").trim();
  return quote === "" ? bare : bare.replace(/"$/, "").replaceAll('""', '"');
};

/** A head line's text, as it was before the export made a JSON string of it. */
function headText(bare: string): string {
  if (!bare.startsWith('"')) return bare;
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
    const [, quote, key, raw] = HEAD_LINE.exec(line) ?? [];
    if (key !== undefined) head[key] = headText(unquoted(quote, raw));
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
    const here = { line, cells: cells.map(unguarded) };
    line += 1 + cells.reduce((sum, cell) => sum + newlines(cell), 0);
    return here;
  });
}

const isBlank = ({ cells }: CsvLine): boolean => cells.every((cell) => cell.trim() === "");

/** So many lines are looked at to find delimiter and header. */
const LOOKED_AT = 400;
/** So many lines may be said to be the header. */
const OFFERED = 60;

const isUnit = (text: string): boolean => DIMENSION_NAMES.some((name) => conversionOf(name, text) !== null);

/** The table under the line that is said to be its header; under none where 0 is said. */
function placeBy(line: number, lines: readonly CsvLine[]): TablePlace {
  if (line === 0) return { header: null, units: null, first: 0 };
  const header = lines.findIndex((each) => each.line >= line);
  return { header: Math.max(0, header), units: null, first: Math.max(0, header) + 1 };
}

function placeOf(lines: readonly CsvLine[], { header }: CsvChoices): TablePlace {
  const rows = lines.slice(0, LOOKED_AT).map(({ cells }) => cells);
  if (header === undefined) return findHeader(rows, isUnit);
  const said = placeBy(header, lines);
  // a line of units under it is found as under one that was found
  const found = said.header === null ? null : findHeader(rows.slice(said.header), isUnit);
  if (found?.header !== 0 || said.header === null) return said;
  return {
    header: said.header,
    units: found.units && found.units + said.header,
    first: found.first + said.header,
  };
}

/**
 * Reads delimited text: finds delimiter, decimal sign and header unless they are given, takes off a byte-order mark,
 * reads "# key = text" lines above the header, leaves out blank lines.
 *
 * @throws {CsvError} on text without a header and at least one row under it
 */
export function readCsv(text: string, choices: CsvChoices = {}): CsvTable {
  const { head, body, skipped } = splitHead(text.replace(BYTE_ORDER_MARK, ""));
  if (body.trim() === "")
    throw new CsvError("There is nothing in it. A header and one line a reading are needed.");
  const delimiter = choices.delimiter ?? guessDelimiter(body.split(/\r\n|\r|\n/, LOOKED_AT));
  const lines = numbered(dsvFormat(delimiter).parseRows(body), skipped + 1).filter((line) => !isBlank(line));
  const place = placeOf(lines, choices);
  const rows = lines.map(({ cells }) => cells);
  const filled = lines.slice(place.first);
  if (filled.length === 0)
    throw new CsvError(
      `There is only a header (${rows[place.header ?? 0].join(", ")}), no line with readings under it.`,
    );
  return {
    delimiter,
    decimal: choices.decimal ?? guessDecimal(rows.slice(place.first)),
    head,
    header: namesOf(rows, place),
    headerLine: place.header === null ? null : lines[place.header].line,
    top: lines.slice(0, OFFERED),
    lines: filled,
  };
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
