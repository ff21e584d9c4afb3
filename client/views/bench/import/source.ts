import { type CsvChoices, CsvError, type CsvTable, readCsv } from "./csv.ts";

/** Greatest file that is read at all [byte]; a test's 5000 rows take far less. */
const GREATEST_FILE = 5e6;
const MEGABYTE = 1e6;

/** The text that is to be imported and where it came from. */
export interface Source {
  /** the file's name; empty where it was pasted */
  readonly name: string;
  readonly text: string;
}

/** @returns the file's text @throws {CsvError} on a file too large to be one test, or one that is no text */
export async function readFile(file: File): Promise<Source> {
  if (file.size > GREATEST_FILE) {
    const size = (file.size / MEGABYTE).toFixed(1);
    throw new CsvError(
      `${file.name} has ${size} MB; allowed: at most ${GREATEST_FILE / MEGABYTE} MB. Thin it out or split it.`,
    );
  }
  const text = await file.text();
  if (text.includes("\0")) throw new CsvError(`${file.name} is no text file. Save the table as CSV first.`);
  return { name: file.name, text };
}

/** @returns the table, or in words why there is none */
export function tableOf(
  source: Source,
  choices: CsvChoices,
): { readonly table: CsvTable | null; readonly message: string | null } {
  try {
    return { table: readCsv(source.text, choices), message: null };
  } catch (error) {
    if (!(error instanceof CsvError)) throw error;
    return { table: null, message: error.message };
  }
}
