import { describe, expect, it } from "vitest";
import { placeFree, spotsWithin } from "#client/charts/draw/place.ts";
import { clippedText, textWidth } from "#client/charts/draw/type.ts";

const room = { x: 0, y: 0, width: 200, height: 100 };
const label = (...spots: [number, number][]) => ({
  width: 40,
  height: 16,
  spots: spots.map(([x, y]) => ({ x, y })),
});

describe("placeFree", () => {
  it("takes the first spot, with nothing in the way, for each label", () => {
    expect(placeFree([label([10, 10], [50, 50])], [], room)).toMatchObject([{ x: 10, y: 10 }]);
  });

  it("moves the second label, with the first on its best spot, to the next free one", () => {
    const boxes = placeFree([label([10, 10]), label([20, 12], [20, 40])], [], room);
    expect(boxes[1]).toMatchObject({ x: 20, y: 40 });
  });

  it("rather covers a curve than another text, with no spot quite free, and rather neither", () => {
    const curve: [number, number][] = [
      [30, 48],
      [32, 50],
    ];
    const boxes = placeFree(
      [label([10, 10]), label([20, 12], [20, 40]), label([20, 42], [120, 70])],
      curve,
      room,
    );
    expect(boxes[1]).toMatchObject({ x: 20, y: 40 });
    expect(boxes[2]).toMatchObject({ x: 120, y: 70 });
  });

  it("stays in the plot, with the best spot over its edge, when another is within", () => {
    expect(placeFree([label([190, 10], [100, 10])], [], room)).toMatchObject([{ x: 100 }]);
  });
});

describe("spots for a region's name", () => {
  it("of a region wide enough: its middle first", () => {
    const [first] = spotsWithin({ x: 50, y: 20, width: 80, height: 40 }, { width: 40, height: 16 }, room);
    expect(first).toEqual({ x: 70, y: 32 });
  });

  it("of a region narrower than its name, at either edge: every one inside the plot", () => {
    for (const x of [0, 190])
      for (const spot of spotsWithin({ x, y: 0, width: 10, height: 100 }, { width: 120, height: 16 }, room)) {
        expect(spot.x).toBeGreaterThanOrEqual(0);
        expect(spot.x + 120).toBeLessThanOrEqual(room.width);
      }
  });
});

describe("a line of text cut to its room", () => {
  it("that fits: stays; a long one: its end is kept and it fits", () => {
    expect(clippedText("Wall, 90°", ", 90°", 100)).toBe("Wall, 90°");
    const cut = clippedText("A rather long name of a pane, 127°", ", 127°", 130);
    expect(cut).toMatch(/^A rather?.*…, 127°$/);
    expect(textWidth(cut)).toBeLessThanOrEqual(130);
  });
});
