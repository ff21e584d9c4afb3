import { describe, expect, it } from "vitest";
import { type Judged, ranked } from "#server/jobs/shortlist.ts";
import type { VerdictState } from "#shared/decide/verdict/states.ts";

/** A combination with only what a ranking reads of it. */
const judged = (index: number, state: VerdictState, margin5: number, chance = 0.99): Judged => ({
  combination: { index, values: { margin: margin5 + 0.2 } } as unknown as Judged["combination"],
  doubt: { index, chance, margin5, deviation: 0.1 },
  verdict: { state, reason: "" },
  stated: true,
});

const order = (all: readonly Judged[], rank: "margin5" | "chance" | "margin" = "margin5") =>
  ranked(all, rank, 0).items.map((each) => [each.set.index, each.place]);

describe("a shortlist's ranking", () => {
  const rotorAtItsSafeSpeed = judged(1, "over-rating", 5);
  const burning = judged(2, "burns", 9, 1);
  const holding = judged(3, "holds", 1.6);
  const surer = judged(4, "holds", 2.4);

  it.each(["margin5", "chance", "margin"] as const)(
    "by %s puts the better verdict first, however large the margin of the worse",
    (rank) => {
      const places = order([burning, rotorAtItsSafeSpeed, holding, surer], rank).map(([index]) => index);
      expect(new Set(places.slice(0, 2))).toEqual(new Set([3, 4]));
      expect(places.slice(2)).toEqual([1, 2]);
    },
  );

  it("ranks those of one verdict by what is asked, and lets only them tie", () => {
    const near = judged(5, "holds", 2.35);
    const same = judged(6, "over-rating", 2.35);
    expect(order([same, holding, near, surer])).toEqual([
      [4, 1],
      [5, 1],
      [3, 3],
      [6, 4],
    ]);
  });
});
