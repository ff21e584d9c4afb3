import { afterEach, describe, expect, it, vi } from "vitest";
import { currentBook, loadError, reload } from "#client/state/book.ts";
import { toSI } from "#shared/units/quantity.ts";

/** A book whose only test reads flow in a unit that the table of units does not show. */
const FLOW = { value: 300, unit: "cm^3/s" };
const TEST = { id: "odd", revision: 1, createdAt: "", updatedAt: "", data: { rows: [{ flow: FLOW }] } };

function answer(path: string): object {
  if (path.endsWith("/bench")) return { demo: false, counts: {}, backup: null };
  return { items: path.includes("/tests?") ? [TEST] : [], next: null };
}

afterEach(() => {
  vi.unstubAllGlobals();
});

describe("the book, read from the server", () => {
  it("can be made into numbers at once, with a reading in a unit beyond the table", async () => {
    vi.stubGlobal("fetch", (path: string) => Promise.resolve(Response.json(answer(path))));
    await reload();
    expect(loadError.value).toBeNull();
    expect(currentBook.value?.tests).toHaveLength(1);
    expect(toSI(FLOW, "flow")).toBeCloseToRelative(3e-4, 1e-12);
  });
});
