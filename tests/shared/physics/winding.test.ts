import fc from "fast-check";
import { describe, expect, it } from "vitest";
import {
  estimateThermalResistance,
  limitCurrent,
  steadyWindingTemperature,
  windingResistance,
} from "#shared/physics/winding.ts";
import { expectOutOfRange } from "#tests/support/outOfRange.ts";

describe("winding resistance", () => {
  it("at 20 °C is the stated one exactly", () => {
    expect(windingResistance(0.35, 293.15)).toBe(0.35);
  });

  it("refuses a winding of no resistance, and temperatures where the line would cross 0", () => {
    expectOutOfRange(() => windingResistance(0, 300), "motor.resistance");
    expectOutOfRange(() => windingResistance(0.35, Number.NaN), "winding.temperature");
    expectOutOfRange(() => windingResistance(0.35, 38.6), "winding.temperature");
    expect(windingResistance(0.35, 38.75)).toBeGreaterThan(0);
  });
});

describe("steady winding temperature", () => {
  it("meets its own heat balance at any current below the limit", () => {
    const share = fc.double({ min: 0, max: 0.99, noNaN: true });
    const rth = fc.double({ min: 0.5, max: 100, noNaN: true });
    fc.assert(
      fc.property(share, rth, (part, thermal) => {
        const current = part * limitCurrent(0.4, thermal);
        const temperature = steadyWindingTemperature(current, 0.4, thermal, 298);
        const heat = current ** 2 * windingResistance(0.4, temperature);
        expect(298 + thermal * heat).toBeCloseToRelative(temperature, 1e-10);
      }),
    );
  });

  it("at no current or no thermal resistance is the ambient's", () => {
    expect(steadyWindingTemperature(0, 0.4, 20, 298)).toBe(298);
    expect(steadyWindingTemperature(5, 0.4, 0, 298)).toBe(298);
    expect(limitCurrent(0.4, 0)).toBe(Number.POSITIVE_INFINITY);
  });

  it("at the limit current and beyond is refused", () => {
    const limit = limitCurrent(0.4, 20);
    expectOutOfRange(() => steadyWindingTemperature(limit, 0.4, 20, 298), "current");
    expectOutOfRange(() => steadyWindingTemperature(-limit, 0.4, 20, 298), "current");
    expectOutOfRange(() => steadyWindingTemperature(Number.NaN, 0.4, 20, 298), "current");
  });

  it("refuses a motor or an ambient that can't be", () => {
    expectOutOfRange(() => limitCurrent(0, 20), "motor.resistance");
    expectOutOfRange(() => limitCurrent(0.4, -1), "motor.thermalResistance");
    expectOutOfRange(() => steadyWindingTemperature(1, 0.4, 20, 0), "ambient");
  });
});

describe("thermal resistance from a can's size", () => {
  // 15 W/(m²K) (common practice, no source) over the whole surface of a cylinder 20 mm by 15 mm.
  it("is that of its whole surface, and is marked as estimated", () => {
    const surface = Math.PI * 0.02 * 0.015 + 2 * (Math.PI / 4) * 0.02 ** 2;
    const { thermalResistance, estimated } = estimateThermalResistance(0.02, 0.015);
    expect(thermalResistance).toBeCloseToRelative(1 / (15 * surface), 1e-14);
    expect(estimated).toBe(true);
  });

  it("refuses a can without size", () => {
    expectOutOfRange(() => estimateThermalResistance(0, 0.015), "motor.canDiameter");
    expectOutOfRange(() => estimateThermalResistance(0.02, Number.NaN), "motor.canLength");
  });
});
