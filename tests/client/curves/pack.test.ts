import { describe, expect, it } from "vitest";
import { packPage } from "#client/views/curves/pack/packData.ts";
import { packPlot, packResidualPlot } from "#client/views/curves/pack/packPlots.ts";
import { cellResistanceText, packMissing, packSentence } from "#client/views/curves/pack/packSentence.ts";
import type { Book } from "#shared/book/book.ts";
import { demoBook } from "#tests/support/demoBook.ts";

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

  it("of a pack that is not in the book: none", () => {
    expect(packPage(demo, "gone")).toBeNull();
  });
});
