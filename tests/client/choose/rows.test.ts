import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { drawnRows, MOST_HEIGHT, pagesOf, scrollToRow } from "#client/views/choose/rows/virtual.ts";

const VIEW = { rowHeight: 78, viewport: 540 };
const total = fc.integer({ min: 1, max: 5_000_000 });
const share = fc.double({ min: 0, max: 1, noNaN: true });

describe("drawnRows, a table of any length scrolled anywhere", () => {
  it("keeps its whole height, draws few rows, and those cover what is seen", () => {
    fc.assert(
      fc.property(total, share, (count, at) => {
        const height = Math.min(count * VIEW.rowHeight, MOST_HEIGHT);
        const scrollTop = Math.max(0, height - VIEW.viewport) * at;
        const { first, until, above, below } = drawnRows({ ...VIEW, total: count, scrollTop });
        const drawn = (until - first) * VIEW.rowHeight;
        expect(until - first).toBeLessThanOrEqual(21);
        expect(above).toBeLessThanOrEqual(scrollTop + 1e-6);
        expect(above + drawn).toBeGreaterThanOrEqual(Math.min(height, scrollTop + VIEW.viewport) - 1e-6);
        expect(above + drawn + below).toBeGreaterThanOrEqual(height - 1e-6);
      }),
    );
  });

  it("at the top begins with the first row, at the end ends with the last, of five million as of ten", () => {
    for (const count of [10, 5_000_000]) {
      expect(drawnRows({ ...VIEW, total: count, scrollTop: 0 }).first).toBe(0);
      expect(drawnRows({ ...VIEW, total: count, scrollTop: 1e9 }).until).toBe(count);
    }
  });

  it("of no rows draws none", () => {
    expect(drawnRows({ ...VIEW, total: 0, scrollTop: 0 })).toEqual({
      first: 0,
      until: 0,
      above: 0,
      below: 0,
    });
  });
});

describe("scrollToRow", () => {
  it("brings any row into what is drawn, and leaves one that is seen where it is", () => {
    fc.assert(
      fc.property(total, share, share, (count, from, to) => {
        const row = Math.floor((count - 1) * to);
        const view = { ...VIEW, total: count, scrollTop: from * 1000 };
        const scrollTop = scrollToRow(view, row);
        const { first, until } = drawnRows({ ...view, scrollTop });
        expect(first).toBeLessThanOrEqual(row);
        expect(until).toBeGreaterThan(row);
        expect(scrollToRow({ ...view, scrollTop }, row)).toBeCloseTo(scrollTop, 3);
      }),
    );
  });
});

describe("pagesOf", () => {
  it("names each page that holds a drawn row once", () => {
    expect(pagesOf({ first: 95, until: 108 }, 100)).toEqual([0, 100]);
    expect(pagesOf({ first: 200, until: 220 }, 100)).toEqual([200]);
    expect(pagesOf({ first: 0, until: 0 }, 100)).toEqual([]);
  });
});
