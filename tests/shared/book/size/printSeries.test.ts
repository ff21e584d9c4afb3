import { describe, expect, it } from "vitest";
import type { Book } from "#shared/book/book.ts";
import { bookOfBuild } from "#shared/book/bookOfBuild.ts";
import type { RotorKind } from "#shared/book/size/families.ts";
import { withDrawn } from "#shared/book/size/need/bookOfNeed.ts";
import { printSeries, type SeriesAsked } from "#shared/book/size/printSeries.ts";
import { sideOf, sizeBuild } from "#shared/book/size/sides.ts";
import { sizesOf } from "#shared/decide/size/size.ts";
import type { Build } from "#shared/model/build.ts";
import { demoBook } from "#tests/support/demoBook.ts";
import { NOTHING_ALLOWED } from "../../decide/size/examples.ts";

const DRAWN = { blades: 7, exitAngle: 40, inletRatio: 0.5, widthRatio: 0.12 };
const book = withDrawn(demoBook(), [DRAWN], 0.044);
const hold = { angle: "worst", margin: 1.5, mode: "driving" } as const;
const DIAMETERS = [0.04, 0.045, 0.05, 0.055, 0.06];

const openBook = demoBook();

/** The book with one thrust test of one propeller, its first four speeds. */
function fourSpeeds(whole: Book): Book {
  const isThrust = ({ data }: Book["tests"][number]) => data.kind === "thrust";
  const [first] = whole.tests.filter(isThrust);
  if (first.data.kind !== "thrust") throw new Error("The demo has no thrust test.");
  const few = { ...first, data: { ...first.data, rows: first.data.rows.slice(0, 4) } };
  return { ...whole, tests: [...whole.tests.filter((test) => !isThrust(test)), few] };
}

/** The scout's propeller between the sizes that were tested and beyond them. */
function openAsked(of: Book): SeriesAsked {
  const scout = of.builds.find(({ id }) => id === "prop-scout");
  if (!scout) throw new Error("The demo has no scout.");
  const diameters = [0.102, 0.115, 0.127, 0.14, 0.155];
  const best = { p5: 0.115, p50: 0.127, p95: 0.14 };
  return askedOf(of, scout.data, { id: "pusher-three", kind: "propeller", diameters, best });
}

interface Of {
  readonly id: string;
  readonly kind: RotorKind;
  readonly diameters: readonly number[];
  readonly best: SeriesAsked["best"];
}

function asked(id: string): SeriesAsked {
  const best = { p5: 0.049, p50: 0.052, p95: 0.056 };
  return askedOf(book, book.builds[0].data, { id, kind: "ducted", diameters: DIAMETERS, best });
}

function askedOf(of: Book, build: Build, { id, kind, diameters, best }: Of): SeriesAsked {
  const side = sideOf(of, build, kind, { motor: build.motor, cellVoltage: 3.7 });
  const family = side?.families.find((each) => each.id === id);
  if (!side || !family) throw new Error(`The demo has no ${id}.`);
  const { rows } = sizesOf(
    { build: sizeBuild(side.numbers, family), need: { hold }, allows: NOTHING_ALLOWED, cell: null },
    diameters,
  );
  return { book: bookOfBuild(of, { ...side.build, rotor: id }), side, family: id, hold, rows, best };
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

  // A thrust test of four speeds leaves C_T and C_P to chance; nine readings more take a good part of that off.
  it("of an open propeller tested in one go at four speeds: a thrust test of another print takes some off, over its own speeds", () => {
    const { known, prints, together } = printSeries(openAsked(fourSpeeds(openBook)));
    expect(known).toBeGreaterThan(0.01);
    expect(prints.length).toBeGreaterThanOrEqual(3);
    for (const { cut, throttles } of prints) {
      expect(cut).toBeGreaterThan(0.1);
      expect(cut).toBeLessThan(1);
      expect(throttles[0]).toBeGreaterThan(throttles[1]);
      expect(throttles[0]).toBeLessThanOrEqual(1);
    }
    const cuts = prints.map(({ cut }) => cut);
    expect(cuts).toEqual([...cuts].sort((a, b) => b - a));
    expect(together).toBeGreaterThan(cuts[0]);
    expect(prints.filter(({ isTested }) => isTested).map(({ diameter }) => diameter)).toEqual([0.127]);
  });

  it("of the same propeller with every reading of the demo: less is uncertain, and less is left to tell", () => {
    const [few, all] = [fourSpeeds(openBook), openBook].map((each) => printSeries(openAsked(each)));
    expect(all.known).toBeLessThan(few.known ?? 0);
    expect(all.prints[0]?.cut ?? 0).toBeLessThan(few.prints[0].cut);
  });

  it("without sizes: nothing", () => {
    expect(printSeries({ ...asked("swept-nine"), rows: [] })).toEqual({
      known: null,
      prints: [],
      together: null,
    });
  });
});
