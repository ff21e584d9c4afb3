import { describe, expect, it } from "vitest";
import type { LipLeakTest } from "#shared/fit/gapHeight.ts";
import { jointRoughness } from "#shared/fit/roughnessJoint.ts";
import { NotEnoughDataError } from "#shared/numeric/errors.ts";
import { gapFlow } from "#shared/physics/restriction/lipGap.ts";
import { normals } from "#tests/support/normals.ts";

const taped = (of: { perimeter: number; land: number; lossSum: number }) => ({ ...of, openings: [] });
const lip = { perimeter: 0.28, land: 4e-3, lossSum: 1.5 };
const other = { perimeter: 0.21, land: 8e-3, lossSum: 2.68 };
const cold = { density: 1.27, viscosity: 1.74e-5 };
const warm = { density: 1.15, viscosity: 1.87e-5 };
const ROUGH = 1.2e-4;

function made(of: typeof lip, height: number, air: typeof cold, error: () => number): LipLeakTest {
  const points = [80, 150, 300, 600].map((pressure) => ({
    pressure,
    flow: gapFlow({ ...of, height }, air, pressure) * (1 + error()),
  }));
  return { points, air };
}
const none = () => 0;

describe("jointRoughness, without noise", () => {
  it("tells the truth from two skirts at two gaps in unlike air", () => {
    const told = jointRoughness([
      {
        rig: taped(lip),
        surface: [made(lip, 4e-4 + ROUGH, cold, none)],
        smooth: [made(lip, 4e-4, warm, none)],
      },
      {
        rig: taped(other),
        surface: [made(other, 7e-4 + ROUGH, warm, none)],
        smooth: [made(other, 7e-4, cold, none)],
      },
    ]);
    expect(told.difference).toBeCloseToRelative(ROUGH, 1e-6);
    expect(told.tests).toBe(4);
  });
});

describe("jointRoughness, one pair", () => {
  it("has the uncertainty of both means added as squares", () => {
    const noise = normals(2);
    const [surface, smooth] = [5.2e-4, 4e-4].map((height) => made(lip, height, cold, () => 0.01 * noise()));
    const told = jointRoughness([{ rig: taped(lip), surface: [surface], smooth: [smooth] }]);
    expect(told.inflation).toBe(1);
    expect(told.uncertainty).toBe(told.withinTests);
  });
});

describe("jointRoughness, over 500 seeded benches of two skirts, each tested twice on either surface", () => {
  it("is right on average, and ±t·u covers the truth in 95 %, within four binomial sd", () => {
    // Eight tests less two gaps less one roughness leave ν = 5: t = 2.571 (NIST/SEMATECH e-Handbook, 1.3.6.7.2); binomial sd 1 %.
    const noise = normals(17);
    let [sum, held] = [0, 0];
    for (let i = 0; i < 500; i++) {
      const set = (of: typeof lip, gap: number) => {
        // Setting the skirt anew moves it by 8 µm, which the readings of one test can't see.
        const test = (height: number) => made(of, height + 8e-6 * noise(), cold, () => 0.01 * noise());
        return {
          rig: taped(of),
          surface: [test(gap + ROUGH), test(gap + ROUGH)],
          smooth: [test(gap), test(gap)],
        };
      };
      const told = jointRoughness([set(lip, 4e-4), set(other, 7e-4)]);
      sum += told.difference;
      if (Math.abs(told.difference - ROUGH) < 2.571 * told.uncertainty) held += 1;
    }
    expect(sum / 500).toBeCloseToRelative(ROUGH, 0.02);
    expect(Math.abs(held / 500 - 0.95)).toBeLessThan(0.04);
  });
});

describe("jointRoughness, tests that disagree", () => {
  it("widens the uncertainty by the Birge ratio, and lets the test with more readings count more", () => {
    const noise = normals(6);
    const fine = () => 0.002 * noise();
    const agree = {
      rig: taped(lip),
      surface: [made(lip, 5.2e-4, cold, fine)],
      smooth: [made(lip, 4e-4, cold, fine)],
    };
    const off = {
      rig: taped(lip),
      surface: [made(lip, 6e-4, cold, fine)],
      smooth: [made(lip, 4e-4, cold, fine)],
    };
    const told = jointRoughness([agree, off]);
    expect(told.inflation).toBeGreaterThan(3);
    expect(told.uncertainty).toBeGreaterThan(1e-5);
    const many = {
      ...agree,
      surface: agree.surface.map((test) => ({
        ...test,
        points: Array.from({ length: 20 }, () => test.points).flat(),
      })),
      smooth: agree.smooth.map((test) => ({
        ...test,
        points: Array.from({ length: 20 }, () => test.points).flat(),
      })),
    };
    expect(jointRoughness([many, off]).difference).toBeCloseToRelative(ROUGH, 0.06);
    expect(told.difference).toBeCloseToRelative((ROUGH + 2e-4) / 2, 0.06);
  });
});

describe("jointRoughness, too little", () => {
  it.each([
    ["no set", []],
    [
      "single readings",
      [
        {
          rig: taped(lip),
          surface: [{ ...made(lip, 5e-4, cold, none), points: [{ pressure: 100, flow: 3e-4 }] }],
          smooth: [{ ...made(lip, 4e-4, cold, none), points: [{ pressure: 100, flow: 2e-4 }] }],
        },
      ],
    ],
    ["no test on the smooth one", [{ rig: taped(lip), surface: [made(lip, 5e-4, cold, none)], smooth: [] }]],
  ])("%s: refused", (_, sets) => {
    expect(() => jointRoughness(sets)).toThrow(NotEnoughDataError);
  });
});
