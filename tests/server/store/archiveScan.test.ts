import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { ArchiveScan } from "#server/store/archiveScan.ts";

const LISTS = ["records.motors", "records.packs", "deletions"];

/** Reads a text in pieces of some bytes. @returns what stays, and the entries of each list */
function scanned(text: string, size = 1e6) {
  const taken: Record<string, unknown[]> = {};
  const scan = new ArchiveScan({
    isList: (path) => LISTS.includes(path),
    take: (path, entry) => {
      taken[path] = [...(taken[path] ?? []), entry];
    },
  });
  const bytes = Buffer.from(text);
  // Each piece in the same memory, as they are read from a file.
  const piece = Buffer.alloc(Math.min(size, bytes.length));
  for (let from = 0; from < bytes.length; from += size) {
    const length = bytes.copy(piece, 0, from, from + size);
    scan.push(piece.subarray(0, length));
  }
  return { frame: scan.end(), taken };
}

const entries = fc.array(
  fc.oneof(fc.jsonValue({ maxDepth: 4 }), fc.record({ "]": fc.string(), '"[': fc.string() })),
);

describe("a document read piece by piece", () => {
  it("in pieces of any size, written with blanks or without: its entries are those that JSON.parse reads", () => {
    const document = fc.record({ head: fc.jsonValue(), motors: entries, packs: entries, deletions: entries });
    fc.assert(
      fc.property(document, fc.integer({ min: 1, max: 40 }), fc.boolean(), (given, size, spaced) => {
        const { head, motors, packs, deletions } = given;
        const whole = { head, records: { motors, wheels: [1, 2], packs }, deletions, demo: true };
        const { frame, taken } = scanned(JSON.stringify(whole, null, spaced ? 2 : 0), size);
        const read = JSON.parse(JSON.stringify(whole));
        expect(frame).toEqual({
          ...read,
          records: { ...read.records, motors: [], packs: [] },
          deletions: [],
        });
        expect(taken["records.motors"] ?? []).toEqual(read.records.motors);
        expect(taken["records.packs"] ?? []).toEqual(read.records.packs);
        expect(taken.deletions ?? []).toEqual(read.deletions);
      }),
    );
  });

  it("whose key is written with an escape: is read as that key", () => {
    expect(scanned('{"deleti\\u006fns":[1]}').taken).toEqual({ deletions: [1] });
  });

  it("without anything in it: is nothing", () => {
    expect(scanned("").frame).toBeUndefined();
  });

  it.each([
    ['{"deletions":[1,,2]}', /a comma too many/],
    ['{"deletions":[1,]}', /a comma too many/],
    ['{"deletions":[{"a":1}', /ends within a list/],
    ['{"deletions":[{"a":1]}', /no JSON/],
    ['{"deletions":[}]}', /no JSON/],
    ['{"deletions":["\\x"]}', /no JSON/],
    ['{"deletions":[1]', /no JSON/],
    ['{"deletions":[1]}}', /no JSON/],
    [`{"deletions":[${"[".repeat(40)}${"]".repeat(40)}]}`, /too deep/],
    [`{"head":${"[".repeat(40)}${"]".repeat(40)}}`, /too deep/],
    [`{"head":"${"x".repeat(200_000)}"}`, /too much outside/],
    [`{"deletions":["${"x".repeat(5_000_000)}"]}`, /A record is too large/],
  ])("%.40s: is refused in words", (text, words) => {
    expect(() => scanned(text, 1000)).toThrow(words);
  });

  it("that is not UTF-8: is refused in words", () => {
    const scan = new ArchiveScan({ isList: () => true, take: () => {} });
    expect(() => {
      scan.push(Buffer.from([0x5b, 0x22, 0xff, 0x22, 0x5d]));
      scan.end();
    }).toThrow(/not written in UTF-8/);
  });
});
