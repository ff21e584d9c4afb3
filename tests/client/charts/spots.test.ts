import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { inOrder, nearestAlong, nearestSpot, type Spot, spotByKey } from "#client/charts/read/spots.ts";

const spots = inOrder([
  { key: "b", x: 40, y: 10 },
  { key: "a", x: 10, y: 10 },
  { key: "c", x: 90, y: 50 },
]);

describe("the spot that a pointer means", () => {
  it("is the nearest within reach, none beyond it, with the pointer between two", () => {
    expect(nearestSpot(spots, { x: 30, y: 12 }, 20)?.key).toBe("b");
    expect(nearestSpot(spots, { x: 65, y: 30 }, 20)).toBeNull();
    expect(nearestSpot([], { x: 0, y: 0 }, 20)).toBeNull();
  });

  it("is the nearest along the chart, read as by a ruler, however far below it the pointer is", () => {
    expect(nearestAlong(spots, { x: 60, y: 500 })?.key).toBe("b");
    expect(nearestAlong(spots, { x: 70, y: 500 })?.key).toBe("c");
    expect(nearestAlong([], { x: 70, y: 500 })).toBeNull();
  });
});

describe("where a key leads", () => {
  it.each([
    [null, "ArrowRight", "a"],
    [null, "ArrowLeft", "c"],
    ["a", "ArrowRight", "b"],
    ["b", "ArrowDown", "c"],
    ["c", "ArrowUp", "b"],
    ["c", "ArrowRight", "c"],
    ["a", "ArrowUp", "a"],
    ["b", "Home", "a"],
    ["a", "End", "c"],
    ["a", "PageDown", "c"],
    ["a", "x", null],
  ])("from %s with %s: to %s", (current, key, next) => {
    expect(spotByKey(spots, current, key)).toBe(next);
  });

  it("is nowhere on a chart without points", () => {
    expect(spotByKey([], null, "Home")).toBeNull();
  });

  it("is every spot in turn, with the right arrow from the first on, for any spots, those on one another too", () => {
    const place = fc.record({ x: fc.integer({ min: 0, max: 5 }), y: fc.integer({ min: 0, max: 5 }) });
    fc.assert(
      fc.property(fc.array(place, { minLength: 1, maxLength: 20 }), (places) => {
        const all = inOrder(places.map((each, i): Spot => ({ key: String(i), ...each })));
        const reached = new Set<string | null>();
        let at = spotByKey(all, null, "Home");
        for (let i = 0; i < all.length; i++) {
          reached.add(at);
          at = spotByKey(all, at, "ArrowRight");
        }
        expect(reached.size).toBe(all.length);
      }),
    );
  });
});
