import { describe, expect, it } from "vitest";
import type { Book } from "#shared/book/book.ts";
import { fingerprint } from "#shared/book/fingerprint.ts";
import { newestFirst, withPlate } from "#shared/book/newestFirst.ts";
import { demoBook } from "#tests/support/demoBook.ts";

const book = demoBook();

const changed = (change: Partial<Book["tests"][number]>): Book => ({
  ...book,
  tests: book.tests.map((test, i) => (i === 3 ? { ...test, ...change } : test)),
});

describe("fingerprint of a book", () => {
  it("of the same records in another order: is the same, sixteen digits", () => {
    expect(fingerprint({ ...book, tests: book.tests.toReversed() })).toBe(fingerprint(book));
    expect(fingerprint(book)).toMatch(/^[0-9a-f]{16}$/);
  });

  it.each([
    ["a correction", changed({ revision: 2 })],
    ["the same revision of another moment", changed({ updatedAt: "2026-05-01T00:00:00.000Z" })],
    ["another identifier", changed({ id: "other" })],
    ["a deletion", { ...book, tests: book.tests.slice(1) }],
    ["a part less", { ...book, packs: book.packs.slice(1) }],
  ])("after %s: is another", (_what, other) => {
    expect(fingerprint(other)).not.toBe(fingerprint(book));
  });

  it("with a record beside the book: is another, and another with its next revision", () => {
    const [build] = book.builds;
    const all = [[], [build], [{ ...build, revision: build.revision + 1 }]].map((more) =>
      fingerprint(book, more),
    );
    expect(new Set(all).size).toBe(3);
  });
});

describe("tests, the newest first", () => {
  it("of any order: the last day first, of one day the last entered", () => {
    const [one, two, three] = book.tests;
    const on = (test: typeof one, date: string, createdAt: string) => ({
      ...test,
      createdAt,
      data: { ...test.data, date },
    });
    const [early, late] = ["2026-01-01T00:00:00.000Z", "2026-01-02T00:00:00.000Z"];
    const tests = [on(one, "2026-03-02", early), on(two, "2026-03-05", early), on(three, "2026-03-05", late)];
    expect(newestFirst(tests).map(({ id }) => id)).toEqual([three.id, two.id, one.id]);
    expect(newestFirst(tests.toReversed())).toEqual(newestFirst(tests));
  });

  it("with a plate: leak and curve tests alone, whichever is newer first", () => {
    const plated = withPlate(book.tests);
    expect(plated.length).toBeGreaterThan(1);
    for (const { data } of plated) expect(["leak", "curve"]).toContain(data.kind);
    const days = plated.map(({ data }) => data.date);
    expect(days).toEqual(days.toSorted().reverse());
  });
});
