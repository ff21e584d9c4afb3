/** Where a page ended, in the list's order: stays valid when rows before or behind it come and go. */
export type PagePlace = readonly string[];

/** The same as one opaque word. */
export type Cursor = string;

/** The word is none that a list gave out. */
export class CursorError extends Error {
  readonly code = "invalid";
  constructor(readonly read: string) {
    super(`Read "${read}"; allowed: the "next" of the page before.`);
    this.name = "CursorError";
  }
}

export const writeCursor = (place: PagePlace): Cursor =>
  Buffer.from(JSON.stringify(place)).toString("base64url");

/** @throws {CursorError} on a word that holds no place of that many parts */
export function placeOf(cursor: Cursor, parts: number): PagePlace {
  const place = parsed(Buffer.from(cursor, "base64url").toString("utf8"));
  const right =
    Array.isArray(place) && place.length === parts && place.every((part) => typeof part === "string");
  if (!right) throw new CursorError(cursor);
  return place;
}

function parsed(text: string): unknown {
  try {
    return JSON.parse(text);
  } catch (error) {
    if (error instanceof SyntaxError) return undefined;
    throw error;
  }
}
