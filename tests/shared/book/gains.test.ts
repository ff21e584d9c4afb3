import { describe, expect, it } from "vitest";
import { type Book, findById } from "#shared/book/book.ts";
import { buildUncertainty } from "#shared/book/buildUncertainty.ts";
import { resolveAsSet } from "#shared/book/resolve/resolveWith.ts";
import { resolveBuild } from "#shared/book/resolve.ts";
import { placeAt } from "#shared/decide/numberAt.ts";
import { uncertaintyOf } from "#shared/decide/uncertainty.ts";
import type { Build } from "#shared/model/build.ts";
import type { BenchTest } from "#shared/model/tests/index.ts";
import { predict } from "#shared/physics/predict.ts";
import { demoBook } from "#tests/support/demoBook.ts";

const demo = demoBook();
const ridge = findById(demo.builds, "ridge-runner")?.data as Build;
const GAIN = 1e-3;

type Row = Readonly<Record<string, unknown>>;

/** The demo, instruments of its tests as said, some of their readings off by a gain. */
function demoWith(instruments: object, keys: readonly string[] = [], gain = GAIN): Book {
  const off = (row: Row) =>
    Object.fromEntries(
      Object.entries(row).map(([key, read]) => {
        const typed = read as { value: number };
        return keys.includes(key) ? [key, { ...typed, value: typed.value * (1 + gain) }] : [key, read];
      }),
    );
  const tests = demo.tests.map((test) => {
    const rows = (test.data.rows as readonly Row[]).map(off);
    return { ...test, data: { ...test.data, instruments, rows } as unknown as BenchTest };
  });
  return { ...demo, tests };
}

const doubtOf = (book: Book) => buildUncertainty(book, ridge, resolveBuild(book, ridge));

describe("gains of instruments, by what they do to a fit", () => {
  it.each([
    ["pressure", ["pressure", "platePressure"]],
    ["speed", ["speed"]],
    ["voltage", ["voltage"]],
  ])("of %s: each number moves as a refit of readings that are all too high moves it", (quantity, keys) => {
    const said = { [quantity]: { percent: 100 * GAIN } };
    const before = resolveAsSet(demoWith(said), ridge).input;
    const after = resolveAsSet(demoWith(said, keys), ridge).input;
    if (!before || !after) throw new Error("no numbers");
    const cause = doubtOf(demoWith(said)).shared.find(
      ({ name }) => name === `gain ${quantity} ${100 * GAIN}`,
    );
    const moved = (cause?.effects ?? []).filter(({ path }) => path !== "vehicle.pullFactor");
    expect(moved.length).toBeGreaterThan(1);
    for (const { path, by } of moved) {
      // λ goes with the motor's constants as well, which its tests' own gains answer for.
      if (path.startsWith("rotor.lambda")) continue;
      const [from, to] = [before, after].map((input) => placeAt(input, path)?.value ?? Number.NaN);
      expect(Math.abs(to - from - by) / Math.abs(from)).toBeLessThan(0.2 * GAIN);
    }
  });

  it("two tests that name one instrument share its gain; without a statement the kind's default is marked", () => {
    const named = doubtOf(demoWith({ pressure: "pressure-sensor" }));
    const causes = named.shared.filter(({ name }) => name === "gain of pressure-sensor");
    expect(causes).toHaveLength(1);
    const paths = causes[0].effects.map(({ path }) => path);
    expect(paths).toEqual(expect.arrayContaining(["rotor.psi.0", "skirt.measuredLeak.coefficient"]));
    const silent = doubtOf(demoWith({}));
    expect(silent.sources["gain pressure default"]).toMatchObject({ from: "default" });
  });
});

describe("what pulls tell of κ", () => {
  it("follows the numbers that they were predicted with: a rotor known less well leaves the pull at their conditions where it is", () => {
    const resolved = resolveBuild(demo, ridge);
    const { input } = resolved;
    if (!input) throw new Error("no numbers");
    const { sources: _said, ...uncertain } = doubtOf(demo);
    const loose = {
      ...uncertain,
      uncertainty: {},
      correlated: [],
      joint: null,
      shared: [
        {
          name: "a poor tachometer",
          effects: input.rotor.psi.map((c, j) => ({ path: `rotor.psi.${j}`, by: -0.05 * (2 - j) * c })),
        },
      ],
    };
    const width = (asked: Parameters<typeof uncertaintyOf>[1]) => {
      const { suction } = uncertaintyOf(input, { ...asked, samples: 512, angles: [90] });
      return ((suction.p95 ?? 0) - (suction.p5 ?? 0)) / predict(input, []).suction;
    };
    const free = width({ ...loose, followers: [] });
    expect(free).toBeGreaterThan(0.1);
    expect(width(loose)).toBeLessThan(free / 4);
  });
});
