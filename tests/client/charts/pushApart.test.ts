import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { pushApart, type Wanted } from "#client/charts/draw/pushApart.ts";

const label = fc.record({
  at: fc.double({ min: 0, max: 500, noNaN: true }),
  size: fc.constantFrom(12, 16, 30),
});

describe("pushApart", () => {
  it("leaves labels where they want to be, with room between them, unmoved", () => {
    const labels = [
      { at: 100, size: 16 },
      { at: 20, size: 16 },
    ];
    expect(pushApart(labels, 0, 200)).toEqual([100, 20]);
  });

  it("parts two that want the same place, far from the ends, evenly to both sides", () => {
    const labels = [
      { at: 100, size: 16 },
      { at: 100, size: 16 },
    ];
    expect(pushApart(labels, 0, 200)).toEqual([92, 108]);
  });

  it("keeps them on the line, with a crowd at its end, in their order", () => {
    const labels = [195, 198, 200].map((at) => ({ at, size: 16 }));
    expect(pushApart(labels, 0, 200)).toEqual([160, 176, 192]);
  });

  it("never lets two overlap or leave the line, for any labels that fit, and keeps their order", () => {
    fc.assert(
      fc.property(fc.array(label, { minLength: 1, maxLength: 12 }), (labels: Wanted[]) => {
        const centres = pushApart(labels, 0, 500);
        const order = labels.map((_, i) => i).sort((a, b) => centres[a] - centres[b]);
        order.forEach((i, k) => {
          expect(centres[i] - labels[i].size / 2).toBeGreaterThanOrEqual(-1e-9);
          expect(centres[i] + labels[i].size / 2).toBeLessThanOrEqual(500 + 1e-9);
          if (k === 0) return;
          const before = order[k - 1];
          expect(centres[i] - centres[before]).toBeGreaterThanOrEqual(
            (labels[i].size + labels[before].size) / 2 - 1e-9,
          );
          expect(labels[before].at).toBeLessThanOrEqual(labels[i].at);
        });
      }),
    );
  });
});
