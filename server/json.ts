import { Refusal } from "./refusal.ts";

/** Lists and objects inside each other: a record of the book has 8. */
const MOST_DEPTH = 32;

/** Lists and objects in all: a body of a million bytes has less. */
const MOST_LISTS = 1_000_000;
const TOO_DEEP = `The body nests lists or objects too deep; allowed: ${MOST_DEPTH} inside each other.`;
const TOO_MANY = `The body holds too many lists and objects; allowed: ${MOST_LISTS}.`;

const [QUOTE, BACKSLASH] = ['"', "\\"].map((letter) => letter.charCodeAt(0));
const OPENING = new Set(["[", "{"].map((letter) => letter.charCodeAt(0)));
const CLOSING = new Set(["]", "}"].map((letter) => letter.charCodeAt(0)));

const malformed = (message: string): Refusal => new Refusal(400, "malformed", message);

/** Looks at the bytes alone: what lies too deep, or is too much, must not reach a reader that goes down with it. */
function requireReadable(bytes: Uint8Array): void {
  let depth = 0;
  let count = 0;
  let inText = false;
  for (let i = 0; i < bytes.length; i++) {
    const byte = bytes[i];
    if (byte === QUOTE) inText = !inText;
    else if (inText && byte === BACKSLASH) i += 1;
    else if (inText) continue;
    else if (CLOSING.has(byte)) depth -= 1;
    else if (OPENING.has(byte)) {
      depth += 1;
      count += 1;
      if (depth > MOST_DEPTH) throw malformed(TOO_DEEP);
      if (count > MOST_LISTS) throw malformed(TOO_MANY);
    }
  }
}

function textOf(bytes: Uint8Array): string {
  try {
    return new TextDecoder("utf-8", { fatal: true }).decode(bytes);
  } catch (error) {
    if (error instanceof TypeError) throw malformed("The body is no JSON: it is not written in UTF-8.");
    throw error;
  }
}

/**
 * Reads a body.
 *
 * @returns its value; undefined where there is none
 * @throws {Refusal} 400 on bytes that are no JSON, or that nest deeper than any record
 */
export function readJson(bytes: Uint8Array): unknown {
  if (bytes.length === 0) return undefined;
  requireReadable(bytes);
  const text = textOf(bytes);
  try {
    return JSON.parse(text);
  } catch (error) {
    if (error instanceof SyntaxError) throw malformed(`The body is no JSON: ${error.message}.`);
    throw error;
  }
}
