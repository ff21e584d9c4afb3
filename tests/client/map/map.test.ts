import { describe, expect, it } from "vitest";
import { solve } from "#client/state/outcome.ts";
import { shownOn } from "#client/ui/working/FigureOf.tsx";
import { type Asked, askedFrom, askedQuery } from "#client/views/map/asked.ts";
import { replyTo } from "#client/views/map/chance/answer.ts";
import { chanceQuestion } from "#client/views/map/chance/question.ts";
import { chanceLine, closenessText } from "#client/views/map/chance/words.ts";
import { type Drawing, mapPlot, mapTable, placeOf, solvedAt } from "#client/views/map/mapPlot.ts";
import { mapSentence, movedParts, movedSentence, placeLines } from "#client/views/map/mapWords.ts";
import { othersOn } from "#client/views/map/others.ts";
import { placeBoard } from "#client/views/map/placeBoard.ts";
import { askedOf, movable, questionOf, standsAt, standsOf } from "#client/views/map/question.ts";
import { insideOf, namesOf, regionsOf, STOPS } from "#client/views/map/regions.ts";
import { axisValues, MAP_SETTINGS } from "#client/views/map/settings.ts";
import { uncertaintyAsked } from "#shared/book/uncertaintyAsked.ts";
import { type ChanceNodes, chanceAt } from "#shared/decide/map/chance.ts";
import { uncertaintyOf } from "#shared/decide/uncertainty.ts";
import { marginText } from "#shared/decide/verdict/figures.ts";
import { expectWhole } from "#tests/client/ui/working/expectWhole.ts";
import { demoBook } from "#tests/support/demoBook.ts";
import { mapField } from "#tests/support/mapField.ts";

const book = demoBook();
const outcomeOf = (id: string) => {
  const build = book.builds.find((each) => each.id === id)?.data;
  return solve(book, build ?? expect.fail(`the demo has no ${id}`));
};
const outcome = outcomeOf("pane-crawler");
const stands = standsOf(outcome) ?? expect.fail("the crawler has no numbers");

function chanceOf(asked: Asked): ChanceNodes {
  const question = chanceQuestion(book, outcome, asked, { places: 5, samples: 256 });
  const reply = question && replyTo(question);
  return reply && "answered" in reply ? reply.answered : expect.fail(reply?.problem ?? "no question");
}

function drawingOf(query: string, count = 24): Drawing {
  const asked = askedFrom(new URLSearchParams(query));
  const question = questionOf(book, outcome, asked, count) ?? expect.fail("no question");
  const { x, y, shown } = asked;
  return {
    question,
    field: mapField(question),
    shown,
    chance: shown === "chance" ? chanceOf(asked) : null,
    own: { x: standsAt(stands, x), y: standsAt(stands, y) },
    moved: { x: asked.moved[x] ?? standsAt(stands, x), y: asked.moved[y] ?? standsAt(stands, y) },
    others: othersOn(book, "pane-crawler", stands, question),
  };
}

describe("what is asked of a map", () => {
  it("is carried by the address and comes back from it", () => {
    const asked = askedFrom(new URLSearchParams("x=gap&y=mass&third=series&show=winding&gap=0.0004"));
    expect(askedFrom(new URLSearchParams(askedQuery(asked)))).toEqual(asked);
    expect(asked).toMatchObject({
      x: "gap",
      y: "mass",
      third: "series",
      shown: "winding",
      moved: { gap: 4e-4 },
    });
  });

  it("of nonsense is the first map, never one setting twice", () => {
    const asked = askedFrom(new URLSearchParams("x=gap&y=gap&third=gap&show=colour&mass=-3&kv=many"));
    expect(new Set([asked.x, asked.y, asked.third]).size).toBe(3);
    expect(asked).toMatchObject({ x: "gap", shown: "margin", moved: {} });
  });

  it.each(MAP_SETTINGS.map((setting) => [setting.key, setting] as const))(
    "along %s runs evenly over the build's own value, whole cells where there are only those",
    (key, setting) => {
      const values = axisValues(setting, standsAt(stands, key), 50);
      expect(values[0]).toBeLessThanOrEqual(standsAt(stands, key));
      expect(values.at(-1)).toBeGreaterThanOrEqual(standsAt(stands, key));
      if (key === "series") expect(values.every(Number.isInteger)).toBe(true);
    },
  );

  it("of an open propeller has no gap: another setting stands in its place", () => {
    const scout = outcomeOf("prop-scout");
    const asked = askedFrom(new URLSearchParams("x=gap&y=kv&third=mass&gap=0.0004"));
    const question = questionOf(book, scout, asked, 10) ?? expect.fail("no question");
    expect([question.x.key, question.y.key]).toEqual(["diameter", "kv"]);
    const there = standsOf(scout) ?? expect.fail("the scout has no numbers");
    expect(movable(there)).not.toContain("gap");
    expect(askedOf(there, asked)).toMatchObject({ x: "diameter", y: "kv", third: "mass", moved: {} });
    const drawing = { question, field: mapField(question) };
    const { margin, winding } = solvedAt(drawing, standsAt(there, "diameter"), standsAt(there, "kv"));
    expect(margin).toBeCloseToRelative(scout.prediction?.worst.driving.margin ?? 0, 1e-12);
    expect(winding).toBeCloseToRelative(scout.prediction?.point?.windingTemperature ?? 0, 1e-12);
  });
});

describe("a map of the demo's crawler over diameter and K_v", () => {
  const drawing = drawingOf("");

  it("has the build's own margins and winding where it stands, those of Match", () => {
    const { margin, winding } = solvedAt(drawing, standsAt(stands, "diameter"), standsAt(stands, "kv"));
    expect(margin).toBeCloseToRelative(outcome.prediction?.worst.driving.margin ?? 0, 1e-12);
    expect(winding).toBeCloseToRelative(outcome.prediction?.point?.windingTemperature ?? 0, 1e-12);
    expect(movedSentence(drawing)).toMatch(
      /^This build at 44\.0\smm, .*: holds, 1\.63\s×; winding \d+\s°C\.$/,
    );
  });

  it("opens the margin in its line to its working, where it is moved as well", () => {
    for (const moved of [drawingOf(""), drawingOf("diameter=0.048&kv=4500")]) {
      const { solved, margin } = movedParts(moved);
      const board = placeBoard(book, outcome, moved.question, moved.moved);
      expectWhole(board);
      const title = `margin at ${solved.least?.angle.toFixed(0)}°, ${solved.least?.state}`;
      const shown = shownOn(board, { title, value: solved.margin });
      expect(shown?.working.result.value).toBe(solved.margin);
      expect(marginText(solved.margin)).toBe(margin);
    }
  });

  it("says how much of it holds and what stops the rest", () => {
    expect(mapSentence(drawing)).toMatch(
      /^At 60\s% charge, with rotor diameter and speed constant alone moved, it holds with the margin wanted on \d+\s% of this map; on .*burns.*falls.*tight\.$/,
    );
  });

  it("names each part deepest inside it, where nothing worse stops it", () => {
    const at = (column: number, row: number) => ({ x: column, y: row });
    const names = namesOf(drawing.field, drawing.question, at);
    expect(names.length).toBeGreaterThan(1);
    for (const { name, outline } of names) {
      const kind = STOPS.find((each) => each === name?.lines[0]) ?? expect.fail("no such part");
      const [column, row] = [outline[0].x + 0.25, outline[0].y + 0.25];
      const cell = row * drawing.field.columns + column;
      const stopped = STOPS.map((each) => insideOf(drawing.field, drawing.question, each)[cell] > 0);
      expect(STOPS[stopped.indexOf(true)]).toBe(kind);
    }
    expect(regionsOf(drawing.field, drawing.question, at).every(({ outline }) => outline.length > 2)).toBe(
      true,
    );
  });

  it("has the book's motors and other builds as points, and reads each place", () => {
    const plot = mapPlot(drawing);
    expect(drawing.others.some(({ key }) => key.startsWith("motor "))).toBe(true);
    const [stop] = plot.stops ?? [];
    expect(placeOf(drawing, stop.key)).toEqual({
      x: drawing.question.x.values[0],
      y: drawing.question.y.values[0],
    });
    expect(placeLines(drawing, stop.key)[1]).toMatch(/falls/);
    expect(placeLines(drawing, "nowhere")).toEqual([]);
  });

  it("is a table too, with no more rows than can be read", () => {
    const { columns, rows } = mapTable(drawing);
    expect(rows).toHaveLength(9);
    expect(rows.every((row) => row.length === columns.length)).toBe(true);
  });
});

describe("other maps", () => {
  it("follow what else is moved: less gap, more margin", () => {
    const at = (query: string) =>
      solvedAt(drawingOf(query, 6), standsAt(stands, "diameter"), standsAt(stands, "kv")).margin;
    expect(at("gap=0.0003")).toBeGreaterThan(at("gap=0.0009"));
  });

  it("of minutes have times, of the winding degrees", () => {
    const timed = drawingOf("x=mass&y=duty&show=minutes", 6);
    expect(timed.field.time.some((time) => time > 60)).toBe(true);
    expect(mapPlot(timed).field?.steps.length).toBeGreaterThan(0);
    expect(mapPlot(drawingOf("x=mass&y=duty&show=winding", 6)).field?.words(80)).toMatch(/^80\s°C$/);
  });
});

describe("a map of the chance of holding", () => {
  const drawing = drawingOf("x=mass&y=charge&show=chance", 12);
  const { asked, input } = uncertaintyAsked(book, outcome) ?? expect.fail("nothing is uncertain");
  const worst = outcome.prediction?.worst.driving ?? expect.fail("no prediction");

  it.each([1, 1.25, 1.5])(
    "has at %s times the crawler's mass what Match says of it, within the sampling error",
    (by) => {
      const mass = by * standsAt(stands, "mass");
      const heavier = { ...input, vehicle: { ...input.vehicle, mass } };
      const { attitudes } = uncertaintyOf(heavier, { ...asked, angles: [worst.angle] });
      const { margin } = solvedAt(drawing, mass, standsAt(stands, "charge"));
      const there = drawing.chance && chanceAt(drawing.chance, mass, standsAt(stands, "charge"), margin);
      const { holds } = attitudes[0].driving;
      // Three standard errors of 256 and 2048 samples, and what a scale's 0.5 % differs by at another mass.
      const error = Math.sqrt(Math.max(holds * (1 - holds), 1 / 256) * (1 / 256 + 1 / 2048));
      expect(Math.abs((there ?? Number.NaN) - holds)).toBeLessThan(3 * error + 0.01);
    },
  );

  it("says so: in the sentence, at each place, on the contours, in the table in whole per cent", () => {
    expect(mapSentence(drawing)).toMatch(/ On \d+\s% it lasts and the chance of holding is 95\s% or more\.$/);
    expect(movedSentence(drawing)).toMatch(/× *; .*% chance of holding; winding/);
    expect(
      chanceLine(drawing, { x: standsAt(stands, "mass"), y: 0.6 }, { margin: 1.2, stop: "tight" })[0],
    ).toMatch(/% chance of holding$/);
    const light = { x: standsAt(stands, "mass") * 0.4, y: 1 };
    expect(chanceLine({ ...drawing, shown: "margin" }, light, { margin: 9, stop: null })).toEqual([]);
    expect(chanceLine(drawing, light, { margin: 9, stop: "burns" })).toEqual([]);
    expect(chanceLine(drawing, light, { margin: 9, stop: null })[0]).toMatch(/^>\s99\s% chance/);
    expect(mapPlot(drawing).field?.words(95)).toMatch(/^95\s%$/);
    const { columns, rows } = mapTable(drawing);
    expect(columns[0]).toMatch(/chance of holding \(%\)$/);
    const numbers = rows.flatMap((row) => row.slice(1));
    expect(numbers.every((each) => typeof each === "number" && Number.isInteger(each) && each <= 100)).toBe(
      true,
    );
    expect(closenessText(drawing)).toMatch(/sampled at 5 × 5 places, 256 times at each/);
  });
});
