/** The encodings that a file can be read in, by the name that a text decoder knows. */
export const ENCODINGS = {
  "utf-8": "UTF-8",
  "utf-16le": "UTF-16",
  "utf-16be": "UTF-16, big end first",
  "windows-1252": "Windows-1252",
} as const;

export type Encoding = keyof typeof ENCODINGS;

/** A text of Latin letters in UTF-16 has a zero in most of its units: this share of one half's bytes. Judgement. */
const ZEROS = 0.3;
/** An encoding is found by so many bytes of a file's beginning. */
export const LOOKED_AT = 65_536;
/** A character of UTF-8 has at most four bytes: so many at the end may be the beginning of one. */
const CUT_OFF = 3;

function byMark([a, b, c]: Uint8Array): Encoding | null {
  if (a === 0xef && b === 0xbb && c === 0xbf) return "utf-8";
  if (a === 0xff && b === 0xfe) return "utf-16le";
  return a === 0xfe && b === 0xff ? "utf-16be" : null;
}

function byZeros(bytes: Uint8Array): Encoding | null {
  const zeros = [0, 0];
  for (let i = 0; i < bytes.length; i++) if (bytes[i] === 0) zeros[i % 2]++;
  const half = bytes.length / 2;
  if (zeros[1] > ZEROS * half && zeros[0] < zeros[1] / 2) return "utf-16le";
  return zeros[0] > ZEROS * half && zeros[1] < zeros[0] / 2 ? "utf-16be" : null;
}

function isUtf8(bytes: Uint8Array, isWhole: boolean): boolean {
  for (let cut = 0; cut <= (isWhole ? 0 : CUT_OFF); cut++) {
    try {
      new TextDecoder("utf-8", { fatal: true }).decode(bytes.subarray(0, bytes.length - cut));
      return true;
    } catch (error) {
      if (!(error instanceof TypeError)) throw error;
    }
  }
  return false;
}

/**
 * Finds the encoding of a text file.
 *
 * @param bytes - its beginning
 * @param isWhole - whether that is all of it; else its last character may be cut off
 * @returns by its byte-order mark, by the zeros of UTF-16, as UTF-8 where it is valid, else Windows-1252; null where it is no text
 *
 * Source: encoding marks, Unicode Standard 16, section 23.8
 */
export function encodingOf(bytes: Uint8Array, isWhole: boolean): Encoding | null {
  const found = byMark(bytes) ?? byZeros(bytes);
  if (found) return found;
  if (bytes.includes(0)) return null;
  return isUtf8(bytes, isWhole) ? "utf-8" : "windows-1252";
}
