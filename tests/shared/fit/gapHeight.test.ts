import { describe, expect, it } from "vitest";
import { gapHeightsFromLeak } from "#shared/fit/gapHeight.ts";
import { NotEnoughDataError } from "#shared/numeric/errors.ts";
import { gapFlow } from "#shared/physics/restriction/lipGap.ts";

const air = { density: 1.2, viscosity: 1.81e-5 };
const lip = { perimeter: 0.28, land: 4e-3, lossSum: 1.5 };
const slot = { area: 6e-6 };
const rig = { ...lip, openings: [slot] };

/** Torricelli through the slot and the lip-gap law. */
const leakTest = (height: number) => ({
  air,
  points: [80, 200, 400, 800].map((pressure) => ({
    pressure,
    flow: gapFlow({ ...lip, height }, air, pressure) + 0.61 * 6e-6 * Math.sqrt((2 * pressure) / 1.2),
  })),
});

describe("gapHeightsFromLeak, on tests made with known gaps", () => {
  it("gives each reading's own height", () => {
    const points = [3e-4, 4e-4, 8e-4].flatMap((height, i) => leakTest(height).points.slice(i, i + 1));
    const heights = gapHeightsFromLeak(rig, { air, points });
    [3e-4, 4e-4, 8e-4].forEach((expected, i) => {
      expect(heights[i]).toBeCloseToRelative(expected, 1e-9);
    });
  });

  it("leaves readings out that have no pressure or less flow than leaks beside the lip", () => {
    const points = [...leakTest(4e-4).points, { pressure: 0, flow: 1e-3 }, { pressure: 100, flow: 1e-6 }];
    expect(gapHeightsFromLeak(rig, { air, points })).toHaveLength(4);
  });

  it("matches a laminar gap with the cubic law of plane Poiseuille flow", () => {
    const thin = { perimeter: 0.28, land: 0.05, lossSum: 0 };
    const pressure = 200;
    const flow = (0.28 * 8e-5 ** 3 * pressure) / (12 * air.viscosity * 0.05);
    const [height] = gapHeightsFromLeak({ ...thin, openings: [] }, { air, points: [{ pressure, flow }] });
    expect(height).toBeCloseToRelative(8e-5, 1e-9);
  });

  it("with less flow than the openings alone pass refuses", () => {
    const points = [{ pressure: 100, flow: 1e-6 }];
    expect(() => gapHeightsFromLeak(rig, { air, points })).toThrow(NotEnoughDataError);
  });
});
