import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { holeExpansibility, holeFlow, holeNotes } from "#shared/physics/restriction/hole.ts";
import { expectOutOfRange } from "#tests/support/outOfRange.ts";

const air = { density: 1.2, viscosity: 1.81e-5, pressure: 101_325 };
const plate = { diameter: 6e-3, thickness: 1.2e-3, count: 4 };

const plates = fc.record({
  diameter: fc.double({ min: 3e-4, max: 0.03, noNaN: true }),
  thickness: fc.double({ min: 0, max: 3e-3, noNaN: true }),
  count: fc.integer({ min: 1, max: 40 }),
  edge: fc.constantFrom("sharp" as const, "rounded" as const),
});
const pressures = fc.double({ min: 0.01, max: 2e4, noNaN: true });

describe("holeFlow", () => {
  // Torricelli: with a given C_d only ε is left beside √(2Δp/ρ).
  it("with a calibrated coefficient is Torricelli's law times C_d and ε, without uncertainty of its own", () => {
    const result = holeFlow({ ...plate, dischargeCoefficient: 0.64 }, air, 500);
    const torricelli = 4 * (Math.PI / 4) * 6e-3 ** 2 * Math.sqrt((2 * 500) / 1.2);
    expect(result.flow).toBeCloseToRelative(torricelli * 0.64 * holeExpansibility(500, 101_325), 1e-14);
    expect(result.dischargeCoefficient).toBe(0.64);
    expect(result.uncertainty).toBe(0);
  });

  it("is the same through each of many holes", () => {
    const one = holeFlow({ ...plate, count: 1 }, air, 500);
    const many = holeFlow({ ...plate, count: 7 }, air, 500);
    expect(many.flow).toBeCloseToRelative(7 * one.flow, 1e-14);
    expect(many.reynolds).toBe(one.reynolds);
  });

  it("rises strictly with the pressure", () => {
    fc.assert(
      fc.property(plates, pressures, (holes, pressure) => {
        expect(holeFlow(holes, air, pressure * 1.01).flow).toBeGreaterThan(
          holeFlow(holes, air, pressure).flow,
        );
      }),
    );
  });

  // Sampson 1891: Q = d³Δp/(24μ) through a thin wall without inertia.
  it("of a pinhole in a foil at a whisper of pressure creeps by Sampson's law", () => {
    const { flow } = holeFlow({ diameter: 1e-4, thickness: 0, count: 1 }, air, 1e-6);
    expect(flow).toBeCloseToRelative((1e-4 ** 3 * 1e-6) / (24 * 1.81e-5), 1e-3);
  });

  it("at no pressure is exactly none", () => {
    expect(holeFlow(plate, air, 0)).toMatchObject({ flow: 0, dischargeCoefficient: 0, reynolds: 0 });
  });

  it("has a Reynolds number on the bore that its flow explains", () => {
    const { flow, reynolds } = holeFlow(plate, air, 200);
    const velocity = flow / holeExpansibility(200, 101_325) / (4 * (Math.PI / 4) * 6e-3 ** 2);
    expect(reynolds).toBeCloseToRelative((1.2 * velocity * 6e-3) / 1.81e-5, 1e-12);
  });
});

describe("uncertainty of a computed coefficient", () => {
  it.each([
    [{ diameter: 6e-3, thickness: 1e-3, count: 1 }, 500, 0.03],
    [{ diameter: 6e-3, thickness: 4e-3, count: 1 }, 500, 0.06],
    [{ diameter: 6e-3, thickness: 7e-3, count: 1 }, 500, 0.03],
    [{ diameter: 6e-3, thickness: 7e-3, count: 1, edge: "rounded" as const }, 500, 0.06],
    [{ diameter: 1e-3, thickness: 2e-4, count: 1 }, 500, 0.06],
    [{ diameter: 3e-4, thickness: 2e-5, count: 1 }, 50, 0.15],
  ])("of %o at %s Pa is %s", (holes, pressure, expected) => {
    expect(holeFlow(holes, air, pressure).uncertainty).toBe(expected);
  });
});

describe("rounded inlets", () => {
  it("pass more than sharp ones, the rounder the more", () => {
    const flow = (inletRadius: number) => holeFlow({ ...plate, edge: "rounded", inletRadius }, air, 500).flow;
    expect(flow(0.3e-3)).toBeGreaterThan(holeFlow(plate, air, 500).flow);
    expect(flow(0.9e-3)).toBeGreaterThan(flow(0.3e-3));
  });

  it("without a radius take the smaller of a fifth of the bore and the wall", () => {
    const rounded = { ...plate, edge: "rounded" as const };
    expect(holeFlow({ ...rounded, inletRadius: 1.2e-3 }, air, 500)).toEqual(holeFlow(rounded, air, 500));
    const thin = { ...rounded, thickness: 0.5e-3 };
    expect(holeFlow({ ...thin, inletRadius: 0.5e-3 }, air, 500)).toEqual(holeFlow(thin, air, 500));
  });
});

describe("holeNotes", () => {
  const codes = (holes: Parameters<typeof holeNotes>[0], pressure: number) =>
    holeNotes(holes, air, pressure).map(({ code }) => code);

  it("of a usual plate are none", () => {
    expect(codes(plate, 500)).toEqual([]);
    expect(codes(plate, 0)).toEqual([]);
  });

  it("of a hole longer than ten bores, a creeping one, a strong suction name each", () => {
    expect(codes({ diameter: 6e-3, thickness: 61e-3, count: 1 }, 500)).toEqual(["hole-too-long"]);
    expect(codes({ diameter: 3e-4, thickness: 2e-5, count: 1 }, 50)).toEqual(["hole-reynolds-low"]);
    expect(codes(plate, 26_000)).toEqual(["hole-compressible"]);
  });

  it("of a calibrated plate leave its coefficient alone", () => {
    expect(codes({ diameter: 3e-4, thickness: 6e-3, count: 1, dischargeCoefficient: 0.6 }, 50)).toEqual([]);
  });
});

describe("holes, refusals", () => {
  it.each([
    ["hole.diameter", { diameter: 0 }],
    ["hole.thickness", { thickness: -1 }],
    ["hole.thickness", { thickness: 51 * 6e-3 }],
    ["hole.count", { count: 0 }],
    ["hole.count", { count: 1.5 }],
    ["hole.inletRadius", { inletRadius: -1e-3 }],
    ["hole.dischargeCoefficient", { dischargeCoefficient: 0 }],
  ])("by %s of %o", (quantity, change) => {
    expectOutOfRange(() => holeFlow({ ...plate, ...change }, air, 100), quantity);
  });

  it.each(["density", "viscosity", "pressure"] as const)("by air without %s", (field) => {
    expectOutOfRange(() => holeFlow(plate, { ...air, [field]: 0 }, 100), `air.${field}`);
  });

  it("of a tube do not come where it brings its own coefficient", () => {
    expect(holeFlow({ ...plate, thickness: 0.6, dischargeCoefficient: 0.4 }, air, 100).flow).toBeGreaterThan(
      0,
    );
    expect(holeFlow({ ...plate, thickness: 50 * 6e-3 }, air, 100).dischargeCoefficient).toBeGreaterThan(0.3);
  });

  it("by a pressure below 0, or of the whole atmosphere", () => {
    expectOutOfRange(() => holeFlow(plate, air, -1), "pressure");
    expectOutOfRange(() => holeFlow(plate, air, 101_325), "pressure");
  });
});
