import { describe, expect, it } from "vitest";
import { printedText } from "#client/views/fitup/PrintAdvice.tsx";
import { printedOf } from "#shared/book/mass/printed.ts";
import type { Build } from "#shared/model/build.ts";
import { demoBook } from "#tests/support/demoBook.ts";

const book = demoBook();
const crawler = book.builds[0].data;
const GRAMS_AN_HOUR = 1e-3 / 3600;

/** Two printed pieces of 24 g, and a weighed one that no printer lays down. */
const build: Build = {
  ...crawler,
  ledger: [
    {
      name: "Cover half",
      group: "cover",
      quantity: 2,
      mass: 0.024,
      basis: "weighed",
      alternatives: [],
      made: { by: "volume", material: "pla", volume: 2e-5, infill: 1 },
    },
    { name: "Screws", group: "structure", quantity: 1, mass: 0.01, basis: "weighed", alternatives: [] },
  ],
};
const plain = (text: string) => text.replaceAll(/[\u202f\u00a0]/g, " ");

describe("what is printed, and how long it takes", () => {
  it("48 g at 12 g/h are 4 hours, by hand; screws aren't printed", () => {
    const printed = printedOf(book, { ...build, printRate: 12 * GRAMS_AN_HOUR });
    expect(printed.mass).toBeCloseTo(0.048, 12);
    expect(printed.time).toBeCloseTo(4 * 3600, 6);
    expect(plain(printedText(printed))).toBe(
      "48 g are printed, 4.0 hours: a coupon that finds a wrong size saves them.",
    );
  });

  it("without a rate it says the grams alone", () => {
    const printed = printedOf(book, build);
    expect(printed.time).toBeNull();
    expect(plain(printedText(printed))).toBe("48 g are printed.");
  });
});
