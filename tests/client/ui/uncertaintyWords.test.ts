import { describe, expect, it } from "vitest";
import { partText, rangeText, shareParts, smallPartsText, sureText } from "#client/ui/uncertaintyWords.ts";
import type { UncertaintySource } from "#shared/book/buildUncertainty.ts";

describe("how sure, in words", () => {
  it.each([
    [1, ">\u202f99.9\u202f%"],
    [0.9995, ">\u202f99.9\u202f%"],
    [0.999, "99.9\u202f%"],
    [0.994, "99.4\u202f%"],
    [0.983, "98\u202f%"],
    [0.5, "50\u202f%"],
    [0.004, "0.4\u202f%"],
    [0.0004, "<\u202f0.1\u202f%"],
    [0, "<\u202f0.1\u202f%"],
  ])("of a share of %s: never 0 and never 100 %%", (share, text) => {
    expect(sureText(share)).toBe(text);
  });

  it("a range of margins: two decimals; none where a sample needs no pull", () => {
    expect(rangeText({ p5: 1.786, p95: 2.4649 })).toBe("1.79 to 2.46\u202f×");
    expect(rangeText({ p5: 1.2, p95: null })).toBeNull();
  });

  it("the parts of an uncertainty: those of one source together, largest first, crumbs left out", () => {
    const source = (what: string): UncertaintySource => ({ from: "fit", what, test: "curve" });
    const parts = shareParts(
      [
        { path: "skirt.gap", share: 0.4 },
        { path: "rotor.psi.0 + rotor.psi.1", share: 0.3 },
        { path: "rotor.lambda.0", share: 0.2 },
        { path: "vehicle.mass", share: 0.004 },
      ],
      {
        "skirt.gap": source("gap"),
        "rotor.psi.0": source("curve"),
        "rotor.psi.1": source("curve"),
        "rotor.lambda.0": source("curve"),
        "vehicle.mass": source("scale"),
      },
    );
    expect(parts.map(({ what, share }) => [what, Math.round(100 * share)])).toEqual([
      ["curve", 50],
      ["gap", 40],
    ]);
  });

  it("a value that nobody stated carries its mark; what is too small for a line is named all the same", () => {
    const sources = {
      "skirt.gap": { from: "stated", what: "gap of A", test: "leak" },
      "skirt.lossSum": { from: "default", what: "edge loss of A", test: "leak" },
      "vehicle.mass": { from: "default", what: "mass of B", test: null },
    } as const;
    const shares = [
      { path: "skirt.gap", share: 0.9 },
      { path: "skirt.lossSum", share: 0.004 },
      { path: "vehicle.mass", share: 0 },
    ];
    expect(shareParts(shares, sources).map(partText)).toEqual(["gap of A"]);
    expect(smallPartsText(shares, sources)).toBe(
      "Less than 0.5\u202f% each: edge loss of A (default); mass of B (default).",
    );
    expect(smallPartsText([{ path: "skirt.gap", share: 1 }], sources)).toBeNull();
  });
});
