import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { honeycombFlow, tubeLoss } from "#shared/physics/restriction/honeycomb.ts";
import { expectOutOfRange } from "#tests/support/outOfRange.ts";

const air = { density: 1.2, viscosity: 1.81e-5 };
const honeycomb = { count: 30, diameter: 1.2e-3, length: 8e-3 };

describe("honeycomb, long fine tubes", () => {
  // Hagen–Poiseuille: Q = n·π·D⁴·Δp/(128·μ·L), exact where the entry is nothing.
  it("at a small pressure pass the flow of Hagen and Poiseuille", () => {
    const fine = { count: 100, diameter: 1e-4, length: 0.05 };
    const poiseuille = (100 * Math.PI * 1e-4 ** 4 * 10) / (128 * air.viscosity * 0.05);
    expect(honeycombFlow(fine, air, 10)).toBeCloseToRelative(poiseuille, 1e-5);
  });
});

describe("honeycomb, at any pressure", () => {
  it("loses Δp at the flow that it passes", () => {
    fc.assert(
      fc.property(fc.double({ min: 1e-3, max: 5000, noNaN: true }), (pressure) => {
        const { count, diameter, length } = honeycomb;
        const v = honeycombFlow(honeycomb, air, pressure) / ((count * Math.PI * diameter ** 2) / 4);
        const reynolds = (air.density * v * diameter) / air.viscosity;
        const loss = 0.5 * air.density * v ** 2 * tubeLoss(length / diameter / reynolds);
        expect(loss).toBeCloseToRelative(pressure, 1e-13);
      }),
    );
  });

  it("passes as much a tube whatever their number, and nothing without pressure", () => {
    expect(honeycombFlow({ ...honeycomb, count: 60 }, air, 200)).toBeCloseToRelative(
      2 * honeycombFlow(honeycomb, air, 200),
      1e-14,
    );
    expect(honeycombFlow(honeycomb, air, 0)).toBe(0);
  });
});

describe("honeycomb, refusals", () => {
  it.each([
    ["honeycomb.count", { count: 0 }],
    ["honeycomb.count", { count: 1.5 }],
    ["honeycomb.diameter", { diameter: 0 }],
    ["honeycomb.length", { length: Number.NaN }],
  ])("by %s of %o", (quantity, change) => {
    expectOutOfRange(() => honeycombFlow({ ...honeycomb, ...change }, air, 100), quantity);
  });

  it("by air that is none, a pressure below 0", () => {
    expectOutOfRange(() => honeycombFlow(honeycomb, { ...air, density: 0 }, 100), "air.density");
    expectOutOfRange(() => honeycombFlow(honeycomb, { ...air, viscosity: 0 }, 100), "air.viscosity");
    expectOutOfRange(() => honeycombFlow(honeycomb, air, -1), "pressure");
  });
});
