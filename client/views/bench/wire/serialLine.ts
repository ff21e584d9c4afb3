/** What one line from an instrument says: numbers by their names, in its order. */
export type Readings = ReadonlyMap<string, number>;

/** A line longer than this is none that an instrument means [characters]. */
const LONGEST = 2000;
/** load=412.3, p: 12.5 Pa, "rpm = 24000" */
const PAIR = /([\p{L}_][\p{L}\p{N}_.]*)\s*[=:]\s*([+-]?(?:\d+\.?\d*|\.\d+)(?:e[+-]?\d+)?)(?![\d.])/giu;
const NUMBER = /^[+-]?(?:\d+\.?\d*|\.\d+)(?:e[+-]?\d+)?$/i;

function fromJson(text: string): Readings | null {
  let read: unknown;
  try {
    read = JSON.parse(text);
  } catch (error) {
    if (error instanceof SyntaxError) return null;
    throw error;
  }
  const pairs = Array.isArray(read)
    ? read.map((value: unknown, i): [string, unknown] => [`value ${i + 1}`, value])
    : Object.entries(typeof read === "object" && read !== null ? read : { "value 1": read });
  const numbers = pairs.filter((pair): pair is [string, number] => Number.isFinite(pair[1]));
  return numbers.length === 0 ? null : new Map(numbers);
}

/**
 * Reads a line from an instrument: "load=412.3 p=1250", numbers with commas, semicolons, tabs or spaces, or JSON.
 *
 * @returns null where it holds no reading
 */
export function readSerialLine(line: string): Readings | null {
  const text = line.trim();
  if (text === "" || text.length > LONGEST) return null;
  if (/^[[{]/.test(text)) return fromJson(text);
  const pairs = [...text.matchAll(PAIR)].map(([, name, value]): [string, number] => [name, Number(value)]);
  const finite = pairs.filter(([, value]) => Number.isFinite(value));
  if (finite.length > 0) return new Map(finite);
  const cells = text.split(/\s*[,;\t]\s*|\s+/);
  if (!cells.every((cell) => NUMBER.test(cell))) return null;
  return new Map(cells.map((cell, i) => [`value ${i + 1}`, Number(cell)]));
}

/** Takes a stream of text apart into lines; what is no whole line yet waits. */
export class LineSplitter {
  private left = "";

  push(text: string): string[] {
    const lines = `${this.left}${text}`.split(/\r\n|\n|\r(?!$)/);
    this.left = (lines.pop() ?? "").slice(-LONGEST);
    return lines;
  }
}
