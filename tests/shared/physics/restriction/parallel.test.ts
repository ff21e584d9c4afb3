import fc from "fast-check";
import { describe, expect, it } from "vitest";
import {
  parallelFlow,
  parallelPressure,
  passesAir,
  type Restriction,
  restrictionFlow,
  restrictionPressure,
} from "#shared/physics/restriction/parallel.ts";
import { expectOutOfRange } from "#tests/support/outOfRange.ts";

const air = { density: 1.2, viscosity: 1.81e-5, pressure: 101_325 };
const holes: Restriction = { kind: "holes", diameter: 4e-3, thickness: 1e-3, count: 3 };
const gap: Restriction = { kind: "lipGap", perimeter: 0.25, height: 5e-4, land: 3e-3, lossSum: 1.5 };
const opening: Restriction = { kind: "opening", area: 4e-6 };
const leak: Restriction = {
  kind: "measuredLeak",
  coefficient: 5e-5,
  exponent: 0.6,
  density: 1.2,
  viscosity: 1.81e-5,
};
const all = [holes, gap, opening, leak];
const some = fc.uniqueArray(fc.constantFrom(...all), { minLength: 1 });
const pressures = fc.double({ min: 0.01, max: 5000, noNaN: true });

describe("restrictions side by side", () => {
  it("pass the sum of their flows at any pressure", () => {
    fc.assert(
      fc.property(some, pressures, (paths, pressure) => {
        const sum = paths.reduce((total, one) => total + restrictionFlow(one, air, pressure), 0);
        expect(parallelFlow(paths, air, pressure)).toBeCloseToRelative(sum, 1e-14);
      }),
    );
  });

  it("have the inverse of that sum, each alone and together", () => {
    fc.assert(
      fc.property(some, pressures, (paths, pressure) => {
        const flow = parallelFlow(paths, air, pressure);
        expect(parallelPressure(paths, air, flow)).toBeCloseToRelative(pressure, 1e-11);
      }),
    );
  });

  it.each(all)("of kind $kind alone have the inverse of its own law", (one) => {
    expect(restrictionPressure(one, air, restrictionFlow(one, air, 220))).toBeCloseToRelative(220, 1e-11);
  });

  it("beside one that passes next to nothing have the same inverse", () => {
    const crack: Restriction = { kind: "opening", area: 1e-25 };
    expect(parallelPressure([opening, crack], air, 1e-5)).toBeCloseToRelative(
      restrictionPressure(opening, air, 1e-5),
      1e-12,
    );
  });

  it("beside holes too small for the whole flow still have an inverse", () => {
    const flow = parallelFlow([holes, gap], air, 60_000);
    expect(flow).toBeGreaterThan(restrictionFlow(holes, air, 50_000));
    expect(parallelPressure([holes, gap], air, parallelFlow([holes, gap], air, 4000))).toBeCloseToRelative(
      4000,
      1e-11,
    );
    expect(parallelPressure([holes, gap], air, 0.02)).toBeGreaterThan(0);
  });
});

describe("a sealed skirt", () => {
  const shut: Restriction = { kind: "lipGap", perimeter: 0.25, height: 0, land: 3e-3, lossSum: 1.5 };
  const none: Restriction = { kind: "opening", area: 0 };

  it("passes nothing at any pressure", () => {
    expect(parallelFlow([], air, 500)).toBe(0);
    expect(parallelFlow([shut, none], air, 500)).toBe(0);
    expect([shut, none].some(passesAir)).toBe(false);
    expect(all.every(passesAir)).toBe(true);
  });

  it("needs no pressure for no flow, and refuses any other", () => {
    expect(parallelPressure([], air, 0)).toBe(0);
    expectOutOfRange(() => parallelPressure([], air, 1e-6), "flow");
    expectOutOfRange(() => parallelPressure([shut, none], air, 1e-6), "flow");
  });

  it("refuses a pressure or a flow below 0", () => {
    expectOutOfRange(() => parallelFlow([], air, -1), "pressure");
    expectOutOfRange(() => parallelPressure([], air, -1), "flow");
  });

  it("of two small holes refuses more than half an atmosphere drives through one", () => {
    expectOutOfRange(() => parallelPressure([holes, { ...holes }], air, 1), "flow");
  });
});
