import { describe, expect, it } from "vitest";
import { encodingOf } from "#client/views/bench/import/encoding.ts";
import { readFile } from "#client/views/bench/import/source.ts";

const TEXT = "Zeit [s];Strom [A];Prüfling 20 °C\n0;1,5;é\n";
const bytesOf = (units: readonly number[]) => new Uint8Array(units);
const utf16 = (text: string, isBig: boolean) =>
  bytesOf(
    [...text].flatMap((letter) => {
      const code = letter.charCodeAt(0);
      return isBig ? [code >> 8, code & 255] : [code & 255, code >> 8];
    }),
  );
/** Every letter of the text has its Windows-1252 code in ISO 8859-1 as well (Unicode, Latin-1 Supplement). */
const windows1252 = bytesOf([...TEXT].map((letter) => letter.charCodeAt(0)));

const FILES = [
  ["utf-8", new TextEncoder().encode(TEXT)],
  ["utf-8", new TextEncoder().encode(`\uFEFF${TEXT}`)],
  ["utf-16le", utf16(`\uFEFF${TEXT}`, false)],
  ["utf-16le", utf16(TEXT, false)],
  ["utf-16be", utf16(`\uFEFF${TEXT}`, true)],
  ["utf-16be", utf16(TEXT, true)],
  ["windows-1252", windows1252],
] as const;

const reading = { signal: new AbortController().signal, onPart: () => undefined };

describe("a file in an encoding of its own", () => {
  it.each(FILES)("in %s is read letter by letter", async (encoding, bytes) => {
    expect(encodingOf(bytes, true)).toBe(encoding);
    const read = await readFile("a.csv", new Blob([bytes]), {}, reading);
    expect(read.encoding).toBe(encoding);
    expect(read.lines.delimiter).toBe(";");
    expect([...read.lines.lines].map(({ cells }) => cells)).toEqual([
      ["Zeit [s]", "Strom [A]", "Prüfling 20 °C"],
      ["0", "1,5", "é"],
    ]);
  });

  it("in UTF-8, cut off within a letter: is still found", () => {
    const bytes = new TextEncoder().encode("°°°");
    expect(encodingOf(bytes.subarray(0, 5), false)).toBe("utf-8");
  });

  it("that is no text is refused by its name", async () => {
    const picture = new Blob([bytesOf([137, 80, 78, 71, 13, 10, 26, 10, 0, 0, 0, 13])]);
    await expect(readFile("a.png", picture, {}, reading)).rejects.toThrow(/a\.png is no text file/);
  });

  it("is given up where the reader is stopped", async () => {
    const stopped = new AbortController();
    stopped.abort();
    const asked = { signal: stopped.signal, onPart: () => undefined };
    await expect(readFile("a.csv", new Blob([TEXT]), {}, asked)).rejects.toThrow(/abort/i);
  });
});
