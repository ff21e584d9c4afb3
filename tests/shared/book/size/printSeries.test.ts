import { describe, expect, it } from "vitest";
import { bookOfBuild } from "#shared/book/bookOfBuild.ts";
import { withDrawn } from "#shared/book/size/need/bookOfNeed.ts";
import { printSeries, type SeriesAsked } from "#shared/book/size/printSeries.ts";
import { sideOf, sizeBuild } from "#shared/book/size/sides.ts";
import { sizesOf } from "#shared/decide/size/size.ts";
import { demoBook } from "#tests/support/demoBook.ts";
import { NOTHING_ALLOWED } from "../../decide/size/examples.ts";

const DRAWN = { blades: 7, exitAngle: 40, inletRatio: 0.5, widthRatio: 0.12 };
const book = withDrawn(demoBook(), [DRAWN], 0.044);
const hold = { angle: "worst", margin: 1.5, mode: "driving" } as const;
const DIAMETERS = [0.04, 0.045, 0.05, 0.055, 0.06];

function asked(id: string): SeriesAsked {
  const [{ data: build }] = book.builds;
  const side = sideOf(book, build, "ducted", { motor: build.motor, cellVoltage: 3.7 });
  const family = side?.families.find((each) => each.id === id);
  if (!side || !family) throw new Error(`The demo has no ${id}.`);
  const { rows } = sizesOf(
    { build: sizeBuild(side.numbers, family), need: { hold }, allows: NOTHING_ALLOWED, cell: null },
    DIAMETERS,
  );
  const best = { p5: 0.049, p50: 0.052, p95: 0.056 };
  return { book: bookOfBuild(book, { ...side.build, rotor: id }), side, family: id, hold, rows, best };
}

describe("printSeries", () => {
  it("of a rotor that is only drawn: each print takes most of it off, three no less than one", () => {
    const { known, prints, together } = printSeries(asked("typed rotor 1"));
    // An estimated curve is right to about 30 %, and so, about, are its watts.
    expect(known).toBeGreaterThan(0.2);
    expect(prints.length).toBeGreaterThanOrEqual(3);
    for (const { cut, isTested, throttles } of prints) {
      expect(cut).toBeGreaterThan(0.7);
      expect(isTested).toBe(false);
      expect(throttles[0]).toBeGreaterThan(throttles[1]);
      expect(Math.max(...throttles)).toBeLessThanOrEqual(1);
    }
    const cuts = prints.map(({ cut }) => cut);
    expect(cuts).toEqual([...cuts].sort((a, b) => b - a));
    expect(together).toBeGreaterThan(cuts[0] - 0.02);
  });

  it("of a curve that was tested often: little is left to tell", () => {
    const { known, prints } = printSeries(asked("swept-nine"));
    expect(known).toBeLessThan(0.15);
    for (const { cut } of prints) expect(cut).toBeLessThan(0.3);
  });

  it("of an open propeller, or without sizes: nothing", () => {
    const ducted = asked("swept-nine");
    const none = { known: null, prints: [], together: null };
    expect(printSeries({ ...ducted, rows: [] })).toEqual(none);
    expect(printSeries({ ...ducted, side: { ...ducted.side, kind: "propeller" } })).toEqual(none);
  });
});
