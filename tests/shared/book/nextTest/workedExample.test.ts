import { describe, expect, it } from "vitest";
import { findById } from "#shared/book/book.ts";
import { nextTests, type WantedVerdict } from "#shared/book/nextTest/nextTests.ts";
import type { Spread } from "#shared/decide/spread.ts";
import type { Build } from "#shared/model/build.ts";
import { demoBook } from "#tests/support/demoBook.ts";
import { workedExample } from "#tests/support/workedExample.ts";

interface Request extends WantedVerdict {
  readonly build: string;
  readonly uncertainty: Build["uncertainty"];
}
type Quantiles = Readonly<Record<"p5" | "p50" | "p95", number>>;
interface Printed {
  readonly before: Quantiles;
  readonly over: string;
  readonly first: { readonly key: string; readonly cut: number; readonly after: Quantiles };
}

/** The last digit printed, and what sampling leaves open. */
const [MARGIN, CUT] = [0.02, 0.01];
/** 95 % quantile of the standard normal distribution, from memory. */
const Z95 = 1.6449;

const { request, answer } = workedExample("next-test");
const { build: id, uncertainty, ...verdict } = request as Request;
const printed = answer as Printed;

function asPrinted(spread: Spread | null, expected: Quantiles): void {
  for (const key of ["p5", "p50", "p95"] as const)
    expect(Math.abs((spread?.[key] ?? Number.NaN) - expected[key]), key).toBeLessThan(MARGIN);
}

describe("the worked example of docs/method/next-test.md", () => {
  const book = demoBook();
  const stored = findById(book.builds, id)?.data;
  if (!stored) throw new Error(`the demo has no ${id}`);
  const { before, over, tests } = nextTests(book, { ...stored, uncertainty }, verdict);
  const [first] = tests;

  it("gives what is printed there", () => {
    asPrinted(before, printed.before);
    expect(over).toBe(printed.over);
    expect(first.key).toBe(printed.first.key);
    expect(Math.abs(first.cut - printed.first.cut)).toBeLessThan(CUT);
    asPrinted(first.after, printed.first.after);
  });

  // Independent parts of an uncertainty add as squares; the mass's alone in closed form, as the ceiling's margin goes as 1/m.
  it("cuts by what the mass's own part, worked out by hand, leaves of the whole", () => {
    const { after } = first;
    const spread = (Z95 * uncertainty["vehicle.mass"]) / (stored.vehicle.mass ?? 0);
    const ofMass = (after.p50 ?? 0) * (1 / (1 - spread) - 1 / (1 + spread));
    const rest = (after.p95 ?? 0) - (after.p5 ?? 0);
    expect(Math.abs(first.cut - (1 - rest / Math.hypot(rest, ofMass)))).toBeLessThan(2 * CUT);
  });
});
