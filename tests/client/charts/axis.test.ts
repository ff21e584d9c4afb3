import { describe, expect, it } from "vitest";
import { logTicks } from "#client/charts/draw/scales.ts";
import { axisOver, logAxisOver } from "#client/charts/model/axis.ts";

describe("an axis over values", () => {
  it("keeps zero at the edge, with values that are not finite left out", () => {
    const axis = axisOver("x", [3, Number.NaN, 9], [0]);
    expect(axis.from).toBe(0);
    expect(axis.to).toBeGreaterThan(9);
    expect(axis.to).toBeLessThan(10);
  });

  it("has a width of its own, where all values are one, or none is there", () => {
    const same = axisOver("x", [5]);
    expect(same.to).toBeGreaterThan(same.from);
    const none = axisOver("x", []);
    expect(none.to).toBeGreaterThan(none.from);
  });

  it("holds positive values alone, when logarithmic", () => {
    const axis = logAxisOver("x", [-1, 0, 20, 2000]);
    expect(axis.from).toBeGreaterThan(0);
    expect(axis.from).toBeLessThan(20);
    expect(axis.to).toBeGreaterThan(2000);
  });
});

describe("numbers along a logarithmic axis", () => {
  it("are 1, 2, 5 of each decade where there is room, fewer where there is none", () => {
    expect(logTicks(40, 2500, 600)).toEqual([50, 100, 200, 500, 1000, 2000]);
    expect(logTicks(40, 2500, 150)).toEqual([100, 300, 1000]);
    expect(logTicks(40, 2500, 60)).toEqual([100, 1000]);
  });

  it("are evenly apart, with an axis so short that it holds fewer than two of those", () => {
    expect(logTicks(52, 58, 400)).toEqual([52, 53, 54, 55, 56, 57, 58]);
  });
});
