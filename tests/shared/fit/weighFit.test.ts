import { describe, expect, it } from "vitest";
import { fitWeighing } from "#shared/fit/weighFit.ts";
import { expectOutOfRange } from "#tests/support/outOfRange.ts";

describe("fitWeighing", () => {
  // By hand: 410, 411, 412 g: mean 411 g, s = 1 g, s/√3 = 0.57735 g (JCGM 100:2008, 4.2.1 to 4.2.3)
  it("of three readings: their mean, and their scatter over the root of their number", () => {
    const { mass, uncertainty } = fitWeighing({ masses: [0.41, 0.411, 0.412] });
    expect(mass).toBeCloseToRelative(0.411, 1e-12);
    expect(uncertainty).toBeCloseToRelative(0.001 / Math.sqrt(3), 1e-9);
  });

  it("of one reading: what the scale states, and nothing where it states nothing", () => {
    expect(fitWeighing({ masses: [0.4], fixed: 3e-4, share: 1e-3 }).uncertainty).toBeCloseToRelative(
      5e-4,
      1e-12,
    );
    expect(fitWeighing({ masses: [0.4] }).uncertainty).toBeNull();
  });

  it("of equal readings: the scale's fixed part shrinks with their number, the shared part stays", () => {
    const many = fitWeighing({ masses: [0.4, 0.4, 0.4, 0.4], fixed: 3e-4, share: 5e-4 });
    // √((0.3 g)²/4 + (0.2 g)²) = 0.25 g
    expect(many.uncertainty).toBeCloseToRelative(2.5e-4, 1e-12);
  });

  it("refuses a reading of nothing, asks for a first one", () => {
    expectOutOfRange(() => fitWeighing({ masses: [0.4, 0] }), "masses.1");
    expect(() => fitWeighing({ masses: [] })).toThrow(/first reading/);
  });
});
