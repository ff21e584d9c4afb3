import { describe, expect, it } from "vitest";
import { keptReach } from "#shared/decide/ways/kept.ts";
import { predictAny } from "#shared/physics/predictAny.ts";
import { runDown } from "#shared/physics/rundown.ts";
import { PANE_CRAWLER, PANE_PROPELLER } from "#tests/support/paneCrawler.ts";

const CELL = {
  capacity: 1440,
  minimumVoltage: 3,
  resistance: 0.026,
  curve: [
    [0, 3],
    [0.05, 3.4],
    [0.3, 3.65],
    [0.7, 3.85],
    [1, 4.18],
  ],
} as const;
const PACK = {
  series: 2,
  parallel: 1,
  openCircuitVoltage: 4.18,
  cellResistance: 0.026,
  wireResistance: 0.014,
};
const BUILD = { ...PANE_CRAWLER, pack: PACK };
const hold = (angle: number | "worst", margin = 1.5) => ({ angle, margin, mode: "driving" }) as const;

describe("keptReach", () => {
  it("of a margin to spare: longer than its own throttle, at the suction that gives that margin", () => {
    const reach = keptReach(BUILD, CELL, [hold("worst")]);
    if (!reach || "thrust" in reach.keep) throw new Error("It has a margin to spare.");
    expect(reach.kept).toBeGreaterThan(reach.now);
    // At the throttle that it begins with, the worst attitude has the margin, as a prediction says.
    const there = predictAny({ ...BUILD, supply: { ...BUILD.supply, duty: reach.dutyAtStart } });
    expect(there.worst.driving.margin).toBeCloseToRelative(1.5, 1e-6);
    expect(there.point?.pressure).toBeCloseToRelative(reach.keep.pressure, 1e-6);
    const pack = { series: 2, parallel: 1, wireResistance: 0.014, cell: CELL };
    const kept = runDown({ ...BUILD, pack, angles: [], keep: reach.keep });
    expect(reach.keeps).toBe(kept.keep?.fullThrottleFrom ?? kept.end.time);
    expect(reach.now).toBe(runDown({ ...BUILD, pack, angles: [] }).end.time);
  });

  it("of several attitudes: what the hardest asks for; of the floor beside it: nothing more", () => {
    const wall = keptReach(BUILD, CELL, [hold(90)]);
    const all = keptReach(BUILD, CELL, [hold(0), hold(90), hold("worst")]);
    expect(all).toEqual(keptReach(BUILD, CELL, [hold("worst")]));
    expect(keptReach(BUILD, CELL, [hold(0), hold(90)])).toEqual(wall);
  });

  it("of an open propeller: a thrust", () => {
    const { skirt: _none, ...rest } = BUILD;
    const light = { ...rest.vehicle, mass: 0.03 };
    const reach = keptReach({ ...rest, rotor: PANE_PROPELLER, vehicle: light }, CELL, [hold(90)]);
    expect(reach && "thrust" in reach.keep && reach.kept > reach.now).toBe(true);
  });

  it("of none to spare, of the floor alone, without a cell: null", () => {
    expect(keptReach(BUILD, CELL, [hold("worst", 20)])).toBeNull();
    expect(keptReach(BUILD, CELL, [hold(0)])).toBeNull();
    expect(keptReach(BUILD, null, [hold("worst")])).toBeNull();
  });
});
