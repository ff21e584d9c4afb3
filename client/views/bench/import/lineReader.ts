import Papa from "papaparse";
import { unguarded } from "../../../ui/table.ts";
import { type CsvLine, type Lines, LinesBuilder } from "./lines.ts";
import { guessDelimiter } from "./sniff.ts";

/** What stands in a file, cells apart, nothing read yet. */
export interface FileLines {
  readonly delimiter: string;
  /** "# key = text" lines above the table */
  readonly head: Readonly<Record<string, string>>;
  readonly lines: Lines;
  /** line in which a quote opens that is never closed: quotes are then read as text; null where none does */
  readonly openQuote: number | null;
}

const BYTE_ORDER_MARK = /^\uFEFF/;
const HEAD_LINE = /^("?)#\s*([\w.]+)\s*=\s*(.*)$/;
/** A delimiter is found by so many lines. */
const LOOKED_AT = 400;
/** No character of a file: quotes are text then. */
const NO_QUOTE = "\u0000";

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

/** Head lines and blank lines of a beginning, and what is below them. */
function splitHead(text: string): { head: Record<string, string>; body: string; passed: number } {
  const head: Record<string, string> = {};
  let at = 0;
  let passed = 0;
  while (at < text.length) {
    const end = text.indexOf("\n", at);
    const line = text.slice(at, end < 0 ? text.length : end);
    if (!/^"?#/.test(line) && line.trim() !== "") break;
    const [, quote, key, raw] = HEAD_LINE.exec(line) ?? [];
    if (key !== undefined) head[key] = headText(unquoted(quote, raw));
    at = end < 0 ? text.length : end + 1;
    if (end >= 0) passed++;
  }
  return { head, body: text.slice(at), passed };
}

const isBlank = (cells: readonly string[]): boolean => cells.every((cell) => cell.trim() === "");

/** Reads a file piece by piece: finds its delimiter, takes lines apart, numbers them as an editor does. */
export class LineReader {
  private left = "";
  private begun: { head: Record<string, string>; delimiter: string } | null = null;
  private line = 1;
  private readonly kept = new LinesBuilder();
  private openQuote: number | null = null;

  constructor(
    private readonly delimiter: string | undefined,
    private readonly quote = '"',
  ) {}

  /** Takes the next piece of the file's text in. */
  push(piece: string): void {
    this.left = `${this.left}${piece}`;
    this.take(false);
  }

  /** @returns all that was read */
  done(): FileLines {
    this.take(true);
    const { head, delimiter } = this.begun ?? { head: {}, delimiter: this.delimiter ?? "," };
    return { delimiter, head, lines: this.kept.done(), openQuote: this.openQuote };
  }

  private take(isLast: boolean): void {
    // a carriage return at the end may be half of a line's end
    const cut = !isLast && this.left.endsWith("\r") ? 1 : 0;
    const text = this.left.slice(0, this.left.length - cut).replace(/\r\n?/g, "\n");
    const rest = this.left.slice(this.left.length - cut);
    const body = this.begin(text);
    const { data, errors, meta } = this.parser().parse(body, 0, !isLast) as Papa.ParseResult<string[]>;
    const open = errors.find(({ code }) => code === "MissingQuotes");
    if (open) this.openQuote = this.line + lineEnds(data.slice(0, open.row ?? 0));
    this.keep(data);
    this.left = isLast ? "" : body.slice(meta.cursor) + rest;
  }

  private parser(): Papa.Parser {
    const { delimiter } = this.begun ?? { delimiter: "," };
    return new Papa.Parser({ delimiter, newline: "\n", quoteChar: this.quote });
  }

  /** The beginning without its head lines; sets the delimiter. */
  private begin(text: string): string {
    if (this.begun) return text;
    const { head, body, passed } = splitHead(text.replace(BYTE_ORDER_MARK, ""));
    this.line += passed;
    const delimiter = this.delimiter ?? guessDelimiter(body.split("\n", LOOKED_AT));
    this.begun = { head, delimiter };
    return body;
  }

  private keep(rows: readonly string[][]): void {
    const lines: CsvLine[] = [];
    for (const cells of rows) {
      if (!isBlank(cells)) lines.push({ line: this.line, cells: cells.map(unguarded) });
      this.line += lineEnds([cells]);
    }
    this.kept.add(lines);
  }
}

/** @returns the ends of lines in some rows, those in their cells included */
function lineEnds(rows: readonly (readonly string[])[]): number {
  return rows.reduce(
    (sum, cells) =>
      cells.reduce((ends, cell) => ends + (cell.includes("\n") ? cell.split("\n").length - 1 : 0), sum + 1),
    0,
  );
}

/** @returns a reader of the same file that reads quotes as text, for one in which a quote is never closed */
export function readerWithoutQuotes(delimiter: string | undefined): LineReader {
  return new LineReader(delimiter, NO_QUOTE);
}

/** @returns the lines of a text that is whole */
export function linesOf(text: string, delimiter?: string): FileLines {
  const reader = new LineReader(delimiter);
  reader.push(text);
  const read = reader.done();
  if (read.openQuote === null) return read;
  const plain = readerWithoutQuotes(delimiter);
  plain.push(text);
  return { ...plain.done(), openQuote: read.openQuote };
}
