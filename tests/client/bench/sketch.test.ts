import { describe, expect, it } from "vitest";
import { type Draft, withCell } from "#client/views/bench/record/draft.ts";
import { readDraft } from "#client/views/bench/record/readDraft.ts";
import { writeDraft } from "#client/views/bench/record/writeDraft.ts";
import { runningResult } from "#client/views/bench/running/run.ts";
import type { Sketch } from "#client/views/bench/running/sketch.ts";
import type { Book } from "#shared/book/book.ts";
import { byCollection } from "#shared/model/collections.ts";
import type { BenchTest } from "#shared/model/tests/index.ts";
import { EXAMPLES, FRICTION, KNOWN_CURVE, PULL, RIDE_HEIGHT } from "./examples.ts";

const EMPTY = byCollection(() => []) as Book;

function sketchOf(draft: Draft): Sketch {
  const { sketch } = runningResult(readDraft(draft), EMPTY);
  if (!sketch) throw new Error("Nothing is drawn.");
  return sketch;
}

const marksOf = (draft: Draft) => sketchOf(draft).plot.marks ?? [];

describe("a form's sketch", () => {
  const kinds = EXAMPLES.filter(({ kind }) => kind !== "discharge" && kind !== "run-log");

  it.each(kinds.map((test): [string, BenchTest] => [test.kind, test]))(
    "of a %s test: every row is drawn under its own key, also as a table",
    (_, test) => {
      const { plot, table, describe: says } = sketchOf(writeDraft(test));
      const keys = [...(plot.marks ?? []), ...(plot.brackets ?? [])].map(({ key }) => key);
      expect(keys.sort()).toEqual(test.rows.map((_row, i) => String(i)));
      expect(table().rows).toHaveLength(test.rows.length);
      expect(says("0")[0]).toMatch(/ 1$/);
    },
  );

  it("with a row that can't be read: leaves it out, the others keep their numbers", () => {
    const draft = withCell(writeDraft(PULL), 0, "held", "rubbish");
    const { plot, describe: says } = sketchOf(draft);
    expect(plot.strips?.map(({ detail }) => detail)).toEqual(["2"]);
    expect(says("1")[0]).toBe("pull 2");
  });

  it("of a curve at two speeds: brings every row to one by the fan laws, flow with the speed, suction with its square", () => {
    const row = (rpm: number, flow: number, pressure: number) => ({
      speed: { value: rpm, unit: "rpm" },
      flow: { value: flow, unit: "L/s" },
      pressure: { value: pressure, unit: "Pa" },
    });
    const rows = [row(10_000, 1, 400), row(20_000, 2, 1600), row(20_000, 1, 1900)];
    const [slow, fast] = marksOf(writeDraft({ ...KNOWN_CURVE, rows } as BenchTest));
    expect(slow.x).toBeCloseTo(2, 9);
    expect(slow.y).toBeCloseTo(1600, 6);
    expect(fast).toMatchObject({ x: expect.closeTo(2, 9), y: expect.closeTo(1600, 6) });
  });

  it("of heights under load: the fitted line goes through readings that lie on one", () => {
    const reading = (load: number, height: number) => ({
      load: { value: load, unit: "g" },
      height: { value: height, unit: "mm" },
    });
    const rows = [reading(0, 1), reading(100, 0.8), reading(200, 0.6)];
    const [line] = sketchOf(writeDraft({ ...RIDE_HEIGHT, rows } as BenchTest)).plot.lines ?? [];
    for (const { x, y } of line.points) expect(y).toBeCloseTo(1 - 0.002 * x, 9);
  });

  it("of slides: a tilt that slid alone is a mark, one that held as well a bracket, both in degrees", () => {
    const rows = [
      { held: null, slid: { value: 44, unit: "°" } },
      { held: { value: 40, unit: "°" }, slid: { value: 44, unit: "°" } },
    ];
    const { plot } = sketchOf(writeDraft({ ...FRICTION, rows } as BenchTest));
    expect(plot.marks).toMatchObject([{ key: "0", x: expect.closeTo(44, 9) }]);
    expect(plot.brackets).toMatchObject([{ key: "1", lo: expect.closeTo(40, 9), hi: expect.closeTo(44, 9) }]);
  });

  it("of more pulls than are named: stands in a row over their order", () => {
    const rows = Array.from({ length: 13 }, () => PULL.rows[0]);
    const { plot } = sketchOf(writeDraft({ ...PULL, rows } as BenchTest));
    expect(plot.strips).toBeUndefined();
    expect(plot.brackets?.map(({ at }) => at).slice(0, 2)).toEqual([1, 2]);
  });
});
