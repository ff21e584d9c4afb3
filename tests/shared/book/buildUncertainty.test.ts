import { describe, expect, it } from "vitest";
import { type Book, testsOf } from "#shared/book/book.ts";
import { buildUncertainty } from "#shared/book/buildUncertainty.ts";
import { leakPoints } from "#shared/book/readings/leak.ts";
import { resolveBuild, solvable } from "#shared/book/resolve.ts";
import { uncertaintyOf } from "#shared/decide/uncertainty.ts";
import type { Build } from "#shared/model/build.ts";
import { demoBook } from "#tests/support/demoBook.ts";
import { expectAllFinite } from "#tests/support/finite.ts";

const book = demoBook();

function demo(id: string, changed: Partial<Build> = {}, changedBook: Book = book) {
  const data = changedBook.builds.find((each) => each.id === id)?.data;
  if (!data) throw new Error(`the demo has no ${id}`);
  const build = { ...data, ...changed };
  const resolved = resolveBuild(changedBook, build);
  const input = solvable(resolved);
  if (!input) throw new Error("no numbers");
  return { build, resolved, input, doubt: buildUncertainty(changedBook, build, resolved) };
}

const without = (kind: string): Book => ({
  ...book,
  tests: book.tests.filter((test) => test.data.kind !== kind),
});

/** Standard uncertainty of a path, by itself or in its group. */
function sdOf({ uncertainty, correlated }: ReturnType<typeof buildUncertainty>, path: string): number {
  const group = correlated.find(({ paths }) => paths.includes(path));
  const i = group?.paths.indexOf(path) ?? 0;
  return group ? Math.sqrt(group.covariance[i][i]) : (uncertainty[path] ?? 0);
}

describe("buildDoubt, of the demo", () => {
  it.each(["pane-crawler", "roof-crawler", "ridge-runner"])(
    "%s: every uncertainty has its source, every path once, and the samples take it",
    (id) => {
      const { input, doubt } = demo(id);
      const drawn = Object.values(doubt.joint?.paths ?? {}).filter((path) => path !== null);
      const alone = Object.keys({ ...doubt.uncertainty, ...doubt.logNormal });
      const causes = doubt.shared.map(({ name }) => name);
      const paths = [...alone, ...drawn, ...causes, ...doubt.correlated.flatMap((group) => group.paths)];
      expect([...paths].sort()).toEqual(Object.keys(doubt.sources).sort());
      expect(new Set(paths).size).toBe(paths.length);
      expectAllFinite(uncertaintyOf(input, { ...doubt, samples: 256 }));
    },
  );

  it("the pane crawler: curve, motor, friction and mass, each from where the book has it", () => {
    const { sources, correlated } = demo("pane-crawler").doubt;
    expect(sources["rotor.psi.0"]).toEqual({ from: "fit", what: "curve tests of Swept nine", test: "curve" });
    expect(sources["motor.kv"]?.test).toBe("motor");
    expect(sources["vehicle.wheelFriction"]).toMatchObject({ from: "tests", test: "friction" });
    expect(sources["vehicle.mass"]).toMatchObject({ from: "stated", test: null });
    expect(correlated.some(({ paths }) => paths.join() === "motor.kv,motor.resistance")).toBe(true);
  });

  it("the roof crawler: gap, pull factor and friction drawn together, as the tests left them", () => {
    const { doubt, resolved } = demo("roof-crawler");
    expect(doubt.joint?.table).toBe(resolved.calibration?.answer?.joint);
    expect(doubt.joint?.paths).toEqual({
      gap: "skirt.gap",
      pullFactor: "vehicle.pullFactor",
      friction: "vehicle.wheelFriction",
    });
    expect(doubt.sources["skirt.gap"]).toMatchObject({ from: "calibration", test: "pull" });
  });

  it("the ridge runner: a leak test in the gap's place, so neither gap nor roughness is uncertain", () => {
    const { sources } = demo("ridge-runner").doubt;
    expect(Object.keys(sources)).toContain("skirt.measuredLeak.coefficient");
    expect(Object.keys(sources)).not.toContain("skirt.gap");
    expect(Object.keys(sources)).not.toContain("skirt.roughness");
  });
});

describe("buildDoubt, by what the records say", () => {
  it("the build's own word stands before a part's or a fit's, also out of a group", () => {
    const { doubt } = demo("pane-crawler", { uncertainty: { "motor.kv": 3, "skirt.gap": 2e-4 } });
    expect(doubt.uncertainty["motor.kv"]).toBe(3);
    expect(doubt.sources["motor.kv"]?.from).toBe("stated");
    expect(doubt.correlated.flatMap(({ paths }) => paths)).not.toContain("motor.kv");
    expect(doubt.sources["motor.resistance"]?.from).toBe("fit");
  });

  it("a path that is no number of this build is left out", () => {
    const { doubt } = demo("pane-crawler", { uncertainty: { "skirt.gpa": 1, "vehicle.driven": 1 } });
    expect(Object.keys(doubt.sources)).not.toContain("skirt.gpa");
    expect(Object.keys(doubt.sources)).not.toContain("vehicle.driven");
  });

  it("without pull and leak tests: gap and roughness as stated by skirt and surface", () => {
    const bare = {
      ...book,
      tests: book.tests.filter(({ data }) => data.kind !== "pull" && data.kind !== "leak"),
    };
    const { doubt } = demo("roof-crawler", {}, bare);
    const surface = book.surfaces.find(({ id }) => id === "roof-pane")?.data;
    const skirt = book.skirts.find(({ id }) => id === "felt-ring")?.data;
    expect(doubt.uncertainty["skirt.gap"]).toBe(skirt?.uncertainty.gap);
    expect(doubt.uncertainty["skirt.roughness"]).toBe(surface?.uncertainty.roughness);
    expect(doubt.sources["skirt.gap"]).toMatchObject({ from: "stated", test: "leak" });
  });

  it("without curve tests, from the rotor's geometry: all of ψ by one factor of ±30 %, and all of λ by another", () => {
    const rotors = book.rotors.map((rotor) => ({
      ...rotor,
      data: {
        ...rotor.data,
        geometry: { bladeCount: 9, bladeExitAngle: 40, inletRatio: 0.5, widthRatio: 0.12 },
      },
    }));
    const { doubt, input, resolved } = demo("pane-crawler", {}, { ...without("curve"), rotors });
    const { psi, lambda } = resolved.input?.rotor ?? { psi: [], lambda: [] };
    psi.forEach((c, j) => {
      if (c !== 0) expect(sdOf(doubt, `rotor.psi.${j}`)).toBeCloseToRelative(0.3 * Math.abs(c), 1e-12);
    });
    const slope = lambda[1] ?? Number.NaN;
    expect(sdOf(doubt, "rotor.lambda.1")).toBeCloseToRelative(0.3 * Math.abs(slope), 1e-12);
    expect(doubt.sources["rotor.psi.0"]?.from).toBe("estimate");
    const { suction } = uncertaintyOf(input, { uncertainty: {}, correlated: doubt.correlated.slice(0, 1) });
    expect((suction.p95 ?? 0) / (suction.p50 ?? 1)).toBeGreaterThan(1.2);
  });

  // V = R·I + k_e·ω: with an ohmmeter's R_m the fit gives k_e = Σω(V − R·I)/Σω². So both can be off together, and K_v alone hardly matters.
  it("an ohmmeter's reading and its uncertainty: K_v goes with it, and the pull is surer than of the two apart", () => {
    const { doubt, input } = demo("pane-crawler");
    const pair = doubt.correlated.filter(({ paths }) => paths.includes("motor.kv"));
    const apart = {
      "motor.kv": sdOf(doubt, "motor.kv"),
      "motor.resistance": sdOf(doubt, "motor.resistance"),
    };
    const width = ({ suction }: ReturnType<typeof uncertaintyOf>) => (suction.p95 ?? 0) - (suction.p5 ?? 0);
    expect(pair[0].covariance[0][1]).toBeGreaterThan(0);
    const together = width(uncertaintyOf(input, { uncertainty: {}, correlated: pair }));
    expect(together).toBeLessThan(0.8 * width(uncertaintyOf(input, { uncertainty: apart })));
  });

  it("two tests of a family whose tachometers disagree: the curve is less sure, at no flow by twice as much as the speed", () => {
    const before = sdOf(demo("ridge-runner").doubt, "rotor.psi.0");
    const off = book.tests.map((test) =>
      test.id === "demo-16-curve" && test.data.kind === "curve"
        ? {
            ...test,
            data: {
              ...test.data,
              rows: test.data.rows.map((row) => ({
                ...row,
                speed: { ...row.speed, value: 1.06 * row.speed.value },
              })),
            },
          }
        : test,
    );
    const { doubt, resolved } = demo("ridge-runner", {}, { ...book, tests: off });
    const psi0 = resolved.input?.rotor.psi[0] ?? Number.NaN;
    // Offsets 0, 0 and 6 % of three tests: s = 0.06/√3 = 3.46 %, of their mean 2.0 %, of ψ₀ twice that.
    expect(sdOf(doubt, "rotor.psi.0") / psi0).toBeGreaterThan(0.03);
    expect(sdOf(doubt, "rotor.psi.0") / psi0).toBeLessThan(0.06);
    expect(before / psi0).toBeLessThan(0.01);
  });

  it("nothing stated and nothing tested: the estimate's own uncertainty and the marked defaults are left", () => {
    const silent = <T extends { data: object }>(records: readonly T[]): T[] =>
      records.map((record) => ({ ...record, data: { ...record.data, uncertainty: {} } }));
    const geometry = { bladeCount: 9, bladeExitAngle: 40, inletRatio: 0.5, widthRatio: 0.12 };
    const changedBook: Book = {
      ...book,
      tests: [],
      rotors: book.rotors.map((rotor) => ({ ...rotor, data: { ...rotor.data, geometry } })),
      motors: silent(book.motors),
      packs: silent(book.packs),
      skirts: silent(book.skirts),
      surfaces: silent(book.surfaces).map((each) => ({
        ...each,
        data: { ...each.data, wheelFriction: 0.8 },
      })),
    };
    const { doubt } = demo("pane-crawler", { uncertainty: {} }, changedBook);
    const { "vehicle.pullFactor": factor, ...rest } = doubt.sources;
    expect(factor).toMatchObject({ from: "default", test: "pull" });
    expect(doubt.logNormal["vehicle.pullFactor"]).toBe(0.1);
    for (const [path, { from }] of Object.entries(rest))
      expect(path.startsWith("rotor.") || from === "default" || from === "estimate", path).toBe(true);
    const names = ["pack.openCircuitVoltage", "skirt.landFriction", "skirt.lossSum", "vehicle.mass"];
    expect(Object.keys(doubt.uncertainty).sort()).toEqual(names);
    // as docs/method/uncertainty.md gives them: 15 % of a square edge's 1.5, 1 g and 0.5 % of the scale
    expect(doubt.uncertainty["skirt.lossSum"]).toBeCloseToRelative(0.15 * 1.5, 1e-12);
    expect(doubt.uncertainty["skirt.landFriction"]).toBe(0.15);
    expect(doubt.uncertainty["vehicle.mass"]).toBeCloseToRelative(Math.hypot(1e-3, 5e-3 * 0.56), 1e-12);
  });
});

describe("what was never measured here", () => {
  it("a rotor at a size that was not tested: half of its size correction, of a tested size nothing", () => {
    const { doubt, input } = demo("pane-crawler", { diameter: 0.05 });
    expect("sizeCorrection" in input.rotor && input.rotor.sizeCorrection?.applied).toBe(1);
    expect(doubt.uncertainty["rotor.sizeCorrection.applied"]).toBe(0.5);
    expect(doubt.sources["rotor.sizeCorrection.applied"]?.from).toBe("default");
    const { diameter } = demo("pane-crawler").build;
    expect(demo("pane-crawler", { diameter }).doubt.sources["rotor.sizeCorrection.applied"]).toBeUndefined();
  });

  it("the lip's law: not where a leak test stands in its place", () => {
    const { sources } = demo("ridge-runner").doubt;
    expect(sources["skirt.lossSum"]).toBeUndefined();
    expect(sources["skirt.landFriction"]).toBeUndefined();
  });

  it("a skirt set anew: ±5 % after one leak test; after two, by what they differ as well", () => {
    const causeIn = (changed: Book) => {
      const { doubt, resolved } = demo("ridge-runner", {}, changed);
      const { by } = doubt.shared.find(({ name }) => name === "skirt set anew")?.effects[0] ?? { by: 0 };
      const power = 4 * (resolved.leak?.leak.exponent ?? 0) - 1;
      return { gap: by / power, power, from: doubt.sources["skirt set anew"]?.from };
    };
    const [one] = book.tests.filter(({ data }) => data.kind === "leak" && data.skirt === "wide-land");
    if (one?.data.kind !== "leak") throw new Error("the demo has no such leak test");
    expect(causeIn(book)).toMatchObject({ gap: expect.closeTo(0.05, 12), from: "default" });
    // the same test with flows about a tenth higher: each lies half of what they differ by off the common fit
    const rows = one.data.rows.map((row) => ({
      ...row,
      platePressure: row.platePressure && { ...row.platePressure, value: 1.1 ** 2 * row.platePressure.value },
    }));
    const second = { ...one, id: "second", data: { ...one.data, rows } };
    const two = causeIn({ ...book, tests: [...book.tests, second] });
    const logs = testsOf({ ...book, tests: [one, second] }, "leak").map(({ data }) =>
      leakPoints(data).map(({ flow }) => Math.log(flow)),
    );
    const differ = logs[1].reduce((sum, log, i) => sum + log - logs[0][i], 0) / rows.length;
    expect(differ).toBeCloseTo(Math.log(1.1), 2);
    const off = differ / 2 / two.power;
    const expected = Math.sqrt(((0.05 ** 2 / 2 + 2 * off ** 2) / 2) * (1 + 1 / 2));
    expect(two.gap).toBeCloseToRelative(expected, 1e-9);
    expect(two.from).toBe("tests");
  });
});
