import { describe, expect, it } from "vitest";
import { allowedMasses } from "#shared/decide/allowedMass.ts";
import { pullBy, pulled, type Wanted, wantedMargin } from "#shared/decide/wanted.ts";
import { PANE_CRAWLER } from "#tests/support/paneCrawler.ts";

const paneCrawler = {
  ...PANE_CRAWLER,
  pack: { series: 2, parallel: 1, openCircuitVoltage: 3.8, cellResistance: 0.03, wireResistance: 0.02 },
};

const driving = (attitude: Wanted["attitude"]): Wanted => ({ attitude, mode: "driving" });

describe("allowedMasses", () => {
  it("of a rigid vehicle, is its mass by margin over target, as every condition goes with the weight", () => {
    const wanted = [driving(90), driving(180), driving("worst")];
    const found = allowedMasses(paneCrawler, wanted, [1.5, 1]);
    wanted.forEach((of, i) => {
      const margin = wantedMargin(paneCrawler.vehicle, pullBy(paneCrawler, pulled(paneCrawler)), of);
      expect(found[i][0]).toBeCloseToRelative((paneCrawler.vehicle.mass * margin) / 1.5, 1e-9);
      expect(found[i][1]).toBeCloseToRelative(paneCrawler.vehicle.mass * margin, 1e-9);
    });
  });

  it("where the gap gives, is the mass that has just that margin", () => {
    const giving = {
      ...paneCrawler,
      vehicle: { ...paneCrawler.vehicle, verticalStiffness: 4000, gapLoad: 1.5 },
    };
    const [[mass]] = allowedMasses(giving, [driving(90)], [1.5]);
    const heavy = { ...giving, vehicle: { ...giving.vehicle, mass: mass ?? 0 } };
    expect(wantedMargin(heavy.vehicle, pullBy(heavy, pulled(heavy)), driving(90))).toBeCloseTo(1.5, 9);
  });

  it("has no limit on the floor, and allows nothing where no pull suffices", () => {
    expect(allowedMasses(paneCrawler, [driving(0)], [1])).toEqual([[null]]);
    const slippery = {
      ...paneCrawler,
      vehicle: { ...paneCrawler.vehicle, wheelFriction: 0.01, rollingResistance: 0.02 },
    };
    expect(allowedMasses(slippery, [driving(90)], [1])).toEqual([[0]]);
  });
});
