import { describe, expect, it } from "vitest";
import { rigs } from "#seed-data/rigs.ts";
import { type Book, findById } from "#shared/book/book.ts";
import { buildUncertainty } from "#shared/book/buildUncertainty.ts";
import { jointsUnder } from "#shared/book/jointsUnder.ts";
import { nextTests, type WantedVerdict } from "#shared/book/nextTest/nextTests.ts";
import { scatter } from "#shared/book/nextTest/planned.ts";
import { resolveBuild, solvable } from "#shared/book/resolve.ts";
import { sampledWithJoints } from "#shared/decide/joints/sampled.ts";
import type { Build } from "#shared/model/build.ts";
import { benchTest } from "#shared/model/tests/index.ts";
import { demoBook } from "#tests/support/demoBook.ts";

const WALL: WantedVerdict = { angle: 90, mode: "driving" };
const SAMPLING = { samples: 256 };

function buildOf(book: Book, id: string): Build {
  const build = findById(book.builds, id);
  if (!build) throw new Error(`the demo has no ${id}`);
  return build.data;
}

function without(book: Book, dropped: (data: Book["tests"][number]["data"]) => boolean): Book {
  return { ...book, tests: book.tests.filter(({ data }) => !dropped(data)) };
}

function withReal(book: Book, data: unknown): Book {
  const at = "2026-06-01T00:00:00.000Z";
  const test = { id: "new", revision: 1, createdAt: at, updatedAt: at, data: benchTest.parse(data) };
  return { ...book, tests: [...book.tests, test] };
}

/** Width of the margin's 5 to 95 % range on the wall, over the hardest joint of the surface where it has one. */
function widthOn(book: Book, build: Build): number {
  const resolved = resolveBuild(book, build);
  const input = solvable(resolved);
  if (!input) throw new Error("no numbers");
  const { sources: _said, ...uncertain } = buildUncertainty(book, build, resolved);
  const joints = jointsUnder(book, build);
  const asked = { ...uncertain, samples: 256, angles: [90] };
  const { over, attitudes } = sampledWithJoints({ build: input, joints }, asked);
  const [{ driving }] = (over ?? { attitudes }).attitudes;
  return (driving.p95 ?? 0) - (driving.p5 ?? 0);
}

describe("scatter, of planned readings", () => {
  it.each([2, 6, 9])("of %i readings has mean 0 and standard deviation 1", (count) => {
    const zs = scatter(count);
    const mean = zs.reduce((sum, z) => sum + z, 0) / count;
    expect(Math.abs(mean)).toBeLessThan(1e-12);
    expect(zs.reduce((sum, z) => sum + z * z, 0) / (count - 1)).toBeCloseToRelative(1, 1e-12);
  });
});

// The demo's truth is invented and known: a test that is really made on it must do what was said of it before.
describe("nextTests, a build whose gap only its print says", () => {
  const book = without(demoBook(), ({ kind }) => kind === "pull" || kind === "leak");
  const build = buildOf(book, "roof-crawler");

  it("names a pull or leak test first, and made with the demo's rig it cuts the uncertainty by about what was said", () => {
    const { before, tests } = nextTests(book, build, WALL, SAMPLING);
    expect(before).not.toBeNull();
    const [first] = tests;
    expect(["pull", "leak"]).toContain(first.kind);
    expect(first.cut).toBeGreaterThan(0.2);
    const pull = tests.find(({ key }) => key === "pull-straight-off");
    if (!pull) throw new Error("no pull straight off was proposed");
    const now = widthOn(book, build);
    const real = [11, 12, 13].map((seed) => {
      const made = rigs(seed).pull(
        "roof-crawler",
        "straight-off",
        "2026-06-01",
        [0.6, 0.6, 0.6, 0.6, 0.6, 0.6],
      );
      return 1 - widthOn(withReal(book, made), build) / now;
    });
    const mean = real.reduce((sum, cut) => sum + cut, 0) / real.length;
    expect(Math.abs(mean - pull.cut)).toBeLessThan(0.12);
  });
});

describe("nextTests, a surface whose friction is only stated", () => {
  const book = without(demoBook(), ({ kind }) => kind === "friction" || kind === "pull");
  const stated = {
    ...book,
    surfaces: book.surfaces.map((each) => ({
      ...each,
      data: { ...each.data, wheelFriction: 0.8, uncertainty: { wheelFriction: 0.12 } },
    })),
  };
  const build = buildOf(stated, "pane-crawler");

  it("proposes slides of the wheels, and six of the demo's rig cut the uncertainty by about what was said", () => {
    const { tests } = nextTests(stated, build, WALL, SAMPLING);
    const slides = tests.find(({ key }) => key === "friction-wheels");
    if (!slides) throw new Error("no slides were proposed");
    const now = widthOn(stated, build);
    const made = rigs(21).friction("side-pane", "wheels", "2026-06-01");
    expect(Math.abs(1 - widthOn(withReal(stated, made), build) / now - slides.cut)).toBeLessThan(0.12);
  });
});

describe("nextTests, other uncertainties", () => {
  // of the pane crawler's fan, pulls along at this very attitude tell more: they pin its pull whatever the curve
  it("a rotor that only its geometry says is to be tested where ±30 % are the largest part of the uncertainty", () => {
    const book = without(demoBook(), ({ kind }) => kind === "curve");
    const [first] = nextTests(book, buildOf(book, "roof-crawler"), WALL, SAMPLING).tests;
    expect(first.key).toBe("curve");
    expect(first.cut).toBeGreaterThan(0.3);
  });

  it("a build that can't be answered for has no next test: what is missing comes first", () => {
    const book = { ...demoBook(), surfaces: [] };
    expect(nextTests(book, buildOf(book, "pane-crawler"), WALL, SAMPLING)).toEqual({
      before: null,
      over: null,
      tests: [],
    });
  });

  it("a vehicle weighed to 50 g only is to be weighed, which cuts the uncertainty", () => {
    const book = demoBook();
    const build = { ...buildOf(book, "pane-crawler"), uncertainty: { "vehicle.mass": 0.05 } };
    const { tests } = nextTests(book, build, WALL, SAMPLING);
    const weigh = tests.find(({ key }) => key === "weigh");
    expect(weigh?.cut).toBeGreaterThan(0.1);
    const weighed = { ...build, uncertainty: { "vehicle.mass": 0.0003 } };
    const cut = 1 - widthOn(book, weighed) / widthOn(book, build);
    expect(Math.abs((weigh?.cut ?? 0) - cut)).toBeLessThan(0.01);
  });
});
