import { DIMENSION_NAMES } from "../../../../shared/units/dimensions.ts";
import { conversionOf } from "../../../../shared/units/readUnit.ts";
import type { Encoding } from "./encoding.ts";
import { findHeader, namesOf, type TablePlace } from "./findHeader.ts";
import type { FileLines } from "./lineReader.ts";
import type { CsvLine, Lines } from "./lines.ts";
import { guessDecimal } from "./sniff.ts";

/** The text can't be read as a table; the message says why and what would do. */
export class CsvError extends Error {
  readonly code = "csv";
  constructor(message: string) {
    super(message);
    this.name = "CsvError";
  }
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
  readonly lines: Lines;
  /** line in which a quote opens that is never closed; null where none does */
  readonly openQuote: number | null;
}

export interface CsvChoices {
  readonly delimiter?: string;
  /** of a file; a pasted text has none */
  readonly encoding?: Encoding;
  readonly decimal?: "." | ",";
  /** line of the names; 0 where none has them */
  readonly header?: number;
}

/** So many lines are looked at to find header and decimal sign. */
const LOOKED_AT = 400;
/** So many lines of readings are read at most. */
const MOST_LINES = 1_000_000;
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
  const rows = lines.map(({ cells }) => cells);
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
 * The table in the lines of a file: finds header and decimal sign unless they are given.
 *
 * @throws {CsvError} on lines without a header and at least one row under it
 */
export function tableIn(file: FileLines, choices: CsvChoices = {}): CsvTable {
  const { delimiter, head, lines, openQuote } = file;
  if (lines.length === 0)
    throw new CsvError("There is nothing in it. A header and one line a reading are needed.");
  const beginning = lines.first(LOOKED_AT);
  const place = placeOf(beginning, choices);
  const rows = beginning.map(({ cells }) => cells);
  if (lines.length <= place.first)
    throw new CsvError(
      `There is only a header (${rows[place.header ?? 0].join(", ")}), no line with readings under it.`,
    );
  const readings = lines.length - place.first;
  if (readings > MOST_LINES)
    throw new CsvError(`It has ${readings} lines; allowed: at most ${MOST_LINES}. Thin it out or split it.`);
  return {
    delimiter,
    decimal: choices.decimal ?? guessDecimal(rows.slice(place.first)),
    head,
    header: namesOf(rows, place),
    headerLine: place.header === null ? null : beginning[place.header].line,
    top: beginning.slice(0, OFFERED),
    lines: lines.after(place.first),
    openQuote,
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
