import { describe, expect, it } from "vitest";
import { SKIRTS } from "#seed-data/truth.ts";
import type { Book } from "#shared/book/book.ts";
import { resolveAsSet } from "#shared/book/resolve/resolveWith.ts";
import { resolveBuild } from "#shared/book/resolve.ts";
import type { Build } from "#shared/model/build.ts";
import { predict } from "#shared/physics/predict.ts";
import { demoBook } from "#tests/support/demoBook.ts";

/** The demo is invented: these are checks of its own consistency, no validation of the method. */
const book = demoBook();

function buildOf(id: string, change: Partial<Build> = {}): Build {
  const stored = book.builds.find((record) => record.id === id);
  if (!stored) throw new Error(`no build ${id}`);
  return { ...stored.data, ...change };
}

const withoutPulls: Book = { ...book, tests: book.tests.filter(({ data }) => data.kind !== "pull") };

const measuredSkirts: Book = {
  ...withoutPulls,
  skirts: withoutPulls.skirts.map((skirt) => ({
    ...skirt,
    data: { ...skirt.data, gapBasis: "measured" as const },
  })),
};

describe("the gap of a build", () => {
  it("with pull tests of its skirt on its surface: calibrated, mean and uncertainty of the posterior, tests named", () => {
    const { gap, calibration, tests, input } = resolveBuild(book, buildOf("pane-crawler"));
    const answer = calibration?.answer;
    expect(gap).toMatchObject({
      basis: "calibrated",
      value: answer?.gap.mean,
      uncertainty: answer?.gap.sd,
      stated: { basis: "set", value: 0.0006 },
    });
    expect(gap.value).not.toBe(0.0006);
    expect(input?.skirt.gap).toBe(gap.value);
    expect(tests).toEqual(expect.arrayContaining(["demo-12-pull", "demo-13-pull"]));
  });

  it("with pull tests, resolved as set: the skirt's own, no pull test behind it", () => {
    const { gap, calibration, tests } = resolveAsSet(book, buildOf("pane-crawler"));
    expect(gap).toMatchObject({ basis: "set", value: 0.0006, testIds: [] });
    expect(calibration).toBeNull();
    expect(tests).not.toContain("demo-12-pull");
  });

  it.each([
    ["set", withoutPulls],
    ["measured", measuredSkirts],
  ] as const)("without pull tests: %s, as the skirt says", (basis, changedBook) => {
    const { gap, calibration } = resolveBuild(changedBook, buildOf("pane-crawler"));
    expect(gap).toMatchObject({ basis, value: 0.0006, standing: 0.0006, stated: { basis, value: 0.0006 } });
    expect(calibration).toBeNull();
  });

  it("with any handle moved, or another build of the same skirt and surface: the very calibration that was made before", () => {
    const { calibration } = resolveBuild(book, buildOf("pane-crawler"));
    const stored = buildOf("pane-crawler");
    const moved: Partial<Build>[] = [
      { overrides: { gap: 0.0009, wheelFriction: 0.5, series: 3 } },
      { diameter: 0.041 },
      { charge: 0.3, supply: { ...stored.supply, duty: 0.5 } },
      { air: { ...stored.air, temperature: 300, pressure: 9e4 } },
      { vehicle: { ...stored.vehicle, mass: 0.7 }, rotor: "straight-seven", motor: "bell-22" },
    ];
    for (const change of moved)
      expect(resolveBuild(book, buildOf("pane-crawler", change)).calibration).toBe(calibration);
  });

  it("tried in the build: what is tried wins over the calibration, which stays at hand", () => {
    const { gap, calibration, input } = resolveBuild(
      book,
      buildOf("pane-crawler", { overrides: { gap: 0.0009 } }),
    );
    expect(gap).toMatchObject({ basis: "what-if", value: 0.0009, standing: calibration?.answer?.gap.mean });
    expect(input?.skirt.gap).toBe(0.0009);
  });
});

describe("a build whose skirt stands nearer than it was set", () => {
  /** The tests of the demo were made at 0.60 mm; here the record says 0.80. */
  const misset: Book = {
    ...book,
    skirts: book.skirts.map((skirt) =>
      skirt.id === "square-lip" ? { ...skirt, data: { ...skirt.data, gap: 0.0008 } } : skirt,
    ),
  };
  const pull = (build: Build, resolve: typeof resolveBuild) => {
    const { input } = resolve(misset, build);
    if (!input) throw new Error("nothing to predict");
    return predict(input).suction;
  };

  it("with its pull tests: the pull predicted is nearer the truth with the gap calibrated than with the gap as set", () => {
    const build = buildOf("pane-crawler");
    const truth = pull({ ...build, overrides: { gap: SKIRTS["square-lip"].gap } }, resolveAsSet);
    const [asSet, calibrated] = [pull(build, resolveAsSet), pull(build, resolveBuild)];
    expect(Math.abs(asSet / truth - 1)).toBeGreaterThan(0.1);
    expect(Math.abs(calibrated / truth - 1)).toBeLessThan(0.05);
  });
});

describe("the wheels' friction of a build", () => {
  it("with pulls along the surface: calibrated, the covariance with the gap at hand", () => {
    const { friction, calibration, input } = resolveBuild(book, buildOf("roof-crawler"));
    const answer = calibration?.answer;
    expect(friction).toMatchObject({
      basis: "calibrated",
      value: answer?.friction?.mean,
      uncertainty: answer?.friction?.sd,
    });
    expect(input?.vehicle.wheelFriction).toBe(answer?.friction?.mean);
    expect(answer?.covariance[0][1]).toBe(answer?.covariance[1][0]);
  });

  it("with pulls straight off alone: the tilt board's, as before", () => {
    expect(resolveBuild(book, buildOf("pane-crawler")).friction?.basis).toBe("measured");
  });

  it("tried in the build: what is tried wins", () => {
    const build = buildOf("roof-crawler", { overrides: { wheelFriction: 0.5 } });
    expect(resolveBuild(book, build).friction).toMatchObject({ basis: "what-if", value: 0.5 });
  });
});

describe("a leak test, with a calibrated gap", () => {
  /** The demo, its wide land said to be set 0.15 mm wider than it is: the calibration then gives the gap another number. */
  const misset: Book = {
    ...book,
    skirts: book.skirts.map((skirt) =>
      skirt.id === "wide-land" ? { ...skirt, data: { ...skirt.data, gap: 0.00055 } } : skirt,
    ),
  };
  const ridge = (overrides: Build["overrides"] = {}) =>
    resolveBuild(misset, buildOf("ridge-runner", { overrides }));

  it("taken at the gap as set: still in the gap's place, as the vehicle stands on that gap", () => {
    const { gap, leak } = ridge();
    expect(gap.basis).toBe("calibrated");
    expect(gap.value).toBeCloseToRelative(0.0004, 0.1);
    expect(leak?.testIds).toEqual(["demo-18-leak"]);
    expect(leak).toEqual(resolveAsSet(misset, buildOf("ridge-runner")).leak);
  });

  it("with another gap tried, the number it was set to included: out, as that is no longer the gap of the test", () => {
    expect(ridge({ gap: 0.00055 }).leak).toBeNull();
    expect(ridge({ gap: 0.0008 }).leak).toBeNull();
  });

  it("with the calibrated gap itself tried: in", () => {
    expect(ridge({ gap: ridge().gap.value }).leak?.testIds).toEqual(["demo-18-leak"]);
  });

  it("taken on shims of another height: in where that height is tried, as shims are no word on the set gap", () => {
    const onShims = book.tests.flatMap((test) =>
      test.data.kind === "leak" && test.data.gap && test.data.skirt === "square-lip" ? [test.data] : [],
    );
    expect(onShims.length).toBeGreaterThan(0);
    for (const { gap, surface } of onShims) {
      if (gap?.unit !== "mm") throw new Error("the demo's shims are in mm");
      const tried = buildOf("pane-crawler", { surface, overrides: { gap: gap.value / 1000 } });
      expect(resolveBuild(book, tried).leak).not.toBeNull();
    }
  });
});
