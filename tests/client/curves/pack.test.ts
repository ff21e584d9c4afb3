import { describe, expect, it } from "vitest";
import { packPage } from "#client/views/curves/pack/packData.ts";
import { packPlot, packResidualPlot, resistancePlot } from "#client/views/curves/pack/packPlots.ts";
import {
  cellResistanceText,
  coldRiseOf,
  packMissing,
  packSentence,
  resistanceSentence,
} from "#client/views/curves/pack/packSentence.ts";
import type { Book } from "#shared/book/book.ts";
import { demoBook } from "#tests/support/demoBook.ts";
import { withRisingResistance } from "#tests/support/risingResistance.ts";

const demo = demoBook();

function page(id: string, book: Book = demo) {
  const found = packPage(book, id);
  if (!found) throw new Error(`no pack ${id}`);
  return found;
}

const bare = (chemistry?: "lithium-ion"): Book => ({
  ...demo,
  packs: demo.packs.map(({ data, ...record }) => {
    const { curve: _own, ...cell } = data.cell;
    return { ...record, data: { ...data, cell: { ...cell, ...(chemistry ? { chemistry } : {}) } } };
  }),
});

describe("the page of a pack", () => {
  it("with a discharge test: its readings of one cell, their sag taken out, lie on the curve", () => {
    const one = page("three-cell-850");
    const test = one.tests[0].data;
    expect(one.points).toHaveLength(test.rows.length);
    const loaded = one.points.find(({ current }) => current > 1);
    expect(loaded?.openCircuit).toBeGreaterThan((loaded?.voltage ?? 9) + 0.05);
    for (const { residual } of one.points) expect(Math.abs(residual ?? 1)).toBeLessThan(0.02);
    expect(one.points[0].charge).toBe(1);
    expect(one.points.at(-1)?.charge).toBeCloseTo(0, 12);
  });

  it("says capacity and voltages, resistance with its error, and that nothing is missing", () => {
    const one = page("one-cell-650");
    expect(packSentence(one)).toMatch(
      /^A cell of One cell, 650 mAh gives 6\d\d.mAh and falls from 4\.\d\d to 3\.\d\d.V at rest\.$/,
    );
    expect(cellResistanceText(one)).toMatch(/^3\d\.\d ± \d\.\d.mΩ$/);
    expect(packMissing(one)).toMatch(/^(Nothing for this temperature|The resistance is known)/);
  });

  it("draws points, sags, curve and the cell's minimum; residuals in millivolts about 0", () => {
    const one = page("one-cell-650");
    const plot = packPlot(one);
    expect(plot.marks).toHaveLength(one.points.length);
    expect(plot.brackets).toHaveLength(one.points.filter(({ current }) => current > 0).length);
    expect(plot.lines?.[0]).toMatchObject({ style: "solid", label: "open-circuit" });
    expect(plot.lines?.[1]).toMatchObject({ label: "least under load", points: [{ y: 3.2 }, { y: 3.2 }] });
    expect(packResidualPlot(one).y.to).toBeGreaterThan(1);
  });

  it("without a test: the stated curve, dashed, and the test that would measure it", () => {
    const two = page("two-cell-450");
    expect(packSentence(two)).toMatch(/as stated\.$/);
    expect(packPlot(two).lines?.[0].style).toBe("dashed");
    expect(packMissing(two)).toMatch(/^A discharge test: start full/);
  });

  it("without test and curve: the chemistry's, or none at all", () => {
    expect(packSentence(page("two-cell-450", bare("lithium-ion")))).toMatch(
      /by a published curve of its chemistry\.$/,
    );
    const none = page("two-cell-450", bare());
    expect(packSentence(none)).toMatch(/is not known\.$/);
    expect(packPlot(none).lines?.map(({ key }) => key)).toEqual(["minimum"]);
  });

  it("says the rise in the cold with its mark, and carries the measured resistance to freezing", () => {
    const changed = (cell: object, estimated: string[] = []): Book => ({
      ...demo,
      packs: demo.packs.map((pack) => ({
        ...pack,
        data: { ...pack.data, estimated, cell: { ...pack.data.cell, ...cell } },
      })),
    });
    expect(coldRiseOf(page("two-cell-450", changed({ coldFactor: undefined })))).toBeNull();
    const stated = page("two-cell-450", changed({ coldFactor: 2.5, resistance: 0.026 }));
    expect(coldRiseOf(stated)).toEqual({
      text: expect.stringMatching(/^2\.5 × at freezing, 65\.0.mΩ$/),
      mark: "stated",
    });
    const guessed = changed({ coldFactor: 2, resistance: 0.026 }, ["cell.coldFactor"]);
    expect(coldRiseOf(page("two-cell-450", guessed))?.mark).toBe("estimated");
    const tested = page("one-cell-650", changed({ coldFactor: 2 }));
    const own = tested.basis.basis === "measured" ? tested.basis.cell.resistance : Number.NaN;
    expect(coldRiseOf(tested)?.text).toContain(`2.0 × at freezing, ${(2000 * own).toFixed(1)}`);
  });

  it("draws a resistance that varies with the charge, and none where one stands for all", () => {
    expect(resistancePlot(page("one-cell-650"))).toBeNull();
    expect(resistanceSentence(page("one-cell-650"))).toBeNull();
    const found = page("one-cell-650", withRisingResistance(demo));
    const told = found.basis.basis === "measured" ? (found.basis.fit?.resistanceByCharge ?? []) : [];
    expect(told.length).toBeGreaterThan(2);
    const plot = resistancePlot(found);
    expect(plot?.marks).toHaveLength(told.length);
    expect(plot?.brackets).toHaveLength(told.length);
    expect(resistanceSentence(found)).toMatch(
      /from \d\d\.\d.mΩ at 9\d.% charge to \d\d\.\d.mΩ at \d+.% charge\./,
    );
    expect(cellResistanceText(found)).toMatch(/^\d\d\.\d to \d\d\.\d.mΩ, by charge$/);
    for (const { residual, charge } of found.points)
      if (charge > 0.1) expect(Math.abs(residual ?? 1)).toBeLessThan(0.02);
  });

  it("of a pack that is not in the book: none", () => {
    expect(packPage(demo, "gone")).toBeNull();
  });
});
