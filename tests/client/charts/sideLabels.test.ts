import { describe, expect, it } from "vitest";
import { layoutOf, marginOf, stripName } from "#client/charts/draw/layout.ts";
import { sideLabelsOf } from "#client/charts/draw/sideLabels.ts";
import { textWidth } from "#client/charts/draw/type.ts";
import type { Plot } from "#client/charts/model/plot.ts";

const mark = { shape: 0, tone: "rotor", aside: false, outlier: false } as const;
const plot: Plot = {
  x: { label: "flow, L/s", from: 0, to: 10 },
  y: { label: "pressure, Pa", from: 0, to: 100 },
  lines: [
    {
      key: "fan",
      tone: "rotor",
      style: "solid",
      points: [
        { x: 0, y: 90 },
        { x: 8, y: 20 },
      ],
      label: "rotor",
    },
  ],
  levels: [
    {
      key: "wall",
      along: "x",
      at: 40,
      tone: "needed",
      label: { text: "Wall, 90°", short: "wall", tail: ", 90°" },
    },
    { key: "pane", along: "x", at: 400, tone: "needed", label: { text: "A pane, 120°", short: "120°" } },
    { key: "zero", along: "x", at: 0, tone: "quiet" },
  ],
  marks: [
    { ...mark, key: "a", x: 2, y: 70 },
    { ...mark, key: "b", x: 6, y: 30 },
    { ...mark, key: "c", x: 9, y: 10, aside: true },
  ],
  shapes: [{ key: "test", shape: 0, text: "Test of May" }],
};

const labelsAt = (width: number) => sideLabelsOf(plot, layoutOf(plot, { width, height: 300 }));

describe("names beside a plot", () => {
  it("stand at a line's end, at a level's height and at a test's rightmost reading in use", () => {
    const layout = layoutOf(plot, { width: 900, height: 300 });
    const labels = labelsAt(900);
    const from = (key: string) => labels.find((label) => label.key === key)?.from;
    expect(labels.map(({ text }) => text)).toEqual(["rotor", "Wall, 90°", "↑ A pane, 120°", "Test of May"]);
    expect(from("fan")).toEqual({ x: layout.x(8), y: layout.y(20) });
    expect(from("wall")?.y).toBe(layout.y(40));
    expect(from("test")).toEqual({ x: layout.x(6), y: layout.y(30) });
  });

  it("have an arrow at the top, for a level beyond the plot", () => {
    expect(labelsAt(900).find(({ key }) => key === "pane")?.from.y).toBe(0);
  });

  it("are the short ones alone on a phone, the rest is in the legend", () => {
    expect(labelsAt(360).map(({ text }) => text)).toEqual(["wall", "↑ 120°"]);
  });

  it("are none, where the chart above has them, but their room is kept", () => {
    const below = { ...plot, namedAbove: true };
    expect(sideLabelsOf(below, layoutOf(below, { width: 900, height: 200 }))).toEqual([]);
    expect(marginOf(below, 900).right).toBe(marginOf(plot, 900).right);
  });

  it("never take more than a third of a laptop's chart or a quarter of a phone's, however long they are", () => {
    const long = { ...plot, shapes: [{ key: "test", shape: 0, text: "A name ".repeat(30) }] };
    expect(marginOf(long, 900).right).toBeLessThanOrEqual(0.34 * 900);
    const short = { ...plot, levels: [{ ...plot.levels?.[0], label: { text: "", short: "x".repeat(80) } }] };
    expect(marginOf(short as Plot, 360).right).toBeLessThanOrEqual(0.27 * 360);
  });
});

describe("the name of a strip", () => {
  it("is whole where it fits; else its title gives way and its detail stays", () => {
    const strip = { title: "Swept nine, 38 mm at 3.9 V", detail: "26 700 rpm" };
    expect(stripName(strip, 600)).toBe("Swept nine, 38 mm at 3.9 V, 26 700 rpm");
    const cut = stripName(strip, 180);
    expect(cut).toMatch(/^Swept.*…, 26 700 rpm$/);
    expect(textWidth(cut)).toBeLessThanOrEqual(180);
    expect(stripName(strip, 20)).toBe("26 700 rpm");
  });
});
