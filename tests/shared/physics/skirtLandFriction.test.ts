import { describe, expect, it } from "vitest";
import { type PredictInput, predict } from "#shared/physics/predict.ts";
import { leakFlow } from "#shared/physics/restriction/leak.ts";
import { type LeakingSkirt, skirtLeak } from "#shared/physics/skirt.ts";
import { PANE_CRAWLER } from "#tests/support/paneCrawler.ts";

const CRAWLER: PredictInput = {
  ...PANE_CRAWLER,
  pack: { series: 2, parallel: 1, openCircuitVoltage: 4, cellResistance: 0.02, wireResistance: 0.02 },
};
const AIR = { density: 1.2, viscosity: 1.81e-5 };
const SKIRT: LeakingSkirt = {
  perimeter: 0.3,
  gap: 1e-4,
  roughness: 0,
  land: 0.01,
  lossSum: 0,
  openings: [],
  measuredLeak: null,
};
const flowAt = (landFriction: number, pressure: number) =>
  leakFlow(skirtLeak({ ...SKIRT, landFriction }, AIR), AIR, pressure);

describe("a factor on the friction along the lip", () => {
  // Exact: plane Poiseuille flow, Q = P·h³·Δp/(12·μ·ℓ·f).
  it.each([0.7, 1, 1.15])("of %s in laminar flow without losses: the flow goes as its inverse", (factor) => {
    const expected = (0.3 * 1e-4 ** 3 * 40) / (12 * AIR.viscosity * 0.01 * factor);
    expect(flowAt(factor, 40)).toBeCloseToRelative(expected, 1e-12);
  });

  it("widens no lip: the area under it stays, so more friction alone pulls harder", () => {
    const pull = (landFriction: number) =>
      predict({ ...CRAWLER, skirt: { ...CRAWLER.skirt, landFriction } }, []).suction;
    expect(pull(1.15)).toBeGreaterThan(pull(1));
    expect(pull(1)).toBe(predict(CRAWLER, []).suction);
  });
});
