import { afterEach, describe, expect, it } from "vitest";
import { solvedAsStored } from "#client/state/onScreen.ts";
import { foundOnScreen } from "#client/state/verdict/found.ts";
import { showUnitsOf, UNIT_SETS } from "#shared/units/showing.ts";
import { demoBook } from "#tests/support/demoBook.ts";

afterEach(() => {
  showUnitsOf(() => UNIT_SETS.metric);
});

describe("what is worked out ahead of the screen", () => {
  it("asked for again: the very same, found by or solved; of another book, or said in other units, anew", () => {
    const book = demoBook();
    const build = book.builds[0].data;
    const outcome = solvedAsStored(book, build);
    const found = foundOnScreen(book, outcome);
    expect(solvedAsStored(book, build)).toBe(outcome);
    expect(foundOnScreen(book, outcome)).toBe(found);
    showUnitsOf(() => UNIT_SETS.inch);
    expect(solvedAsStored(book, build)).not.toBe(outcome);
    expect(foundOnScreen(book, outcome)).not.toBe(found);
    showUnitsOf(() => UNIT_SETS.metric);
    const other = { ...book };
    expect(solvedAsStored(other, build)).not.toBe(solvedAsStored(book, build));
  });
});
