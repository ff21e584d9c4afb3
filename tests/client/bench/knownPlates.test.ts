import { describe, expect, it } from "vitest";
import { withPlate } from "#client/views/bench/record/draft.ts";
import { knownPlates, plateOf } from "#client/views/bench/record/knownPlates.ts";
import { writeDraft } from "#client/views/bench/record/writeDraft.ts";
import type { Book } from "#shared/book/book.ts";
import { demoBook } from "#tests/support/demoBook.ts";
import { PLATE_CURVE, PULL } from "./examples.ts";

const stored = (id: string, data: Book["tests"][number]["data"], createdAt: string) => ({
  id,
  revision: 1,
  createdAt,
  updatedAt: createdAt,
  data,
});

if (PLATE_CURVE.kind !== "curve" || typeof PLATE_CURVE.plate !== "object")
  throw new Error("The example has no plate.");
const { plate } = PLATE_CURVE;
const NARROW = { ...PLATE_CURVE, date: "2026-04-01", plate: { holes: plate.holes.slice(0, 1) } };
const book: Book = {
  ...demoBook(),
  tests: [
    stored("a", PLATE_CURVE, "2026-03-15T10:00:00Z"),
    stored("b", PULL, "2026-03-16T10:00:00Z"),
    stored("c", NARROW, "2026-04-01T10:00:00Z"),
    stored("d", { ...PLATE_CURVE, date: "2026-03-20" }, "2026-03-20T10:00:00Z"),
  ],
};

describe("known plates", () => {
  it("of tests with the same and with other holes: each plate once, the newest test's first, in words", () => {
    expect(knownPlates(book).map(({ label }) => label)).toEqual([
      "8 × 3 mm; 2 mm thick",
      "8 × 3 mm, 4 × 0.25 in (rounded, discharge coefficient 0.82); 2 mm thick",
    ]);
  });

  it("chosen for a draft: describe its plate, and its rows count as many kinds of hole", () => {
    const [narrow] = knownPlates(book);
    const draft = withPlate(writeDraft(PLATE_CURVE), narrow.holes);
    expect(plateOf(draft.holes, knownPlates(book))?.key).toBe(narrow.key);
    expect(draft.rows.map(({ open }) => open)).toEqual([["0"], ["4"], ["8"]]);
  });

  it("of a book without a plate: none", () => {
    expect(knownPlates({ ...book, tests: [stored("b", PULL, "2026-03-16T10:00:00Z")] })).toEqual([]);
    expect(plateOf([], knownPlates(book))).toBeNull();
  });
});
