import { describe, expect, it } from "vitest";
import type { UncertaintyState } from "#client/state/useUncertainty.ts";
import { rangeText } from "#client/ui/uncertaintyWords.ts";
import { bandFigures } from "#client/ui/verdict/bandFigures.ts";
import { verdictOf } from "#shared/decide/verdict/verdict.ts";
import { type Change, findings } from "#tests/shared/decide/verdict/examples.ts";

const spread = { p5: 1.21, p50: 1.4, p95: 1.62, holds: 0.99 };
const sure: UncertaintyState = {
  doubt: null,
  worst: {
    parked: { angle: 128, parked: spread, driving: spread },
    driving: { angle: 128, parked: spread, driving: spread },
  },
  asked: { uncertainty: { "skirt.gap": 1e-5 } },
  joints: null,
  sources: {},
  nothingStated: false,
  problem: null,
  busy: false,
};
const plain = (text: string) => text.replaceAll(/\u202f/g, " ");
const figures = (change: Change, state = sure) =>
  bandFigures(verdictOf(findings(change)), 1.5, state).map(({ value, of, also, margin, sampled }) =>
    plain(
      [value, of, [margin && sampled && rangeText(sampled.spread), also].filter(Boolean).join(", ")]
        .filter(Boolean)
        .join(" | "),
    ),
  );

describe("the figures of the verdict band", () => {
  it("of a build that holds: the margin with its range and the target, then the chance", () => {
    expect(figures({})).toEqual([
      "2.00 × | the pull needed on the overhang | 1.21 to 1.62 ×, target 1.5 ×",
      "99 % | chance of holding",
    ]);
  });

  it("of an unsure one: the chance first", () => {
    expect(figures({ chance: 0.9 })[0]).toBe("90 % | chance of holding");
  });

  it.each<[string, Change, string]>([
    ["bursts", { factor: 0.92 }, "92 % | of its speed, and the rotor bursts"],
    ["burns", { winding: 477.15 }, "204 °C | in the winding, 120 °C allowed"],
  ])("of one that %s: that figure alone, no margin and no chance beside it", (_state, change, figure) => {
    expect(figures({ ...change, parked: 7.12, chance: 0.9999 })).toEqual([figure]);
  });

  it("over a rating: how far, then the margin, and no chance of holding", () => {
    const said = figures({ ratings: { "motor-voltage": 1.06 } });
    expect(said[0]).toMatch(/^106 %/);
    expect(said).toHaveLength(2);
    expect(said.join()).not.toMatch(/chance/);
  });

  it("while the chance is being sampled: keeps its place; where nothing is uncertain: leaves it out", () => {
    expect(figures({ chance: null }).at(-1)).toBe("… | chance of holding");
    expect(figures({ chance: null }, { ...sure, asked: null, worst: null })).toEqual([
      "2.00 × | the pull needed on the overhang | target 1.5 ×",
    ]);
  });

  it("of a rotor that stands: no chance, and a margin of 0 at the most", () => {
    expect(figures({ turns: false, parked: 0 }).join()).not.toMatch(/chance/);
  });
});
