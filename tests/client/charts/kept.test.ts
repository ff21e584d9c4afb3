import { describe, expect, it, vi } from "vitest";
import { layoutOf } from "#client/charts/draw/layout.ts";
import { linePath } from "#client/charts/draw/path.ts";
import { keptOn } from "#client/charts/kept.ts";
import type { Plot } from "#client/charts/model/plot.ts";

describe("what is kept of data on a ground", () => {
  const lengths = () => {
    const make = vi.fn((of: readonly number[], times: number) => of.length * times);
    return { make, length: keptOn(make) };
  };

  it("is worked out once while both stay", () => {
    const { make, length } = lengths();
    const data = [1, 2, 3];
    expect([length(data, 2), length(data, 2)]).toEqual([6, 6]);
    expect(make).toHaveBeenCalledTimes(1);
  });

  it("is worked out anew on another ground, of other data, and back on the first", () => {
    const { length } = lengths();
    const data = [1, 2, 3];
    expect([length(data, 2), length(data, 5), length([1], 5), length(data, 2)]).toEqual([6, 15, 5, 6]);
  });
});

const plot = (to: number, log = false): Plot => ({
  x: { label: "flow", from: log ? 1 : 0, to, log },
  y: { label: "pressure", from: 0, to: 100 },
});
const size = { width: 600, height: 300 };

describe("a chart's layout", () => {
  it("is the same object for the same axes at the same size, another for others", () => {
    const first = layoutOf(plot(10), size);
    expect(layoutOf(plot(10), size)).toBe(first);
    expect(layoutOf(plot(11), size)).not.toBe(first);
    expect(layoutOf(plot(10), { ...size, width: 601 })).not.toBe(first);
    expect(layoutOf({ ...plot(10), motion: 200 }, size)).not.toBe(first);
    expect(layoutOf(plot(10, true), size)).not.toBe(first);
  });

  it.each([false, true])("puts a place where its scales say, logarithmic: %s", (log) => {
    const { at, x, y } = layoutOf(plot(1000, log), size);
    for (const value of [1, 3, 700, 2000]) {
      const [px, py] = at(value, value / 10);
      expect(px).toBeCloseTo(x(value), 9);
      expect(py).toBeCloseTo(y(value / 10), 9);
    }
  });

  it("draws a line anew where an axis changes", () => {
    const points = [
      { x: 0, y: 0 },
      { x: 10, y: 100 },
    ];
    const paths = [10, 20, 10].map((to) => linePath(points, layoutOf(plot(to), size).at));
    expect(paths[0]).toBe(paths[2]);
    expect(paths[0]).not.toBe(paths[1]);
  });
});
