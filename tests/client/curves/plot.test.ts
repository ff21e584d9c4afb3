import { describe, expect, it } from "vitest";
import { nearestSpot, spotByKey } from "#client/views/curves/plot/nearest.ts";
import { axisOver, logAxisOver } from "#client/views/curves/plot/plot.ts";
import { logTicks } from "#client/views/curves/plot/scales.ts";
import { shapePath } from "#client/views/curves/plot/shapes.ts";

const spots = [
  { key: "b", x: 40, y: 10 },
  { key: "a", x: 10, y: 10 },
  { key: "c", x: 90, y: 50 },
];

describe("nearestSpot", () => {
  it("finds the nearest within reach, none beyond it, the pointer between two", () => {
    expect(nearestSpot(spots, { x: 30, y: 12 }, 20)?.key).toBe("b");
    expect(nearestSpot(spots, { x: 65, y: 30 }, 20)).toBeNull();
    expect(nearestSpot([], { x: 0, y: 0 }, 20)).toBeNull();
  });
});

describe("spotByKey", () => {
  it.each([
    [null, "ArrowRight", "a"],
    [null, "ArrowLeft", "c"],
    ["a", "ArrowRight", "b"],
    ["b", "ArrowDown", "c"],
    ["c", "ArrowRight", "c"],
    ["a", "ArrowUp", "a"],
    ["b", "Home", "a"],
    ["a", "End", "c"],
    ["a", "x", null],
  ])("from %s with %s leads to %s", (current, key, next) => {
    expect(spotByKey(spots, current, key)).toBe(next);
  });

  it("leads nowhere on a chart without points", () => {
    expect(spotByKey([], null, "Home")).toBeNull();
  });
});

describe("axes", () => {
  it("keeps zero at the edge, values not finite left out", () => {
    const axis = axisOver("x", [3, Number.NaN, 9], [0]);
    expect(axis.from).toBe(0);
    expect(axis.to).toBeGreaterThan(9);
    expect(axis.to).toBeLessThan(10);
  });

  it("has a width of its own where all values are one, or none is there", () => {
    const same = axisOver("x", [5]);
    expect(same.to).toBeGreaterThan(same.from);
    const none = axisOver("x", []);
    expect(none.to).toBeGreaterThan(none.from);
  });

  it("holds positive values alone on a logarithmic axis", () => {
    const axis = logAxisOver("x", [-1, 0, 20, 2000]);
    expect(axis.from).toBeGreaterThan(0);
    expect(axis.from).toBeLessThan(20);
    expect(axis.to).toBeGreaterThan(2000);
  });

  it("marks 1, 2, 5 where there is room, fewer where there is none", () => {
    expect(logTicks(40, 2500, 600)).toEqual([50, 100, 200, 500, 1000, 2000]);
    expect(logTicks(40, 2500, 150)).toEqual([100, 300, 1000]);
    expect(logTicks(40, 2500, 60)).toEqual([100, 1000]);
  });
});

/** Twice as many tests as there are shapes. */
const TESTS = 14;

describe("shapePath", () => {
  it("gives every test another outline, past the last shape as well", () => {
    const paths = Array.from({ length: TESTS }, (_, i) => shapePath(i));
    expect(new Set(paths).size).toBe(TESTS);
  });
});
