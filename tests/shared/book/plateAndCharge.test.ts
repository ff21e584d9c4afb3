import { describe, expect, it } from "vitest";
import type { Book } from "#shared/book/book.ts";
import { buildUncertainty } from "#shared/book/buildUncertainty.ts";
import { resolveBuild } from "#shared/book/resolve.ts";
import { rotorBasis } from "#shared/book/rotorBasis.ts";
import type { Build } from "#shared/model/build.ts";
import { demoBook } from "#tests/support/demoBook.ts";

const book = demoBook();
type Test = Book["tests"][number];

function buildOf(of: Book, id: string, change: Partial<Build> = {}) {
  const data = of.builds.find((each) => each.id === id)?.data;
  if (!data) throw new Error(`the demo has no ${id}`);
  const build = { ...data, ...change };
  return buildUncertainty(of, build, resolveBuild(of, build));
}

const variance = ({ correlated }: ReturnType<typeof buildOf>, path: string) => {
  const group = correlated.find(({ paths }) => paths.includes(path));
  const i = group?.paths.indexOf(path) ?? 0;
  return group?.covariance[i][i] ?? Number.NaN;
};

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

  // A flow that is f too low makes c_j too large by −j·f: u² = (0.03·j·c_j)² on top of the fit's own, none of it at φ = 0.
  it("adds 3 percent of flow to every coefficient by its power, and nothing at no flow", () => {
    const [bare, known] = [plain, metered(plain, () => true)].map((of) => buildOf(of, "pane-crawler"));
    const psi = psiOf(plain);
    psi.forEach((c, j) => {
      const added = variance(bare, `rotor.psi.${j}`) - variance(known, `rotor.psi.${j}`);
      expect(added).toBeCloseTo((0.03 * j * c) ** 2, 9);
      if (j > 0) expect(added).toBeCloseToRelative((0.03 * j * c) ** 2, 1e-6);
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
    const added =
      variance(buildOf(half, "pane-crawler"), "rotor.psi.2") -
      variance(
        buildOf(
          metered(plain, () => true),
          "pane-crawler",
        ),
        "rotor.psi.2",
      );
    expect(added).toBeCloseToRelative((0.03 * share * 2 * psiOf(plain)[2]) ** 2, 1e-6);
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
    const known = buildOf(
      metered(stated, () => true),
      "pane-crawler",
    );
    expect(variance(buildOf(stated, "pane-crawler"), "rotor.psi.2")).toBeCloseToRelative(
      variance(known, "rotor.psi.2"),
      1e-9,
    );
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
    const ratio = (of: typeof bare, changed: Book) => {
      const build = changed.builds.find(({ id }) => id === "ridge-runner")?.data as Build;
      const { leak } = resolveBuild(changed, build);
      const c = leak?.leak.coefficient ?? Number.NaN;
      const own = leak?.fit.covariance?.[0][0] ?? Number.NaN;
      return variance(of, "skirt.measuredLeak.coefficient") / c ** 2 - own;
    };
    expect(ratio(bare, book)).toBeCloseToRelative(0.03 ** 2, 1e-9);
    expect(Math.abs(ratio(known, stated))).toBeLessThan(1e-12);
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
    { charge: 0.9, doubt: 0.1, sd: (4.2 - 3.9) / 2, of: "half the rise over twice the doubt" },
    { charge: 0.5, doubt: 0.1, sd: (3.75 - 3.6) / 2, of: "half the rise over twice the doubt" },
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
