import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { columnSpec, valueText } from "#client/views/choose/columns.ts";
import { frontPoints, frontSteps, type PlotPoint } from "#client/views/choose/plot/front.ts";
import { nearestSpot, type Spot, spotByKey } from "#client/views/choose/plot/neighbour.ts";
import {
  axisEnds,
  pictureOf,
  pictureSentence,
  pictureTable,
  thinnedText,
} from "#client/views/choose/plot/picture.ts";

const FRONT = 3;
const points: PlotPoint[] = [
  [0, 0.55, 2, FRONT],
  [1, 0.5, 1.6, FRONT],
  [2, 0.6, 3, FRONT],
  [3, 0.6, 2.5, 1],
  [4, 0.5, 0.7, 0],
  [5, 0.6, 3, FRONT],
];

describe("frontSteps, the edge of what can be had", () => {
  it("goes along first where less along is wanted, and meets equal points once", () => {
    expect(frontSteps(points, { want: "least" })).toEqual([
      [0.5, 1.6],
      [0.55, 1.6],
      [0.55, 2],
      [0.6, 2],
      [0.6, 3],
    ]);
  });

  // What no point betters lies on the edge: a corner is never better in both than a point beside it.
  it("has no corner that betters every point, with least wanted along and most wanted up", () => {
    const place = fc.tuple(fc.integer({ min: 0, max: 20 }), fc.integer({ min: 0, max: 20 }));
    fc.assert(
      fc.property(fc.array(place, { minLength: 1, maxLength: 12 }), (places) => {
        const all = places.map(([x, y], i): PlotPoint => {
          const beaten = places.some(([a, b]) => a <= x && b >= y && (a < x || b > y));
          return [i, x, y, beaten ? 1 : FRONT];
        });
        for (const [x, y] of frontSteps(all, { want: "least" }))
          expect(all.some(([, a, b]) => a <= x && b >= y)).toBe(true);
        expect(frontPoints(all).length).toBeGreaterThan(0);
      }),
    );
  });
});

describe("spotByKey, arrows among the points", () => {
  const spots: Spot[] = [
    { index: 0, x: 0, y: 0 },
    { index: 1, x: 10, y: 2 },
    { index: 2, x: 12, y: 40 },
    { index: 3, x: 0, y: 20 },
  ];
  it.each([
    ["ArrowRight", 0, 1],
    ["ArrowDown", 0, 3],
    ["ArrowLeft", 1, 0],
    ["ArrowUp", 3, 0],
    ["Home", 2, 0],
    ["End", 0, 2],
  ])("%s leads from point %s to the nearest one there, %s", (key, from, to) => {
    expect(spotByKey(spots, spots[from], key)?.index).toBe(to);
  });

  it("leads nowhere from the last one, with no points, or with another key", () => {
    expect(spotByKey(spots, spots[2], "ArrowDown")).toBeNull();
    expect(spotByKey([], null, "Home")).toBeNull();
    expect(spotByKey(spots, spots[0], "x")).toBeNull();
  });

  it("nearestSpot finds the nearest within reach and nothing beyond it", () => {
    expect(nearestSpot(spots, 9, 3, 5)?.index).toBe(1);
    expect(nearestSpot(spots, 200, 200, 5)).toBeNull();
  });
});

describe("pictureOf, SI values", () => {
  const answer = { total: 12, points };
  const picture = pictureOf({ answer, x: "mass", y: "margin", target: 1.5 });
  it("are drawn in shown units, and what is drawn is counted in the sentence", () => {
    expect(picture.points[0].slice(1, 3)).toEqual([550, 2]);
    expect(pictureSentence(picture)).toBe(
      "Margin against mass of 6 of 12 sets: 5 of those shown do all that is wanted, and 3 of them no other betters in both.",
    );
    expect(thinnedText(picture)).toMatch(/^6 of 12 sets are drawn/);
    expect(thinnedText({ ...picture, total: 6 })).toBeNull();
  });

  it("as a table name both columns with their units, and in or out", () => {
    const { columns, rows } = pictureTable(picture);
    expect(columns).toEqual(["set", "mass, g", "margin, ×", "does it", "no other betters it in both"]);
    expect(rows[4]).toEqual([4, 500, 0.7, "no", ""]);
  });

  it("axisEnds hold every value, a margin's axis from 0 to above what is wanted, also of one value or none", () => {
    expect(axisEnds([0.4, 1.1], columnSpec("margin"), 1.5)).toEqual([0, 1.56]);
    const [low, high] = axisEnds([500], columnSpec("mass"), 1.5);
    expect(low).toBeLessThan(500);
    expect(high).toBeGreaterThan(500);
    expect(axisEnds([], columnSpec("mass"), 1.5)[1]).toBeGreaterThan(
      axisEnds([], columnSpec("mass"), 1.5)[0],
    );
  });
});

describe("valueText", () => {
  it.each([
    ["mass", 0.5345, "535\u2009g"],
    ["time", 222, "3.7\u2009min"],
    ["windingTemperature", 373.15, "100\u2009°C"],
    ["height", 0.0314, "31.4\u2009mm"],
    ["margin", 1.5, "1.50\u2009×"],
    ["margin", null, "no pull needed"],
    ["time", null, "–"],
    ["suction", 9.80665, "1000\u2009g"],
  ] as const)("%s of %s is shown as %s", (column, si, text) => {
    expect(valueText(column, si)).toBe(text);
  });
});
