import { describe, expect, it } from "vitest";
import { type At, linePath, outlinePath, ribbonOf, ribbonPath } from "#client/charts/draw/path.ts";

/** Pixels that are the data's own units, y upwards from 100. */
const at: At = (x, y) => [x, 100 - y];

describe("a line's path", () => {
  it("goes through all points, to a tenth of a pixel", () => {
    const points = [
      { x: 0, y: 10 },
      { x: 1 / 3, y: 20 },
    ];
    expect(linePath(points, at)).toBe("M0,90L0.3,80");
  });

  it("breaks at a value that is missing and goes on behind it", () => {
    const points = [0, 1, 2, 3].map((x) => ({ x, y: x === 1 ? Number.NaN : 10 }));
    expect(linePath(points, at)).toBe("M0,90M2,90L3,90");
  });

  it("breaks at a place that its axis does not have, such as 0 on a logarithmic one", () => {
    const log: At = (x, y) => [Math.log10(x), y];
    expect(
      linePath(
        [
          { x: 0, y: 1 },
          { x: 10, y: 1 },
          { x: 100, y: 2 },
        ],
        log,
      ),
    ).toBe("M1,1L2,2");
  });
});

describe("a band's path", () => {
  const band = (heights: readonly number[]) =>
    ribbonOf({
      key: "band",
      tone: "rotor",
      strength: "mean",
      points: heights.map((hi, x) => ({ x, lo: 0, hi })),
    });

  it("goes along its lower edge and back along its upper one", () => {
    expect(ribbonPath(band([10, 20]), at)).toBe("M0,100L1,100L1,80L0,90Z");
  });

  it("is one closed path a stretch, with a height missing between", () => {
    const path = ribbonPath(band([1, 1, Number.NaN, 1, 1]), at);
    expect(path.match(/M/g)).toHaveLength(2);
    expect(path.match(/Z/g)).toHaveLength(2);
  });

  it("is nothing, with a single place or fewer than three corners", () => {
    expect(ribbonPath(band([]), at)).toBe("");
    expect(outlinePath([{ x: 0, y: 0 }], at)).toBe("");
  });
});
