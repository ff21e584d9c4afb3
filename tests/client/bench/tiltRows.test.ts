import { describe, expect, it } from "vitest";
import type { Draft } from "#client/views/bench/record/draft.ts";
import { withHeld, withSlid } from "#client/views/bench/tilt/rows.ts";

const DEGREE = Math.PI / 180;
const empty: Draft = {
  kind: "friction",
  fields: {},
  holes: [],
  rows: [{ key: 0, cells: {}, open: [], aside: null }],
  units: {},
};
const cells = ({ rows }: Draft) => rows.map((row) => row.cells);

describe("slides by one button each", () => {
  const held = withHeld(withHeld(empty, 31.24 * DEGREE).draft, 33 * DEGREE);
  const slid = withSlid(held.draft, 34.06 * DEGREE);

  it("keeps the greatest tilt that held, and the one at which it slid, in one row", () => {
    expect(cells(slid.draft)).toEqual([{ held: "33.0 °", slid: "34.1 °" }]);
    expect(cells(withHeld(held.draft, 30 * DEGREE).draft)).toEqual([{ held: "33.0 °" }]);
  });

  it("begins the next slide in another row", () => {
    const next = withSlid(slid.draft, 35 * DEGREE);
    expect(cells(next.draft)).toEqual([{ held: "33.0 °", slid: "34.1 °" }, { slid: "35.0 °" }]);
    expect(next.key).not.toBe(slid.key);
  });
});
