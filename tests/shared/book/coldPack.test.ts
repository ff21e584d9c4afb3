import { describe, expect, it } from "vitest";
import type { Book } from "#shared/book/book.ts";
import { buildUncertainty } from "#shared/book/buildUncertainty.ts";
import { chooseProblem } from "#shared/book/choose/problem.ts";
import { withMass } from "#shared/book/mass/withMass.ts";
import { originsOf } from "#shared/book/origins.ts";
import { packBasis } from "#shared/book/packBasis.ts";
import { resolveBuild } from "#shared/book/resolve.ts";
import { runInput } from "#shared/book/runInput.ts";
import type { Build } from "#shared/model/build.ts";
import { predict } from "#shared/physics/predict.ts";
import { runDown } from "#shared/physics/rundown.ts";
import { chooseBody } from "#tests/support/chooseQuestion.ts";
import { demoBook } from "#tests/support/demoBook.ts";

const demo = demoBook();
const crawler = demo.builds[0].data;
const inAir = (celsius: number, build: Build = crawler): Build => ({
  ...build,
  air: { ...build.air, temperature: celsius + 273.15 },
});
/** The demo, its packs with a factor for the cold, and the air of its discharge tests. */
function bookWith(coldFactor: number | undefined, testedAt?: number): Book {
  const air =
    testedAt === undefined
      ? undefined
      : {
          temperature: { value: testedAt, unit: "°C" },
          pressure: { value: 1004, unit: "hPa" },
          humidity: { value: 60, unit: "%" },
        };
  return {
    ...demo,
    packs: demo.packs.map((pack) => ({
      ...pack,
      data: { ...pack.data, cell: { ...pack.data.cell, coldFactor } },
    })),
    tests: demo.tests.map((test) =>
      test.data.kind === "discharge" && air
        ? { ...test, data: { ...test.data, air } as typeof test.data }
        : test,
    ),
  };
}
const resistanceOf = (book: Book, build: Build) =>
  resolveBuild(book, build).input?.pack.cellResistance ?? Number.NaN;
const codesOf = (book: Book, build: Build) => resolveBuild(book, build).notes.map(({ code }) => code);
const tested: Build = { ...crawler, pack: "three-cell-850" };

describe("a pack in the cold", () => {
  const cold = bookWith(2.5);

  it("without a factor, or with 1, is what it was, whatever the air", () => {
    for (const celsius of [-5, 5, 25])
      for (const factor of [undefined, 1])
        expect(resistanceOf(bookWith(factor), inAir(celsius))).toBe(resistanceOf(demo, crawler));
  });

  it("has by hand 26 mΩ · 2.5 at freezing, its root of that half way, 26 mΩ from 20 °C up", () => {
    expect(resistanceOf(cold, inAir(0))).toBeCloseToRelative(0.026 * 2.5, 1e-12);
    expect(resistanceOf(cold, inAir(10))).toBeCloseToRelative(0.026 * Math.sqrt(2.5), 1e-12);
    expect(resistanceOf(cold, inAir(20))).toBe(0.026);
    expect(resistanceOf(cold, inAir(30))).toBe(0.026);
  });

  it("told by a discharge test at 5 °C is that there, and less where it is warmer", () => {
    const told = packBasis(bookWith(2.5, 5), "three-cell-850");
    const own = told?.basis === "measured" ? told.cell.resistance : Number.NaN;
    expect(resistanceOf(bookWith(2.5, 5), inAir(5, tested))).toBeCloseToRelative(own, 1e-12);
    expect(resistanceOf(bookWith(2.5, 5), inAir(20, tested))).toBeCloseToRelative(own / 2.5 ** 0.75, 1e-12);
    expect(resistanceOf(bookWith(2.5), inAir(20, tested))).toBeCloseToRelative(own, 1e-12);
  });

  it("turns slower, pulls less and is empty sooner than a pack without the rise, as if that resistance were stated", () => {
    const [rises, without] = [cold, demo].map((book) => {
      const resolved = resolveBuild(book, inAir(0));
      const input = resolved.input ?? expect.fail("no numbers");
      return { input, run: runInput(inAir(0), resolved) ?? expect.fail("no run") };
    });
    const stated = predict({ ...without.input, pack: { ...without.input.pack, cellResistance: 0.065 } });
    expect(predict(rises.input).suction).toBe(stated.suction);
    expect(stated.suction).toBeLessThan(predict(without.input).suction);
    expect(rises.run.pack.cell.resistance).toBeCloseToRelative(0.065, 1e-12);
    const minutes = (run: typeof rises.run) => runDown({ ...run, startCharge: 1, angles: [] }).end.time;
    expect(minutes(rises.run)).not.toBe(minutes(without.run));
  });

  it("is as cold in a search, by the air of the build that it is asked of", () => {
    const builds = cold.builds.map((build) => ({ ...build, data: inAir(0, build.data) }));
    const { problem } = chooseProblem({ ...cold, builds }, chooseBody({}));
    for (const pack of problem.packs) {
      const known = packBasis(cold, pack.id);
      const own = known && known.basis !== "missing" ? known.cell.resistance : Number.NaN;
      expect(pack.cell.resistance).toBeCloseToRelative(2.5 * own, 1e-12);
    }
  });

  it("is known relative to itself, and says in its working what the cold made of it", () => {
    const sd = (book: Book, build: Build) =>
      buildUncertainty(book, build, resolveBuild(book, build)).uncertainty["pack.cellResistance"];
    expect(sd(cold, inAir(0))).toBeCloseToRelative(2.5 * sd(demo, crawler), 1e-12);
    const resolved = resolveBuild(cold, inAir(0));
    const origin = originsOf({ book: cold, build: withMass(cold, inAir(0)), resolved }).find(
      ({ symbol }) => symbol === "R_cell",
    );
    expect(origin?.what).toMatch(/times 2\.50 in the air of the build\.$/);
  });

  it("says so, and of one whose rise isn't stated that the margins come out too high", () => {
    expect(codesOf(cold, inAir(0))).toContain("cold-cells");
    expect(codesOf(demo, inAir(0))).toContain("cold-cells-unknown");
    for (const celsius of [18, 25]) expect(codesOf(demo, inAir(celsius)).join()).not.toMatch(/cold/);
    expect(codesOf(cold, inAir(25)).join()).not.toMatch(/cold/);
  });
});
