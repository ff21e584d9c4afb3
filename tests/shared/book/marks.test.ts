import { describe, expect, it } from "vitest";
import { type Outcome, solve } from "#client/state/outcome.ts";
import type { Book } from "#shared/book/book.ts";
import { marksOf, verdictMarks } from "#shared/book/marks.ts";
import type { Build } from "#shared/model/build.ts";
import { demoBook } from "#tests/support/demoBook.ts";

const book = demoBook();

function solved(id: string, change: Partial<Build> = {}, changedBook: Book = book): Outcome {
  const stored = book.builds.find((record) => record.id === id);
  if (!stored) throw new Error(`no build ${id}`);
  return solve(changedBook, { ...stored.data, ...change });
}

const without = (
  marked: "skirts" | "packs" | "rotors" | "motors" | "surfaces",
  estimated: string[],
): Book => ({
  ...book,
  [marked]: book[marked].map((part) => ({ ...part, data: { ...part.data, estimated } })),
});

const words = (outcome: Outcome, changedBook: Book = book) =>
  verdictMarks(changedBook, outcome).map(({ word }) => word);

describe("the marks of a verdict", () => {
  it("of a size that was not tested: scaled, with both sizes", () => {
    const mark = verdictMarks(book, solved("pane-crawler", { diameter: 0.041 }));
    expect(mark.find(({ word }) => word === "scaled")?.what).toMatch(
      /41\.0\u202fmm, from (38|44)\.0\u202fmm/,
    );
  });

  it("of a tested size: not scaled", () => {
    expect(words(solved("pane-crawler"))).not.toContain("scaled");
  });

  it("of a point beyond the tested flows: extrapolated", () => {
    const outcome = solved("pane-crawler");
    const { prediction } = outcome;
    if (!prediction?.point) throw new Error("no point");
    expect(words(outcome)).not.toContain("extrapolated");
    const beyond = { ...prediction, point: { ...prediction.point, extrapolated: true } } as typeof prediction;
    expect(words({ ...outcome, prediction: beyond })).toContain("extrapolated");
  });

  it("of a curve whose pressure and power do not belong together: efficiency above 1, with the rotor's name", () => {
    const tests = book.tests.map((test) =>
      test.data.kind === "curve" && test.data.rotor === "swept-nine"
        ? {
            ...test,
            data: {
              ...test.data,
              rows: test.data.rows.map((row) => ({
                ...row,
                pressure: { ...row.pressure, value: 3 * row.pressure.value },
              })),
            },
          }
        : test,
    );
    const wrong = { ...book, tests };
    const mark = verdictMarks(wrong, solved("pane-crawler", {}, wrong)).find(
      ({ word }) => word === "efficiency above 1",
    );
    expect(mark?.what).toMatch(/^Swept nine: The curve's best efficiency would be \d+ %/);
    expect(words(solved("pane-crawler"))).not.toContain("efficiency above 1");
  });

  it("of a point on a curve that was estimated whole: estimated, not extrapolated as well", () => {
    const outcome = solved("pane-crawler");
    const { prediction, resolved } = outcome;
    if (!prediction?.point || !resolved?.rotor) throw new Error("no point");
    const beyond = { ...prediction, point: { ...prediction.point, extrapolated: true } } as typeof prediction;
    const rotor = { ...resolved.rotor, basis: "estimated" as const };
    const marked = words({ ...outcome, prediction: beyond, resolved: { ...resolved, rotor } } as Outcome);
    expect(marked).toContain("estimated");
    expect(marked).not.toContain("extrapolated");
  });

  it("of a gap calibrated from tests that contradict the model: contradicted, first of all", () => {
    const pull = book.tests.find(({ data }) => data.kind === "pull" && data.direction === "straight-off");
    if (pull?.data.kind !== "pull") throw new Error("no pull test");
    const rows = pull.data.rows.map((row) => ({
      ...row,
      held: { ...row.held, value: row.held.value / 8 },
      letGo: row.letGo && { ...row.letGo, value: row.letGo.value / 8 },
    }));
    const data = { ...pull.data, rigMass: { value: 5, unit: "g" }, rows };
    const tests = book.tests.map((test) => (test.id === pull.id ? { ...test, data } : test));
    const changedBook = { ...book, tests } as Book;
    expect(words(solved("pane-crawler", {}, changedBook), changedBook)[0]).toBe("contradicted");
    expect(words(solved("pane-crawler"))).not.toContain("contradicted");
  });

  it.each(["two-point", "estimated"] as const)("of a rotor curve that is %s: that word", (basis) => {
    const outcome = solved("pane-crawler");
    const rotor = outcome.resolved?.rotor;
    if (!outcome.resolved || !rotor) throw new Error("no rotor");
    const marked = { ...outcome, resolved: { ...outcome.resolved, rotor: { ...rotor, basis } } } as Outcome;
    const mark = verdictMarks(book, marked).find(({ word }) => word === basis);
    expect(mark?.what).toMatch(/rotor curve/);
  });

  it("of a pack without a curve, with its chemistry named: estimated, whose curve it is", () => {
    const packs = book.packs.map(({ data, ...record }) => {
      const { curve: _own, ...cell } = data.cell;
      return { ...record, data: { ...data, cell: { ...cell, chemistry: "lithium-ion" as const } } };
    });
    const changedBook = { ...book, packs, tests: book.tests.filter(({ data }) => data.kind !== "discharge") };
    const mark = verdictMarks(changedBook, solved("pane-crawler", {}, changedBook)).find(
      ({ word }) => word === "estimated",
    );
    expect(mark?.what).toMatch(/voltage by charge of Two cells, 450 mAh, a published curve of lithium-ion/);
  });

  it("of a pack's estimated resistance: no more, once a discharge test has told it", () => {
    const changedBook = without("packs", ["cell.resistance"]);
    const all = (pack: string) =>
      marksOf(changedBook, solved("pane-crawler", { pack }, changedBook)).map(({ what }) => what);
    expect(all("two-cell-450").join()).toMatch(/cell resistance/);
    expect(all("one-cell-650").join()).not.toMatch(/cell resistance/);
  });

  it.each([
    ["packs", "cell.resistance", "cell resistance"],
    ["motors", "noLoadCurrent", "no load current"],
    ["surfaces", "roughness", "roughness"],
  ] as const)("of an estimate in the %s: estimated, the field named", (part, path, said) => {
    const changedBook = without(part, [path]);
    const mark = verdictMarks(changedBook, solved("pane-crawler", {}, changedBook)).find(
      ({ word }) => word === "estimated",
    );
    expect(mark?.what).toContain(said);
  });

  it("of a guessed gap that pull tests calibrated: no mark; of one that nothing tells: estimated", () => {
    const guessed = without("skirts", ["gap"]);
    const pulled = solved("pane-crawler", {}, guessed);
    expect(marksOf(guessed, pulled).some(({ what }) => /gap/.test(what))).toBe(false);
    const untested = { ...guessed, tests: guessed.tests.filter(({ data }) => data.kind !== "pull") };
    const marks = marksOf(untested, solved("pane-crawler", {}, untested));
    expect(marks.some(({ word, what }) => word === "estimated" && /gap/.test(what))).toBe(true);
  });

  it("of what a maker states: named among what it rests on, no mark of the verdict", () => {
    const changedBook = { ...book, tests: book.tests.filter(({ data }) => data.kind !== "motor") };
    const outcome = solved("pane-crawler", {}, changedBook);
    expect(marksOf(changedBook, outcome).map(({ word }) => word)).toContain("stated");
    expect(words(outcome, changedBook)).not.toContain("stated");
  });
});
