import { describe, expect, it } from "vitest";
import { gapGrid } from "#shared/fit/calibration/gapGrid.ts";

describe("gapGrid", () => {
  it.each([1.8e-3, 6e-4, 1.1e-3, 3.3e-5])(
    "begun up to %s: no gap beyond that is asked for, not even by a rounding",
    (to) => {
      const asked: number[] = [];
      const log = (gap: number) => {
        asked.push(gap);
        return -(((gap - to / 2) / (to / 40)) ** 2) / 2;
      };
      const nodes = gapGrid((gap) => ({ log: log(gap), known: null }), log, 0, to);
      expect(Math.max(...asked)).toBe(to);
      expect(nodes[0].gap).toBeGreaterThan(to / 4);
      expect(nodes[nodes.length - 1].gap).toBeLessThan(0.75 * to);
    },
  );
});
