import { describe, expect, it } from "vitest";
import { FLAG } from "#shared/decide/choose/columns.ts";
import { trustOf } from "#shared/decide/choose/trust.ts";
import { rotor } from "./questions.ts";

/** tested at 44 mm and 30 mm, tips at 40 to 90 m/s */
const tested = rotor("r", { testedDiameters: [0.03, 0.044] });
const speedFor = (tip: number, diameter: number) => (2 * tip) / diameter;

describe("the trust in a combination", () => {
  it("of a tested size within the tested speeds is that of the measurement", () => {
    expect(trustOf(tested, 0.044, speedFor(70, 0.044), 0)).toEqual({
      basis: "measured",
      scaled: false,
      sizeRatio: 1,
      speedRatio: 1,
      extrapolated: false,
      coldWinding: false,
    });
  });

  it.each([
    [0.033, 1.1],
    [0.04, 0.04 / 0.044],
    [0.015, 0.5],
    [0.088, 2],
  ])("of a %f m rotor tells the ratio to the nearest tested size", (diameter, ratio) => {
    const trust = trustOf(tested, diameter, speedFor(70, diameter), 0);
    expect(trust.scaled).toBe(true);
    expect(trust.sizeRatio).toBeCloseToRelative(ratio, 1e-12);
  });

  it("tells how far the tips run outside the tested speeds", () => {
    expect(trustOf(tested, 0.044, speedFor(20, 0.044), 0).speedRatio).toBeCloseToRelative(0.5, 1e-12);
    expect(trustOf(tested, 0.044, speedFor(135, 0.044), 0).speedRatio).toBeCloseToRelative(1.5, 1e-12);
    expect(trustOf(tested, 0.044, 0, 0).speedRatio).toBeNull();
  });

  it("of an estimated rotor knows no tested size, and is not called scaled", () => {
    const estimated = rotor("e", { basis: "estimated", testedDiameters: [], testedTipSpeeds: null });
    const trust = trustOf(estimated, 0.044, 3000, 0);
    expect(trust).toMatchObject({ basis: "estimated", scaled: false, sizeRatio: null, speedRatio: null });
  });

  it("passes on what the flags say", () => {
    const trust = trustOf(tested, 0.044, 3000, FLAG.extrapolated | FLAG.coldWinding);
    expect(trust).toMatchObject({ extrapolated: true, coldWinding: true });
  });
});
