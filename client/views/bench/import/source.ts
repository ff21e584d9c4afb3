import { formatFixed } from "../../../../shared/units/format.ts";
import { type CsvChoices, CsvError } from "./csv.ts";
import { type Encoding, encodingOf, LOOKED_AT } from "./encoding.ts";
import { type FileLines, LineReader, linesOf, readerWithoutQuotes } from "./lineReader.ts";

const MEGABYTE = 1e6;
/** Greatest file that is read at all [byte]: a million lines of a log. */
const GREATEST_FILE = 20 * MEGABYTE;
/** So much of a file is read between two looks at what else is to be done [byte]. */
const PIECE = 500_000;

/** What is to be imported and where it came from. */
export interface Source {
  /** the file's name; empty where it was pasted */
  readonly name: string;
  /** null where it is a file that is read piece by piece */
  readonly text: string | null;
  readonly file?: Blob;
}

/** Which part of a file is read; where the reader is to stop. */
export interface Reading {
  readonly signal: AbortSignal;
  readonly onPart: (part: number) => void;
}

/** What was read of a source. */
export interface ReadSource {
  readonly lines: FileLines;
  /** null for text that was pasted */
  readonly encoding: Encoding | null;
}

/** @returns what is in a pasted text */
export function readText(text: string, { delimiter }: CsvChoices): ReadSource {
  return { lines: linesOf(text, delimiter), encoding: null };
}

async function encodingIn(name: string, file: Blob): Promise<Encoding> {
  const bytes = new Uint8Array(await file.slice(0, LOOKED_AT).arrayBuffer());
  const encoding = encodingOf(bytes, file.size <= LOOKED_AT);
  if (encoding === null) throw new CsvError(`${name} is no text file. Save the table as CSV first.`);
  return encoding;
}

async function pieceByPiece(
  file: Blob,
  encoding: Encoding,
  reader: LineReader,
  { signal, onPart }: Reading,
): Promise<FileLines> {
  const decoder = new TextDecoder(encoding);
  for (let at = 0; at < file.size; at += PIECE) {
    const bytes = await file.slice(at, at + PIECE).arrayBuffer();
    signal.throwIfAborted();
    reader.push(decoder.decode(bytes, { stream: true }));
    onPart(Math.min(1, (at + PIECE) / file.size));
  }
  reader.push(decoder.decode());
  return reader.done();
}

/**
 * Reads a file piece by piece.
 *
 * @param choices - delimiter and encoding where they are said, found where not
 * @throws {CsvError} on a file too large, or one that is no text
 * @throws {DOMException} AbortError where the reader was stopped
 */
export async function readFile(
  name: string,
  file: Blob,
  { delimiter, encoding: said }: CsvChoices,
  reading: Reading,
): Promise<ReadSource> {
  if (file.size > GREATEST_FILE) {
    const size = formatFixed(file.size / MEGABYTE, 1);
    throw new CsvError(
      `${name} has ${size} MB; allowed: at most ${GREATEST_FILE / MEGABYTE} MB. Thin it out or split it.`,
    );
  }
  const encoding = said ?? (await encodingIn(name, file));
  const first = await pieceByPiece(file, encoding, new LineReader(delimiter), reading);
  const lines =
    first.openQuote === null
      ? first
      : {
          ...(await pieceByPiece(file, encoding, readerWithoutQuotes(delimiter), reading)),
          openQuote: first.openQuote,
        };
  return { lines, encoding };
}
