import { describe, expect, it } from "vitest";
import { courseOf } from "#client/views/mass/history/course.ts";
import { coursePlot, courseSentence, momentLines } from "#client/views/mass/history/coursePlot.ts";
import { copyOf } from "#client/views/parts/copyOf.ts";
import type { Build } from "#shared/model/build.ts";
import { demoBook } from "#tests/support/demoBook.ts";

const book = demoBook();
const crawler = book.builds[0].data;
const plain = (text: string) => text.replaceAll(/\u202f/g, " ");
const state = (revision: number, day: string, data: Build) => ({
  id: "pane-crawler",
  revision,
  createdAt: "2026-03-01T08:00:00.000Z",
  updatedAt: `2026-03-${day}T08:00:00.000Z`,
  data,
});
const heavier = (mass: number): Build => ({ ...crawler, vehicle: { ...crawler.vehicle, mass } });
const { stacks: _s, places: _p, exchanges: _e, ...older } = heavier(0.4);
const moments = courseOf(book, [
  state(1, "01", older as Build),
  state(2, "03", heavier(0.5)),
  state(3, "11", heavier(0.62)),
]);

describe("the mass of a build over time", () => {
  it("is what each revision weighed, against what it might weigh, its margin falling as it grows", () => {
    expect(moments.map(({ mass }) => mass)).toEqual([0.4, 0.5, 0.62]);
    const [first, second, third] = moments;
    expect(first.atTarget).toBeCloseToRelative(third.atTarget ?? 0, 1e-9);
    // A rigid vehicle's margin goes with one over its mass.
    expect((first.margin ?? 0) * 0.4).toBeCloseToRelative((second.margin ?? 0) * 0.5, 1e-9);
    expect(plain(courseSentence(moments))).toMatch(
      /^Since it was first stored the build grew by 220 g\. From 207 g left it came to 13 g too much\.$/,
    );
  });

  it("stands as steps at the days of its changes", () => {
    const { lines = [], rings = [] } = coursePlot(moments);
    expect(rings.map(({ x }) => x)).toEqual([0, 2, 10]);
    const mass = lines.find(({ key }) => key === "mass")?.points;
    expect(mass?.map(({ x }) => x)).toEqual([0, 2, 2, 10, 10]);
    expect(mass?.map(({ y }) => Math.round(y))).toEqual([400, 400, 500, 500, 620]);
    expect(momentLines(moments, "2").map(plain).slice(0, 2)).toEqual(["2026-03-03 08:00", "500 g on board"]);
  });
});

describe("a copy of a record", () => {
  it("has a name that no other has, within the letters allowed, and is in use", () => {
    expect(copyOf({ name: "Wheel", retired: "worn" }, [])).toEqual({ name: "Wheel, copy" });
    expect(copyOf({ name: "Wheel" }, ["Wheel, copy", "Wheel, copy 2"])).toEqual({ name: "Wheel, copy 3" });
    expect(String(copyOf({ name: "x".repeat(120) }, []).name)).toHaveLength(120);
  });
});
