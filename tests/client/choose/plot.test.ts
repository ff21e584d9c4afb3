import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { columnSpec, valueText } from "#client/views/choose/columns.ts";
import { frontPoints, frontSteps, type PlotPoint } from "#client/views/choose/plot/front.ts";
import { pictureOf, pictureSentence, pictureTable, thinnedText } from "#client/views/choose/plot/picture.ts";
import { axisFor, choosePlot } from "#client/views/choose/plot/plot.ts";

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

describe("pictureOf, SI values", () => {
  const answer = { total: 12, points };
  const picture = pictureOf({ answer, x: "mass", y: "margin", target: 1.5 });
  it("are drawn in shown units, and what is drawn is counted in the sentence", () => {
    expect(picture.points[0].slice(1, 3)).toEqual([550, 2]);
    expect(pictureSentence(picture)).toBe(
      "Margin against mass of 6 of 12 combinations: 5 of those shown work, 3 of them a best trade-off of the two.",
    );
    expect(thinnedText(picture)).toMatch(/^6 of 12 combinations are drawn/);
    expect(thinnedText({ ...picture, total: 6 })).toBeNull();
  });

  it("as a table name both columns with their units, and in or out", () => {
    const { columns, rows } = pictureTable(picture);
    expect(columns).toEqual(["combination", "mass, g", "margin, ×", "works", "best trade-off"]);
    expect(rows[4]).toEqual([4, 500, 0.7, "no", ""]);
  });

  it("axisFor holds every value, a margin's axis from 0 to above what is wanted, also of one value or none", () => {
    const margin = axisFor(columnSpec("margin"), [0.4, 1.1], 1.5);
    expect([margin.from, margin.to]).toEqual([0, 1.56]);
    for (const values of [[500], []]) {
      const { from, to } = axisFor(columnSpec("mass"), values, 1.5);
      expect(to).toBeGreaterThan(from);
      for (const value of values) expect(from < value && value < to).toBe(true);
    }
  });

  it("choosePlot gives what works, what doesn't and best trade-offs a symbol each, named once, the best on top", () => {
    const { marks = [], shapes = [], lines = [] } = choosePlot(picture, { pinned: [], looked: null });
    const shapeOf = (index: number) => marks.find(({ key }) => key === String(index))?.shape;
    expect(new Set([0, 3, 4].map(shapeOf)).size).toBe(3);
    expect(shapes.map(({ shape }) => shape).sort()).toEqual([0, 3, 4].map(shapeOf).sort());
    expect(marks.slice(-4).map(({ shape }) => shape)).toEqual(Array(4).fill(shapeOf(0)));
    expect(lines[0].points[0]).toEqual({ x: 500, y: 1.6 });
  });

  it("choosePlot rings what is pinned, with its letter, and what is looked at, a combination once; one without a figure not", () => {
    const at = (index: number, x: number | null) => ({ index, x, y: 2 });
    const rings = choosePlot(picture, {
      pinned: [at(4, 0.5), at(0, 0.55), at(9, null)],
      looked: at(0, 0.55),
    }).rings;
    expect(rings?.map(({ key, look, name }) => [key, look, name?.lines])).toEqual([
      ["4", "before", ["A"]],
      ["0", "chosen", ["B"]],
    ]);
    const alone = choosePlot(picture, { pinned: [], looked: at(3, 0.6) }).rings;
    expect(alone?.map(({ key, look, x }) => [key, look, x])).toEqual([["3", "chosen", 600]]);
  });
});

describe("valueText", () => {
  it.each([
    ["mass", 0.5345, "535\u202fg"],
    ["time", 222, "3.7\u202fmin"],
    ["windingTemperature", 373.15, "100\u202f°C"],
    ["height", 0.0314, "31.4\u202fmm"],
    ["margin", 1.5, "1.50\u202f×"],
    ["margin", null, "no pull needed"],
    ["time", null, "–"],
    ["suction", 9.80665, "1000\u202fg"],
  ] as const)("%s of %s is shown as %s", (column, si, text) => {
    expect(valueText(column, si)).toBe(text);
  });
});
