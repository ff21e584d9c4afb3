import { describe, expect, it } from "vitest";
import { GEARS } from "#seed-data/truth.ts";
import type { Book } from "#shared/book/book.ts";
import { buildUncertainty } from "#shared/book/buildUncertainty.ts";
import { chooseProblem } from "#shared/book/choose/problem.ts";
import { testsLeftOut } from "#shared/book/leftOut/leftOut.ts";
import { resolveBuild } from "#shared/book/resolve.ts";
import { chooseRequest } from "#shared/model/api/choose.ts";
import type { Build } from "#shared/model/build.ts";
import type { TestKind } from "#shared/model/tests/index.ts";
import { demoBook } from "#tests/support/demoBook.ts";

const book = demoBook();
const crawler = book.builds.find(({ id }) => id === "beam-crawler")?.data as Build;
const withoutTests = (kind: TestKind): Book => ({
  ...book,
  tests: book.tests.filter(({ data }) => data.kind !== kind),
});
const stiff = (of: Book, build: Build) => resolveBuild(of, build).input?.vehicle.verticalStiffness;

/** The demo with the heights of its ride-height tests all read at one load. */
const atOneLoad: Book = {
  ...book,
  tests: book.tests.map((test) =>
    test.data.kind === "ride-height"
      ? { ...test, data: { ...test.data, rows: test.data.rows.slice(0, 1) } }
      : test,
  ),
};

describe("vertical stiffness of a build's running gear", () => {
  it("by its ride-height test: the demo's invented truth within two standard uncertainties, which count", () => {
    const resolved = resolveBuild(book, crawler);
    const { stiffness } = resolved;
    expect(stiffness.basis).toBe("measured");
    const { value, uncertainty } = stiffness;
    const truth = GEARS["rubber-tyres"].stiffness;
    expect(Math.abs((value ?? 0) - truth)).toBeLessThan(2 * (uncertainty ?? 0));
    expect(resolved.tests).toEqual(expect.arrayContaining([...stiffness.testIds]));
    const doubt = buildUncertainty(book, crawler, resolved);
    expect(doubt.uncertainty["vehicle.verticalStiffness"]).toBe(uncertainty);
    expect(doubt.sources["vehicle.verticalStiffness"]).toMatchObject({ test: "ride-height" });
  });

  it("of other running gear in the same build: that one's", () => {
    const [rubber, foam] = ["rubber-tyres", "foam-tyres"].map((gear) => stiff(book, { ...crawler, gear }));
    expect((rubber ?? 0) / (foam ?? 1)).toBeGreaterThan(2.5);
  });

  it("the load's own uncertainty counts: 1 % of it is 1 % of the stiffness", () => {
    const coarse: Book = {
      ...book,
      tests: book.tests.map((test) =>
        test.data.kind === "ride-height"
          ? {
              ...test,
              data: { ...test.data, instruments: { ...test.data.instruments, load: { percent: 50 } } },
            }
          : test,
      ),
    };
    const { value, uncertainty } = resolveBuild(coarse, crawler).stiffness;
    expect((uncertainty ?? 0) / (value ?? 1)).toBeGreaterThan(0.5);
    expect((uncertainty ?? 0) / (value ?? 1)).toBeLessThan(0.51);
  });

  it("without a test: as the build states it, with the uncertainty it states", () => {
    const stated = {
      ...crawler,
      vehicle: { ...crawler.vehicle, verticalStiffness: 9000 },
      uncertainty: { ...crawler.uncertainty, "vehicle.verticalStiffness": 800 },
    };
    const resolved = resolveBuild(withoutTests("ride-height"), stated);
    expect(resolved.stiffness).toMatchObject({ basis: "stated", value: 9000, uncertainty: 800 });
    expect(buildUncertainty(book, stated, resolved).uncertainty["vehicle.verticalStiffness"]).toBe(800);
    expect(stiff(book, stated)).not.toBe(9000);
  });

  it("neither tested nor stated, or of a record older than the field: rigid", () => {
    expect(stiff(withoutTests("ride-height"), crawler)).toBeNull();
    const { gear: _gear, ...older } = crawler;
    const { verticalStiffness: _stiff, gapLoad: _load, ...vehicle } = crawler.vehicle;
    expect(stiff(book, { ...older, vehicle } as Build)).toBeNull();
  });

  it("of tests too few to tell it: rigid, and the test is named as left out with the reason", () => {
    expect(stiff(atOneLoad, crawler)).toBeNull();
    const left = testsLeftOut(atOneLoad, crawler).filter(({ kind }) => kind === "ride-height");
    expect(left.map(({ why }) => why)).toEqual([expect.stringContaining("at one load")]);
  });

  it("is searched with: the question carries it", () => {
    const ids = (list: readonly { readonly id: string }[]) => list.map(({ id }) => id);
    const request = chooseRequest.parse({
      build: "beam-crawler",
      motors: [ids(book.motors)[1]],
      rotors: [{ rotor: "swept-nine" }],
      packs: ["two-cell-450"],
      skirts: [{ skirt: "square-lip" }],
      wants: { attitudes: [{ angle: 90, mode: "parked" }] },
    });
    const { problem } = chooseProblem(book, request);
    expect(problem.fixed.vehicle.verticalStiffness).toBe(stiff(book, crawler));
  });
});
