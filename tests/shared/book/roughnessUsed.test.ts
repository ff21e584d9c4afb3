import { describe, expect, it } from "vitest";
import { SKIRTS, SURFACES } from "#seed-data/truth.ts";
import type { Book } from "#shared/book/book.ts";
import { buildUncertainty } from "#shared/book/buildUncertainty.ts";
import { resolveBuild } from "#shared/book/resolve.ts";
import { surfaceRoughness } from "#shared/book/roughnessBasis.ts";
import type { Build } from "#shared/model/build.ts";
import { demoBook } from "#tests/support/demoBook.ts";

const demo = demoBook();
const TRUE_ROUGHNESS = SURFACES["roof-pane"].roughness;

/** The demo, its roof pane stated so rough, and so well known [m]. */
function stating(roughness: number, sd: number, book: Book = demo): Book {
  const surfaces = book.surfaces.map((each) =>
    each.id === "roof-pane"
      ? {
          ...each,
          data: { ...each.data, roughness, uncertainty: { ...each.data.uncertainty, roughness: sd } },
        }
      : each,
  );
  return { ...book, surfaces };
}

const without = (kind: string, book: Book = demo): Book => ({
  ...book,
  tests: book.tests.filter(({ data }) => data.kind !== kind),
});

function roof(): Build {
  const build = demo.builds.find(({ id }) => id === "roof-crawler")?.data;
  if (!build) throw new Error("the demo has no roof-crawler");
  return build;
}

function skirtIn(book: Book, build: Build) {
  const resolved = resolveBuild(book, build);
  if (!resolved.input) throw new Error("no numbers");
  return { ...resolved.input.skirt, resolved };
}

// The demo's truth is invented and known: leak tests at one gap on glass and on the roof pane were made on it.
describe("the roughness of a surface in a prediction", () => {
  it("with leak tests that measure it separately: is what they say, near the truth, though the book states three times as much", () => {
    const { roughness } = skirtIn(stating(3 * TRUE_ROUGHNESS, 1e-4), roof());
    expect(Math.abs(roughness - TRUE_ROUGHNESS)).toBeLessThan(2e-5);
  });

  it("without them: is as stated", () => {
    expect(skirtIn(without("leak", stating(2e-4, 1e-4)), roof()).roughness).toBe(2e-4);
  });

  it("with a calibrated gap: leaves the clearance that the pulls tell as it is, within a third of its uncertainty, and near the truth", () => {
    const told = skirtIn(demo, roof());
    const stated = skirtIn(without("leak"), roof());
    expect(told.resolved.gap.basis).toBe("calibrated");
    const doubt = told.resolved.gap.uncertainty ?? 0;
    const clearance = told.gap + told.roughness;
    expect(Math.abs(clearance - (stated.gap + stated.roughness))).toBeLessThan(doubt / 3);
    const truth = SKIRTS["felt-ring"].gap + TRUE_ROUGHNESS;
    expect(Math.abs(clearance - truth)).toBeLessThan(2 * doubt);
  });

  it("where the stated one is far off: the calibrated gap comes nearer to the true one than by what is stated", () => {
    const far = stating(3 * TRUE_ROUGHNESS, 1e-4);
    const truth = SKIRTS["felt-ring"].gap;
    const [told, stated] = [far, without("leak", far)].map((book) =>
      Math.abs(skirtIn(book, roof()).gap - truth),
    );
    expect(told).toBeLessThan(2.5e-5);
    expect(stated).toBeGreaterThan(1e-4);
  });

  it("in the uncertainty of a gap that is tried: is that of the leak tests, which say so", () => {
    const build = { ...roof(), overrides: { gap: 7e-4 } };
    const resolved = resolveBuild(demo, build);
    const { uncertainty, sources } = buildUncertainty(demo, build, resolved);
    expect(uncertainty["skirt.roughness"]).toBe(resolved.roughness?.sd);
    expect(uncertainty["skirt.roughness"]).toBeLessThan(1e-5);
    expect(sources["skirt.roughness"]).toMatchObject({ from: "tests", test: "leak" });
    expect(sources["skirt.roughness"].what).toMatch(/^leak tests that tell the roughness of Roof pane/);
  });

  it("counts its tests among those that the build rests on, and not where a measured leak needs no roughness", () => {
    const { resolved } = skirtIn(demo, roof());
    const surface = demo.surfaces.find(({ id }) => id === "roof-pane");
    if (!surface) throw new Error("no roof pane");
    const { testIds } = surfaceRoughness(demo, surface);
    expect(testIds.length).toBe(2);
    expect(resolved.tests).toEqual(expect.arrayContaining([...testIds]));
    const ridge = demo.builds.find(({ id }) => id === "ridge-runner")?.data;
    expect(ridge && resolveBuild(demo, ridge).roughness).toBeNull();
  });
});
