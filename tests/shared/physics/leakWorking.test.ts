import { describe, expect, it } from "vitest";
import { leakWorking } from "#shared/physics/leakWorking.ts";
import { leakFlow, leakLaw } from "#shared/physics/point/leakLaw.ts";
import type { Working } from "#shared/physics/working.ts";

const air = { density: 1.2, viscosity: 1.81e-5 };
const gap = { perimeter: 0.25, height: 6e-4, land: 3e-3, lossSum: 1.5 };
const openings = [{ area: 4e-6, dischargeCoefficient: 0.61 }];
const measuredLeak = { coefficient: 2e-5, exponent: 0.6, ...air };

const numbers = ({ values }: Working) =>
  Object.fromEntries(values.map(({ symbol, value }) => [symbol, value]));

describe("working of the leak", () => {
  it("of a lip gap alone: names its law, and the numbers put in give the flow by hand", () => {
    const leak = leakLaw({ gap, openings: [], measuredLeak: null }, air);
    const working = leakWorking(leak, 500);
    const { P, h, v, K, ρ, μ } = numbers(working);
    expect(working.equation).toMatch(/^Q = P·h·v; {2}Δp = /);
    expect(working.result.value).toBe(leakFlow(leak, 500));
    expect(P * h * v).toBeCloseToRelative(working.result.value, 1e-12);
    const re = (2 * ρ * v * h) / μ;
    const f = Math.max(96 / re, 0.3164 / re ** 0.25);
    const drop = 0.5 * ρ * v * v * (K + (f * numbers(working).ℓ) / (2 * h));
    expect(drop).toBeCloseToRelative(500, 1e-9);
  });

  it("of a measured leak with openings: names no gap, but the measured law and the openings", () => {
    const leak = leakLaw({ gap, openings, measuredLeak }, air);
    const working = leakWorking(leak, 500);
    const said = numbers(working);
    expect(working.equation).toBe("Q = C_L·Δp^x + Σ C_d·A·√(2Δp/ρ)");
    expect(Object.keys(said)).toEqual(["Δp", "ρ", "C_L", "x", "Σ C_d·A"]);
    const byHand = 2e-5 * 500 ** 0.6 + 0.61 * 4e-6 * Math.sqrt((2 * 500) / 1.2);
    expect(working.result.value).toBeCloseToRelative(byHand, 1e-12);
  });

  it("of a sealed skirt: says that nothing leaks", () => {
    const working = leakWorking(
      leakLaw({ gap: { ...gap, height: 0 }, openings: [], measuredLeak: null }, air),
      500,
    );
    expect(working.equation).toBe("Q = 0: nothing leaks");
    expect(working.result.value).toBe(0);
    expect(working.source).not.toBe("");
  });
});
