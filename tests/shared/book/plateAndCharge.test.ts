import { describe, expect, it } from "vitest";
import type { Book } from "#shared/book/book.ts";
import { buildUncertainty } from "#shared/book/buildUncertainty.ts";
import { resolveBuild } from "#shared/book/resolve.ts";
import { rotorBasis } from "#shared/book/rotorBasis.ts";
import type { Build } from "#shared/model/build.ts";
import { demoBook } from "#tests/support/demoBook.ts";

const demo = demoBook();
/** Without pulls: they tell nothing of plates and charge, and cost a calibration each time. */
const book: Book = { ...demo, tests: demo.tests.filter(({ data }) => data.kind !== "pull") };
type Test = Book["tests"][number];

function buildOf(of: Book, id: string, change: Partial<Build> = {}) {
  const data = of.builds.find((each) => each.id === id)?.data;
  if (!data) throw new Error(`the demo has no ${id}`);
  const build = { ...data, ...change };
  return buildUncertainty(of, build, resolveBuild(of, build));
}

/** What plates without a calibration do to the numbers. */
const plateOf = ({ shared }: ReturnType<typeof buildOf>) =>
  shared.filter(({ name }) => name.startsWith("flow of")).flatMap(({ effects }) => effects);

const ridge = book.builds.find(({ id }) => id === "ridge-runner")?.data as Build;

/** The same tests, their flows given as a meter would: what the plate gave, with no plate in it. */
function metered(of: Book, which: (test: Test) => boolean): Book {
  const tests = of.tests.map((test): Test => {
    const { data } = test;
    if (data.kind !== "curve" || data.flowFrom !== "bleed-plate" || !which(test)) return test;
    const basis = rotorBasis(of, data.rotor);
    if (basis.basis === "missing") throw new Error("no curve");
    const flows = basis.points.filter(({ testId }) => testId === test.id);
    const rows = data.rows.map((row, i) => ({
      ...row,
      open: undefined,
      flow: { value: flows[i].flow, unit: "m^3/s" },
    }));
    return { ...test, data: { ...data, flowFrom: "known-flow", plate: undefined, rows } };
  });
  return { ...of, tests };
}

/** Instruments that state nothing, so that every reading weighs the same with a plate and without. */
const plain: Book = {
  ...book,
  tests: book.tests.map(
    (test): Test =>
      test.data.kind === "curve" ? { ...test, data: { ...test.data, instruments: {} } } : test,
  ),
};
const curves = plain.tests.filter(({ data }) => data.kind === "curve" && data.rotor === "swept-nine");

describe("a plate without a calibration, in the curve's uncertainty", () => {
  const psiOf = (of: Book) => {
    const basis = rotorBasis(of, "swept-nine");
    if (basis.basis === "missing") throw new Error("no curve");
    return basis.psi;
  };

  // A flow that is read f too high makes c_j too small by j·f, and leaves the one at φ = 0 alone.
  it("shares 3 percent of flow among all coefficients, each by its power", () => {
    const effects = plateOf(buildOf(plain, "pane-crawler"));
    psiOf(plain).forEach((c, j) => {
      const by = effects.find(({ path }) => path === `rotor.psi.${j}`)?.by ?? 0;
      expect(by).toBeCloseTo(-0.03 * j * c, 9);
    });
  });

  it("counts by the share of the readings that came through it", () => {
    const kept = curves.slice(0, 1).map(({ id }) => id);
    const half = metered(plain, ({ id }) => !kept.includes(id));
    const rows = (ids: readonly string[]) =>
      curves.flatMap(({ id, data }) => (ids.includes(id) && data.kind === "curve" ? data.rows : [])).length;
    const share = rows(kept) / rows(curves.map(({ id }) => id));
    expect(share).toBeGreaterThan(0);
    expect(share).toBeLessThan(1);
    const by = plateOf(buildOf(half, "pane-crawler")).find(({ path }) => path === "rotor.psi.2")?.by;
    expect(by).toBeCloseToRelative(-0.03 * share * 2 * psiOf(plain)[2], 1e-6);
  });

  it("with its discharge coefficient stated adds nothing", () => {
    const stated: Book = {
      ...plain,
      tests: plain.tests.map((test): Test => {
        if (test.data.kind !== "curve" || typeof test.data.plate !== "object") return test;
        const holes = test.data.plate.holes.map((hole) => ({ ...hole, dischargeCoefficient: 0.7 }));
        return { ...test, data: { ...test.data, plate: { holes } } };
      }),
    };
    expect(plateOf(buildOf(stated, "pane-crawler"))).toEqual([]);
  });
});

describe("a plate without a calibration, in a leak test's uncertainty", () => {
  it("adds 3 percent of C_L, and nothing to the exponent", () => {
    const bare = buildOf(book, "ridge-runner");
    const stated: Book = {
      ...book,
      tests: book.tests.map((test): Test => {
        if (test.data.kind !== "leak" || typeof test.data.plate !== "object") return test;
        const holes = test.data.plate.holes.map((hole) => ({ ...hole, dischargeCoefficient: 0.7 }));
        return { ...test, data: { ...test.data, plate: { holes } } };
      }),
    };
    const known = buildOf(stated, "ridge-runner");
    const c = resolveBuild(book, ridge).leak?.leak.coefficient ?? Number.NaN;
    const ofLeak = (of: typeof bare) =>
      plateOf(of).filter(({ path }) => path.startsWith("skirt.measuredLeak."));
    expect(ofLeak(bare)).toEqual([
      { path: "skirt.measuredLeak.coefficient", by: expect.closeTo(0.03 * c, 12), onLogarithm: false },
    ]);
    expect(ofLeak(known)).toEqual([]);
  });

  it("is the same plate that metered the curve: one cause for both", () => {
    const causes = buildOf(book, "ridge-runner").shared.filter(({ name }) => name.startsWith("flow of"));
    expect(causes).toHaveLength(1);
    const paths = causes[0].effects.map(({ path }) => path);
    expect(paths).toEqual(expect.arrayContaining(["rotor.psi.1", "skirt.measuredLeak.coefficient"]));
  });
});

describe("a doubtful state of charge", () => {
  /** V by charge: a monotone cubic goes through its points exactly. */
  const curve = [
    [0, 3],
    [0.4, 3.6],
    [0.5, 3.7],
    [0.6, 3.75],
    [0.8, 3.9],
    [0.9, 4],
    [1, 4.2],
  ];
  const packs = book.packs.map((pack) => ({
    ...pack,
    data: {
      ...pack.data,
      cell: { ...pack.data.cell, curve },
    },
  }));
  const sdAt = (charge: number, doubt: number) => {
    const tests = book.tests.filter(({ data }) => data.kind !== "discharge");
    const of = { ...book, packs, tests } as unknown as Book;
    const stated = { charge, uncertainty: { charge: doubt } } as Partial<Build>;
    return buildOf(of, "pane-crawler", stated).uncertainty["pack.openCircuitVoltage"];
  };

  it.each([
    { charge: 0.9, doubt: 0.1, sd: (4.2 - 3.9) / 2, of: "half the rise over twice the uncertainty" },
    { charge: 0.5, doubt: 0.1, sd: (3.75 - 3.6) / 2, of: "half the rise over twice the uncertainty" },
    { charge: 1, doubt: 0.1, sd: 4.2 - 4, of: "at full charge the whole fall below it" },
    { charge: 1, doubt: 0.2, sd: 4.2 - 3.9, of: "at full charge the whole fall below it" },
    { charge: 0, doubt: 0.4, sd: 3.6 - 3, of: "at an empty one the whole rise above it" },
  ])("at $charge ± $doubt: $of", ({ charge, doubt, sd }) => {
    expect(sdAt(charge, doubt)).toBeCloseToRelative(sd, 1e-9);
  });

  it("of 0 is none", () => {
    expect(sdAt(0.5, 0)).toBeUndefined();
  });
});
