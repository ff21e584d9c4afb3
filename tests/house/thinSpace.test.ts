import { readFileSync } from "node:fs";
import { resolve } from "node:path";
import { expect, it } from "vitest";
import { ROOT, sourcesIn } from "./support/modules.ts";

/** What reads numbers that others wrote takes a thin space in them. */
const READERS = [
  "shared/units/number.ts",
  "client/views/bench/import/csv.ts",
  "client/views/bench/import/sniff.ts",
];
const BREAKS = /\\u2009|\u2009/;

// UAX #14 has U+2009 in class BA, a line may break after it; U+202F is in class GL, glue.
it("a figure and its unit are joined by a space that no line breaks at", () => {
  const sources = ["shared", "server", "client"].flatMap(sourcesIn).filter((path) => !READERS.includes(path));
  expect(sources.length).toBeGreaterThan(500);
  expect(sources.filter((path) => BREAKS.test(readFileSync(resolve(ROOT, path), "utf8")))).toEqual([]);
});
