import { describe, expect, it } from "vitest";
import { calibratedFrictionWords, gapText, gapWords } from "#client/ui/gapWords.ts";
import type { Book } from "#shared/book/book.ts";
import { resolveBuild } from "#shared/book/resolve.ts";
import type { Build } from "#shared/model/build.ts";
import { demoBook } from "#tests/support/demoBook.ts";

const book = demoBook();

function resolved(id: string, change: Partial<Build> = {}, changedBook: Book = book) {
  const stored = book.builds.find((record) => record.id === id);
  if (!stored) throw new Error(`no build ${id}`);
  return resolveBuild(changedBook, { ...stored.data, ...change });
}

/** The thin space of a unit reads as any other here. */
const plain = (text: string | null) => text?.replaceAll("\u202f", " ") ?? null;

describe("gapText", () => {
  it.each([
    [0.0006, null, "0.60 mm"],
    [0.00047, 0.00004, "0.47 ± 0.04 mm"],
    [0.0006118, 0.0000096, "0.612 ± 0.010 mm"],
    [0.0012, 0.0003, "1.20 ± 0.30 mm"],
  ])("of %f m ± %f m: as many digits as the uncertainty allows", (gap, uncertainty, text) => {
    expect(plain(gapText(gap, uncertainty))).toBe(text);
  });
});

describe("gapWords", () => {
  it("with pulls: calibrated, by how many, and what was set", () => {
    expect(plain(gapWords(resolved("pane-crawler")))).toMatch(
      /^calibrated 0\.61\d? ± 0\.0\d+ mm from 7 pulls \(set 0\.60 mm\)$/,
    );
  });

  it("with a leak test in its place: that alone, the pulls have no word on the gap", () => {
    expect(plain(gapWords(resolved("ridge-runner")))).toMatch(/from 1 leak test \(set 0\.40 mm\)$/);
  });

  it("with no pulls: set, or measured where the skirt says so, with its uncertainty", () => {
    const changedBook = { ...book, tests: book.tests.filter(({ data }) => data.kind !== "pull") };
    expect(plain(gapWords(resolved("pane-crawler", {}, changedBook)))).toBe("set 0.60 ± 0.10 mm");
    const skirts = changedBook.skirts.map((skirt) => ({
      ...skirt,
      data: { ...skirt.data, gapBasis: "measured" as const },
    }));
    expect(plain(gapWords(resolved("pane-crawler", {}, { ...changedBook, skirts })))).toBe(
      "measured 0.60 ± 0.10 mm",
    );
  });

  it("with a gap tried: what it stands in for", () => {
    expect(plain(gapWords(resolved("pane-crawler", { overrides: { gap: 0.0009 } })))).toMatch(
      /^0\.90 ± 0\.10 mm in the build \(calibrated 0\.61 mm, set 0\.60 mm\)$/,
    );
  });
});

describe("calibratedFrictionWords", () => {
  it("with pulls along: value, uncertainty and tests; straight off alone: null", () => {
    expect(plain(calibratedFrictionWords(resolved("roof-crawler")))).toMatch(
      /^calibrated 0\.7\d ± 0\.01 from 7 pulls$/,
    );
    expect(calibratedFrictionWords(resolved("pane-crawler"))).toBeNull();
  });
});
