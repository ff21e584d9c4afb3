import fc from "fast-check";
import { describe, expect, it } from "vitest";
import {
  EDGE_LOSS,
  gapFlow,
  gapFrictionPressure,
  gapSlope,
  type LipGap,
} from "#shared/physics/restriction/lipGap.ts";
import { expectOutOfRange } from "#tests/support/outOfRange.ts";

const air = { density: 1.2, viscosity: 1.8e-5 };
const square = { perimeter: 0.25, height: 6e-4, land: 3e-3, lossSum: 1.5 };

/** Where 96/Re = 0.3164/Re^0.25, from the two laws. */
const crossing = (96 / 0.3164) ** (4 / 3);
const flowAt = (reynolds: number) => (reynolds * air.viscosity * square.perimeter) / (air.density * 2);

/** The law from flow to pressure, written out anew. */
function gapPressure({ perimeter, height, land, lossSum }: LipGap, fluid: typeof air, flow: number): number {
  const v = flow / (perimeter * height);
  const reynolds = (fluid.density * v * 2 * height) / fluid.viscosity;
  const f = Math.max(96 / reynolds, 0.3164 / reynolds ** 0.25);
  return 0.5 * fluid.density * v ** 2 * (lossSum + (f * land) / (2 * height));
}

const gaps = fc.record({
  perimeter: fc.double({ min: 0.02, max: 2, noNaN: true }),
  height: fc.double({ min: 1e-5, max: 5e-3, noNaN: true }),
  land: fc.oneof(fc.constant(0), fc.double({ min: 1e-4, max: 0.05, noNaN: true })),
  lossSum: fc.double({ min: 0.5, max: 3, noNaN: true }),
});
const pressures = fc.double({ min: 1e-3, max: 2e4, noNaN: true });

describe("gapFlow, long land and small gap", () => {
  // Exact: plane Poiseuille flow, Q = P h³ Δp/(12 μ ℓ). With K = 0 nothing else is left.
  it.each([1, 10, 100])("at %s Pa follows the laminar law to 12 digits", (pressure) => {
    const gap = { perimeter: 0.2, height: 5e-5, land: 0.01, lossSum: 0 };
    const expected = (0.2 * 5e-5 ** 3 * pressure) / (12 * 1.8e-5 * 0.01);
    expect(gapFlow(gap, air, pressure)).toBeCloseToRelative(expected, 1e-12);
  });
});

describe("gapFlow, no land", () => {
  // Bernoulli: Q = P h √(2Δp/(ρK)).
  it.each(Object.entries(EDGE_LOSS))(
    "with a %s edge follows the square root to 12 digits",
    (_edge, lossSum) => {
      const expected = 0.25 * 6e-4 * Math.sqrt((2 * 300) / (1.2 * lossSum));
      expect(gapFlow({ ...square, land: 0, lossSum }, air, 300)).toBeCloseToRelative(expected, 1e-12);
    },
  );
});

describe("gapFlow, turbulent land without losses", () => {
  // Δp = ½ρv²·0.3164 (ν/(2hv))^0.25·ℓ/(2h), solved for v by its power 1.75.
  it("at 5 kPa follows Blasius' law to 12 digits", () => {
    const gap = { perimeter: 0.2, height: 1e-3, land: 0.05, lossSum: 0 };
    const factor = 0.5 * 1.2 * 0.3164 * (1.8e-5 / (1.2 * 2e-3)) ** 0.25 * (0.05 / 2e-3);
    const velocity = (5000 / factor) ** (1 / 1.75);
    expect((1.2 * velocity * 2e-3) / 1.8e-5).toBeGreaterThan(crossing);
    expect(gapFlow(gap, air, 5000)).toBeCloseToRelative(velocity * 0.2 * 1e-3, 1e-12);
  });
});

describe("gapFlow and the law from flow to pressure", () => {
  it("are each other's inverse within 1e-13 of the flow, on both branches", () => {
    fc.assert(
      fc.property(gaps, pressures, (gap, pressure) => {
        const flow = gapFlow(gap, air, pressure);
        // Δp carries up to twice the flow's error, and its own rounding.
        expect(gapPressure(gap, air, flow)).toBeCloseToRelative(pressure, 3e-13);
      }),
      { numRuns: 2000 },
    );
  });

  it.each([0.5, 0.999999, 1, 1.000001, 2])(
    "at %s of the crossing Reynolds number are each other's inverse",
    (share) => {
      const flow = flowAt(crossing * share);
      expect(gapFlow(square, air, gapPressure(square, air, flow))).toBeCloseToRelative(flow, 1e-13);
    },
  );

  it("rise strictly with each other", () => {
    fc.assert(
      fc.property(gaps, pressures, (gap, pressure) => {
        expect(gapFlow(gap, air, pressure * 1.001)).toBeGreaterThan(gapFlow(gap, air, pressure));
      }),
    );
  });

  it("across the crossing of the two laws are continuous", () => {
    const below = gapPressure(square, air, flowAt(crossing * (1 - 1e-9)));
    const above = gapPressure(square, air, flowAt(crossing * (1 + 1e-9)));
    expect(above).toBeCloseToRelative(below, 1e-8);
    expect(above).toBeGreaterThan(below);
  });

  // Dimensional analysis: Δp·ρh²/μ² depends on Re, ℓ/h and K alone, so Δp ∝ μ²/(ρh²) at Q ∝ P μ/ρ.
  it("keep the same shape at any density, viscosity and size", () => {
    const scale = fc.double({ min: 0.2, max: 5, noNaN: true });
    fc.assert(
      fc.property(gaps, pressures, scale, scale, scale, (gap, pressure, rho, mu, size) => {
        const other = { density: air.density * rho, viscosity: air.viscosity * mu };
        const scaled = { ...gap, height: gap.height * size, land: gap.land * size };
        const flow = gapFlow(scaled, other, (pressure * mu * mu) / (rho * size * size));
        expect(flow).toBeCloseToRelative((gapFlow(gap, air, pressure) * mu) / rho, 1e-10);
      }),
    );
  });

  it("are proportional to the perimeter", () => {
    const double = { ...square, perimeter: 0.5 };
    expect(gapFlow(double, air, 400)).toBeCloseToRelative(2 * gapFlow(square, air, 400), 1e-14);
  });
});

describe("gap, exact zeros", () => {
  it("with no pressure or no height passes exactly nothing", () => {
    expect(gapFlow(square, air, 0)).toBe(0);
    expect(gapFlow({ ...square, height: 0 }, air, 500)).toBe(0);
  });

  it("with no flow needs exactly no pressure", () => {
    expect(gapFrictionPressure(square, air, 0)).toBe(0);
    expect(gapFrictionPressure({ ...square, height: 0 }, air, 0)).toBe(0);
  });
});

describe("gapSlope", () => {
  it("is the slope of the flow on both branches, and 0 where the gap is closed", () => {
    fc.assert(
      fc.property(gaps, pressures, (gap, pressure) => {
        const step = 1e-4 * pressure;
        const rise = gapFlow(gap, air, pressure + step) - gapFlow(gap, air, pressure - step);
        // a difference over a bend of the friction's law is off by half of the bend, up to a seventh
        const slope = gapSlope(gap, air, pressure);
        expect(Math.abs(rise / (2 * step) / slope - 1)).toBeLessThan(0.15);
        const reynolds = (gapFlow(gap, air, pressure) * air.density * 2) / (gap.perimeter * air.viscosity);
        if (Math.abs(reynolds / crossing - 1) > 0.01)
          expect(rise / (2 * step)).toBeCloseToRelative(slope, 1e-6);
      }),
    );
    expect(gapSlope({ ...square, height: 0 }, air, 100)).toBe(0);
  });
});

describe("gapFrictionPressure", () => {
  it("on either branch is the pressure less the losses of entry and exit", () => {
    for (const share of [0.3, 3]) {
      const flow = flowAt(crossing * share);
      const velocity = flow / (square.perimeter * square.height);
      const losses = 0.5 * air.density * velocity ** 2 * square.lossSum;
      expect(gapFrictionPressure(square, air, flow)).toBeCloseToRelative(
        gapPressure(square, air, flow) - losses,
        1e-12,
      );
    }
  });
});

describe("gap, refusals", () => {
  it.each([
    ["gap.perimeter", { perimeter: 0 }],
    ["gap.perimeter", { perimeter: Number.NaN }],
    ["gap.height", { height: -1e-4 }],
    ["gap.land", { land: Number.NaN }],
    ["gap.lossSum", { lossSum: -1 }],
    ["skirt.lossSum", { lossSum: 0, land: 0 }],
  ])("by %s of %o", (quantity, change) => {
    expectOutOfRange(() => gapFlow({ ...square, ...change }, air, 100), quantity);
    expectOutOfRange(() => gapSlope({ ...square, ...change }, air, 100), quantity);
    expectOutOfRange(() => gapFrictionPressure({ ...square, ...change }, air, 1e-3), quantity);
  });

  it.each([-1, Number.NaN, Number.POSITIVE_INFINITY])("by a pressure or a flow of %s", (value) => {
    expectOutOfRange(() => gapFlow(square, air, value), "pressure");
    expectOutOfRange(() => gapFrictionPressure(square, air, value), "flow");
  });

  it("by air that is none", () => {
    expectOutOfRange(() => gapFlow(square, { ...air, density: 0 }, 100), "air.density");
    expectOutOfRange(() => gapFlow(square, { ...air, viscosity: 0 }, 100), "air.viscosity");
  });

  it("by a flow through a closed gap", () => {
    expectOutOfRange(() => gapFrictionPressure({ ...square, height: 0 }, air, 1e-3), "flow");
  });
});
