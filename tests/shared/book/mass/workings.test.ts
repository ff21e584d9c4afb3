import { describe, expect, it } from "vitest";
import { balanceOf } from "#shared/book/mass/balance.ts";
import { ledgerOf, sumOf } from "#shared/book/mass/ledger.ts";
import { balanceBoard, massBoard, Z90 } from "#shared/book/mass/workings.ts";
import { workingBehind } from "#shared/physics/working.ts";
import { demoBook } from "#tests/support/demoBook.ts";

const book = demoBook();
const builds = book.builds.map(({ id, data }) => [id, data] as const);

describe("workings of a build's mass, of every build of the demo", () => {
  it.each(builds)("%s: each is the ledger's own figure", (_id, build) => {
    const { lines, sum, mass, unaccounted } = ledgerOf(book, build);
    const { workings } = massBoard(book, build);
    const of = (title: string) => workings.find((each) => each.title === title)?.result.value;
    expect(of("mass on board")).toBe(mass.value);
    expect(of("sum of the lines")).toBe(sum.value);
    expect(of("± (90 %) of sum of the lines")).toBe(Z90 * sum.uncertainty);
    expect(of("mass on no line") ?? null).toBe(unaccounted);
    for (const line of lines) {
      expect(of(`mass of ${line.name}`)).toBe(sumOf([line]).value);
      expect(of(`± (90 %) of ${line.name}`)).toBe(Z90 * sumOf([line]).uncertainty);
    }
  });

  it.each(builds)("%s: a sum's lines add up to it, each leading down to its own working", (_id, build) => {
    const { workings } = massBoard(book, build);
    const sum = workings.find(({ title }) => title === "sum of the lines");
    if (!sum) return expect.fail("no sum");
    expect(sum.values.reduce((total, { value }) => total + value, 0)).toBeCloseToRelative(
      sum.result.value,
      1e-12,
    );
    for (const value of sum.values)
      expect(workingBehind(value, workings)?.title).toBe(`mass of ${value.meaning}`);
  });

  it.each(builds)("%s: the centre of gravity is the balance's", (_id, build) => {
    const places = { motor: { fromRear: 0.05, height: 0.02 }, rotor: { fromRear: 0.03, height: 0.015 } };
    const placed = { ...build, places };
    const { centre } = balanceOf(book, placed);
    const [x, h] = balanceBoard(book, placed).workings;
    expect(centre).not.toBeNull();
    expect(x?.result.value).toBe(centre?.fromRear);
    expect(h?.result.value).toBe(centre?.height);
  });
});
