import { describe, expect, it } from "vitest";
import { CELL_CURVE, PACKS } from "#seed-data/truth.ts";
import type { Book } from "#shared/book/book.ts";
import { cellVoltages } from "#shared/book/cellVoltages.ts";
import { packBasis } from "#shared/book/packBasis.ts";
import { resolveBuild } from "#shared/book/resolve.ts";
import { CHEMISTRIES, pack as packSchema } from "#shared/model/parts/pack.ts";
import { dischargeTest } from "#shared/model/tests/discharge.ts";
import { CHEMISTRY_TABLES } from "#shared/physics/cells/table.ts";
import { openCircuitCurve, openCircuitVoltage } from "#shared/physics/pack.ts";
import { demoBook } from "#tests/support/demoBook.ts";

const demo = demoBook();

/** The demo's book with one pack's cell changed, and the discharge tests kept or not. */
function withCell(id: string, change: object, keepTests = false): Book {
  const packs = demo.packs.map((pack) =>
    pack.id === id ? { ...pack, data: { ...pack.data, cell: { ...pack.data.cell, ...change } } } : pack,
  );
  const tests = keepTests ? demo.tests : demo.tests.filter((test) => test.data.kind !== "discharge");
  return { ...demo, packs, tests };
}

function known(book: Book, id: string) {
  const basis = packBasis(book, id);
  if (!basis || basis.basis === "missing") throw new Error("expected a basis");
  return basis;
}

describe("packBasis", () => {
  it.each(["one-cell-650", "three-cell-850"] as const)(
    "of %s with a discharge test: finds the demo's invented truth again",
    (id) => {
      const basis = known(demo, id);
      expect(basis.basis).toBe("measured");
      expect(basis.fit?.resistanceFrom).toBe("rests");
      expect(basis.testIds).toHaveLength(1);
      const error = basis.fit?.resistanceError ?? 0;
      expect(Math.abs(basis.cell.resistance - PACKS[id].cellResistance)).toBeLessThan(4 * error + 5e-4);
      const found = openCircuitCurve(basis.cell.curve);
      for (const z of [0.1, 0.3, 0.5, 0.8, 1])
        expect(Math.abs(found(z) - openCircuitVoltage(CELL_CURVE, z))).toBeLessThan(0.02);
    },
  );

  it("without a test: the pack's own curve, resistance and capacity", () => {
    const basis = known(demo, "two-cell-450");
    expect(basis).toMatchObject({ basis: "stated", chemistry: null, testIds: [], notes: [] });
    expect(basis.cell).toEqual(demo.packs.find(({ id }) => id === "two-cell-450")?.data.cell);
  });

  it("without test and curve: the published curve of the chemistry that it names, its source with it", () => {
    const basis = known(
      withCell("two-cell-450", { curve: undefined, chemistry: "lithium-ion" }),
      "two-cell-450",
    );
    expect(basis.basis).toBe("chemistry");
    expect(basis.cell.curve).toBe(CHEMISTRY_TABLES["lithium-ion"].curve);
    expect(basis.chemistry?.source).toMatch(/Sunil/);
  });

  it("with none of the three: a build has no numbers, and the discharge test is named", () => {
    const book = withCell("two-cell-450", { curve: undefined });
    const build = book.builds.find(({ id }) => id === "pane-crawler");
    if (!build) throw new Error("The demo has no pane crawler.");
    const resolved = resolveBuild(book, build.data);
    const { input, pack, missing } = resolved;
    expect([input, pack, cellVoltages(build.data, resolved)]).toEqual([null, null, null]);
    expect(missing).toEqual([expect.objectContaining({ path: "pack.cell.curve", test: "discharge" })]);
  });

  it("with a test that can't give the curve: says why and uses what stands next", () => {
    const tests = demo.tests.map((test) =>
      test.data.kind === "discharge"
        ? { ...test, data: { ...test.data, rows: test.data.rows.slice(0, 12), end: "stopped" as const } }
        : test,
    );
    const basis = known({ ...demo, tests }, "one-cell-650");
    expect(basis.basis).toBe("stated");
    expect(basis.notes[0].message).toMatch(/Draw on, attended/);
  });

  it("leaves rows out that are set aside", () => {
    const tests = demo.tests.map((test) =>
      test.data.kind === "discharge"
        ? {
            ...test,
            data: {
              ...test.data,
              rows: test.data.rows.map((row, i) =>
                i === 9 ? { ...row, voltage: { value: 1, unit: "V" }, setAside: "probe slipped" } : row,
              ),
            },
          }
        : test,
    );
    expect(known({ ...demo, tests }, "one-cell-650").fit?.residualSd).toBeLessThan(0.01);
  });

  it("of a pack that the book doesn't have: null", () => {
    expect(packBasis(demo, "gone")).toBeNull();
  });
});

describe("records of packs and discharge tests", () => {
  it("reads a pack of before chemistries, one with a chemistry alone, and refuses an unknown one", () => {
    const old = {
      name: "Old",
      series: 2,
      cell: {
        capacity: 1620,
        minimumVoltage: 3.2,
        resistance: 0.03,
        curve: [
          [0, 3.3],
          [1, 4.2],
        ],
      },
    };
    expect(packSchema.parse(old).cell.chemistry).toBeUndefined();
    const { curve: _curve, ...bare } = old.cell;
    expect(
      packSchema.parse({ ...old, cell: { ...bare, chemistry: "lithium-ion" } }).cell.curve,
    ).toBeUndefined();
    expect(packSchema.safeParse({ ...old, cell: { ...bare, chemistry: "coal" } }).success).toBe(false);
    expect([...CHEMISTRIES]).toEqual(Object.keys(CHEMISTRY_TABLES));
  });

  it("wants the charge drawn in every row, or the time in every row", () => {
    const [charge, time, voltage, current] = [
      { value: 10, unit: "mAh" },
      { value: 1, unit: "min" },
      { value: 4.1, unit: "V" },
      { value: 1, unit: "A" },
    ];
    const test = (rows: object[]) =>
      dischargeTest.safeParse({ kind: "discharge", date: "2026-05-06", pack: "one", rows });
    expect(test([{ charge, voltage, current }]).success).toBe(true);
    expect(test([{ time, voltage, current }]).success).toBe(true);
    expect(
      test([
        { charge, voltage, current },
        { time, voltage, current },
      ]).error?.issues[0].path,
    ).toEqual(["rows", 1, "charge"]);
    expect(test([{ voltage, current }]).error?.issues[0].path).toEqual(["rows", 0, "time"]);
  });
});
