import { describe, expect, it } from "vitest";
import { barsPicture } from "#client/charts/bars.ts";
import { barsHeight, barsLayout } from "#client/charts/draw/bars.ts";
import type { BarPlot } from "#client/charts/model/bars.ts";
import { spotByKey } from "#client/charts/read/spots.ts";

const bar = (key: string, value: number) =>
  ({ key, name: key, figure: String(value), value, tone: "ink" }) as const;
const plot: BarPlot = {
  bars: [bar("a", 3), bar("b", -1), bar("c", 0.5)],
  sides: { below: "less", above: "more" },
};
const SIZE = { width: 404, height: barsHeight(3) };

describe("barsLayout, values of both signs", () => {
  it("has zero and every end to one scale over the whole width", () => {
    const { zero, width, x } = barsLayout(plot, SIZE);
    expect(zero).toBeCloseTo(width / 4, 9);
    expect([x(3), x(-1)]).toEqual([width, 0]);
    expect(x(0.5) - zero).toBeCloseTo(width / 8, 9);
  });

  it("has zero within the picture, with no bar at all", () => {
    const { zero, width } = barsLayout({ ...plot, bars: [] }, SIZE);
    expect(zero >= 0 && zero <= width).toBe(true);
  });
});

describe("barsPicture, read row by row", () => {
  const drawn = barsPicture(plot)(SIZE);

  it("goes down and up through every row, however far apart their ends lie", () => {
    const order = drawn.spots();
    const next = (from: string, key: string) => spotByKey(order, from, key, drawn.order === "rows");
    expect(["a", "b"].map((from) => next(from, "ArrowDown"))).toEqual(["b", "c"]);
    expect(["c", "b"].map((from) => next(from, "ArrowUp"))).toEqual(["b", "a"]);
    expect([next("a", "ArrowRight"), next("a", "End")]).toEqual(["b", "c"]);
  });

  it("means the row at the pointer's height, wherever along it the pointer is", () => {
    const [, second] = drawn.spots();
    expect(drawn.under({ x: 0, y: second.y + 9 }, 1)?.key).toBe("b");
    expect(drawn.under({ x: 400, y: second.y - 9 }, 1)?.key).toBe("b");
    expect(barsPicture({ ...plot, bars: [] })(SIZE).under({ x: 0, y: 0 }, 1)).toBeNull();
  });
});
