import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { layoutOf } from "#client/charts/draw/layout.ts";
import type { Plot } from "#client/charts/model/plot.ts";
import { inWindow, windowOf, zoomedPart } from "#client/charts/read/window.ts";
import { isDense, movedPart } from "#client/charts/read/zoom.ts";

const plot: Plot = {
  x: { label: "flow, L/s", from: 0, to: 10 },
  y: { label: "pressure, Pa", from: 10, to: 1000, log: true },
  right: { label: "pull, g", from: 0, to: 500 },
};
const margin = { top: 0, right: 0, bottom: 0, left: 0 };
const layout = layoutOf(plot, { width: 200, height: 100 }, margin);

describe("a part of a plot", () => {
  it("is what lies under the marked box, on an even axis and on a logarithmic one", () => {
    const part = windowOf(plot, layout, { left: 50, right: 100, top: 0, bottom: 50 });
    expect(part?.x.map((x) => Number(x.toFixed(9)))).toEqual([2.5, 5]);
    // half of two decades up: 100 to 1000
    expect(part?.y.map((y) => Number(y.toFixed(6)))).toEqual([100, 1000]);
  });

  it("is the whole plot again, zoomed out as far as it was zoomed in", () => {
    const near = windowOf(plot, layout, zoomedPart(layout, 2, { x: 60, y: 30 }));
    expect(near).not.toBeNull();
    const closer = layoutOf(inWindow(plot, near), { width: 200, height: 100 }, margin);
    expect(windowOf(plot, closer, zoomedPart(closer, 0.25, { x: 100, y: 50 }))).toBeNull();
  });

  it("keeps the place that the pointer is on, zoomed by any factor", () => {
    const place = { x: 120, y: 40 };
    const near = windowOf(plot, layout, zoomedPart(layout, 3, place));
    const closer = layoutOf(inWindow(plot, near), { width: 200, height: 100 }, margin);
    expect(closer.x(layout.x.invert(place.x))).toBeCloseTo(place.x, 6);
    expect(closer.y(layout.y.invert(place.y))).toBeCloseTo(place.y, 6);
  });

  it("never leaves the whole axes, however it is moved or zoomed", () => {
    const step = fc.record({
      factor: fc.double({ min: 0.3, max: 5, noNaN: true }),
      dx: fc.integer({ min: -300, max: 300 }),
      dy: fc.integer({ min: -300, max: 300 }),
    });
    fc.assert(
      fc.property(fc.array(step, { maxLength: 6 }), (steps) => {
        let part: ReturnType<typeof windowOf> = null;
        for (const { factor, dx, dy } of steps) {
          for (const next of [zoomedPart(layout, factor, { x: 100, y: 50 }), movedPart(layout, dx, dy)]) {
            const now = layoutOf(inWindow(plot, part), { width: 200, height: 100 }, margin);
            part = windowOf(plot, now, next);
          }
        }
        const { x, y } = inWindow(plot, part);
        expect(x.from).toBeGreaterThanOrEqual(-1e-9);
        expect(x.to).toBeLessThanOrEqual(10 + 1e-9);
        expect(y.from).toBeGreaterThanOrEqual(10 - 1e-6);
        expect(y.to).toBeLessThanOrEqual(1000 + 1e-4);
        expect(x.to).toBeGreaterThan(x.from);
        expect(y.to).toBeGreaterThan(y.from);
      }),
    );
  });

  it("has the right axis go along, on even axes", () => {
    const even: Plot = { ...plot, y: { label: "pressure, Pa", from: 0, to: 1000 } };
    expect(inWindow(even, { x: [0, 10], y: [500, 1000] }).right).toMatchObject({ from: 250, to: 500 });
  });
});

describe("a plot that can be zoomed", () => {
  const mark = { shape: 0, tone: "rotor", aside: false, outlier: false, x: 1, y: 1 } as const;
  const many = Array.from({ length: 31 }, (_, i) => ({ ...mark, key: String(i) }));

  it("is one with more than thirty readings that is no strip chart", () => {
    expect(isDense({ ...plot, marks: many })).toBe(true);
    expect(isDense({ ...plot, marks: many.slice(1) })).toBe(false);
    expect(isDense({ ...plot, marks: many, strips: [{ title: "", detail: "one" }] })).toBe(false);
  });
});
