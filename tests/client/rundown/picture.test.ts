import { describe, expect, it } from "vitest";
import { answerTo } from "#client/views/rundown/answer.ts";
import { marginPlot } from "#client/views/rundown/marginPlot.ts";
import { momentWords } from "#client/views/rundown/momentWords.ts";
import { panelsOf } from "#client/views/rundown/panels.ts";
import { question } from "./examples.ts";

const answered = answerTo(question);
const plot = marginPlot(answered);

describe("the picture of a run", () => {
  it("has a line an attitude, with the margins of every sample over the minutes", () => {
    expect(plot.lines?.map(({ key }) => key)).toEqual(answered.tracks.map(({ key }) => key));
    plot.lines?.forEach(({ points }, t) => {
      expect(points).toHaveLength(answered.samples.length);
      points.forEach(({ x, y }, i) => {
        expect(x).toBeCloseTo(answered.samples[i].time / 60, 12);
        const margin = answered.tracks[t].margins[i];
        if (margin === null) expect(y).toBeNaN();
        else expect(y).toBe(margin);
      });
    });
  });

  it("tells the lines apart without colour: no two attitudes share dashes and weight", () => {
    const looks = plot.lines?.map(({ style, weight }) => JSON.stringify([style, weight]));
    expect(new Set(looks).size).toBe(answered.tracks.length);
  });

  it("has a ring on 1 where an attitude lets go, and at no other", () => {
    const falls = answered.tracks.filter(({ holds }) => holds.time !== null);
    expect(falls.length).toBeGreaterThan(0);
    expect(plot.rings?.map(({ x, y }) => [x, y])).toEqual(
      falls.map(({ holds }) => [(holds.time ?? 0) / 60, 1]),
    );
  });

  it("hatches what lies below 1, over the whole run, and names what is needed and wanted", () => {
    const heights = plot.regions?.[0].outline.map(({ y }) => y);
    expect(Math.max(...(heights ?? []))).toBe(1);
    expect(plot.regions?.[0].outline.map(({ x }) => x)).toContain(plot.x.to);
    expect(plot.levels?.map(({ at }) => at)).toEqual([1, answered.targetMargin]);
    expect(marginPlot({ ...answered, targetMargin: 1 }).levels?.map(({ at }) => at)).toEqual([1]);
  });

  it("can be read at every sample, on its axes", () => {
    const samples = plot.stops ?? [];
    expect(samples).toHaveLength(answered.samples.length);
    for (const { y } of samples) expect(y).toBeLessThanOrEqual(plot.y.to);
  });

  it("has all its charts over the same minutes, each quantity within its axis", () => {
    for (const { plot: each, key } of panelsOf(answered)) {
      expect([each.x.from, each.x.to]).toEqual([plot.x.from, plot.x.to]);
      for (const { points } of each.lines ?? [])
        for (const { y } of points) if (key !== "margins") expect(y).toBeGreaterThanOrEqual(each.y.from);
    }
  });
});

describe("words of a moment", () => {
  it("are its time and charge, every attitude's margin, volts, speed and suction", () => {
    const lines = momentWords(answered, "0");
    expect(lines[0]).toBe("After 0 seconds, at a full charge");
    expect(lines.slice(1, 1 + answered.tracks.length).every((line) => line.endsWith("×"))).toBe(true);
    expect(lines.join("; ")).toMatch(/pack \d\.\d\d.V, a cell \d\.\d\d.V; \d\d.?\d\d\d.rpm, \d+.Pa/);
  });

  it("are what lets go and when, where an attitude does", () => {
    const fallen = answered.tracks.find(({ holds }) => holds.time !== null);
    expect(momentWords(answered, `fall ${fallen?.key}`)[0]).toMatch(/ lets go after \d/);
  });

  it("are none, at a moment that the run does not have", () => {
    expect(momentWords(answered, "100000")).toEqual([]);
    expect(momentWords(answered, "fall nowhere")).toEqual([]);
  });
});
