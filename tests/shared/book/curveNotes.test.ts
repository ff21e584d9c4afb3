import { describe, expect, it } from "vitest";
import type { Book } from "#shared/book/book.ts";
import { resolveBuild, solvable } from "#shared/book/resolve.ts";
import { predictAny } from "#shared/physics/predictAny.ts";
import { demoBook } from "#tests/support/demoBook.ts";

const book = demoBook();

/** What the fit of a build's rotor says, as Curves shows it, and what its prediction says, as Match does. */
function said(of: Book, id: string) {
  const build = of.builds.find((each) => each.id === id)?.data;
  if (!build) throw new Error(`the demo has no ${id}`);
  const resolved = resolveBuild(of, build);
  const input = solvable(resolved);
  if (!input) throw new Error(`${id} has no numbers`);
  const codes = predictAny(input).warnings.map(({ code }) => code);
  return { fit: resolved.rotor?.fit ?? null, codes };
}

/** The demo with the pressures of a rotor's curve tests so many times as high. */
function withPressures(rotor: string, times: number): Book {
  const tests = book.tests.map((test) => {
    if (test.data.kind !== "curve" || test.data.rotor !== rotor) return test;
    const rows = test.data.rows.map((row) => {
      const pressure = { ...row.pressure, value: times * row.pressure.value };
      return { ...row, pressure };
    });
    return { ...test, data: { ...test.data, rows } };
  });
  return { ...book, tests };
}

describe("Match and Curves on stall", () => {
  it.each(["pane-crawler", "roof-crawler", "ridge-runner"])("of %s agree whether its rotor stalls", (id) => {
    const { fit, codes } = said(book, id);
    expect(fit).not.toBeNull();
    expect(codes.includes("stall-hump")).toBe(fit?.stall);
  });

  it("of a rise that is within the fit's uncertainty both say nothing, although the fitted curve itself rises", () => {
    const { fit } = said(book, "roof-crawler");
    const [, slope = 0] = fit?.psi ?? [];
    expect(slope).toBeGreaterThan(0);
    expect(fit?.stall).toBe(false);
  });
});

describe("an efficiency above 1", () => {
  // A sensor that reads three times too high: with the bleed plate the flow goes up as well, the shaft power stays.
  const tooMuch = withPressures("swept-nine", 3);

  it("is said by the fit and by the prediction, and by neither of the demo as it stands", () => {
    const before = said(book, "pane-crawler");
    expect([...before.codes, ...(before.fit?.warnings ?? []).map(({ code }) => code)]).not.toContain(
      "efficiency-above-one",
    );
    const { fit, codes } = said(tooMuch, "pane-crawler");
    expect(codes).toContain("efficiency-above-one");
    expect(fit?.warnings.map(({ code }) => code)).toContain("efficiency-above-one");
  });
});
