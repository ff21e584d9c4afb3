import { describe, expect, it } from "vitest";
import { type PartChoice, type PartSwapsRequest, solvePartSwaps } from "#shared/decide/swaps/partSwaps.ts";
import type { SwapAim, SwapLine } from "#shared/decide/swaps/swaps.ts";
import { createRandom } from "#shared/numeric/random.ts";

const AIMS: readonly SwapAim[] = ["price", "leadTime", "count"];

interface Question extends Omit<PartSwapsRequest, "parts"> {
  readonly parts: readonly (Omit<PartChoice, "allowed"> & { readonly most: number })[];
}

/** Tenths of a gram, whole prices and days: sums tie as they would on paper. */
function question(seed: number, by: SwapAim): Question {
  const random = createRandom(seed);
  const whole = (from: number, to: number) => from + Math.floor(random.uniform() * (to - from + 1));
  const line = (): SwapLine => ({
    quantity: whole(1, 3),
    mass: whole(20, 200) / 1e4,
    alternatives: Array.from({ length: whole(0, 3) }, () => ({
      mass: whole(5, 200) / 1e4,
      price: whole(0, 12),
      leadTime: whole(0, 9),
    })),
  });
  const lines = Array.from({ length: seed % 6 }, line);
  const parts = Array.from({ length: 6 }, (_, i) => ({
    price: i === 0 ? 0 : whole(0, 15),
    leadTime: i === 0 ? 0 : whole(0, 9),
    count: i === 0 ? 0 : whole(1, 2),
    mass: whole(300, 600) / 1e4,
    uncertainty: 0.001,
    most: whole(650, 1100) / 1e4,
  }));
  return { lines, parts, by, solutions: 4 };
}

/** Every choice of every line with every way to have the parts, counted out. */
function everySet({ lines, parts, by }: Question) {
  const choices = lines.reduce<(number | null)[][]>(
    (sets, { alternatives }) =>
      sets.flatMap((set) => [null, ...alternatives.keys()].map((choice) => [...set, choice])),
    [[]],
  );
  return parts
    .flatMap(({ most, ...part }) =>
      choices.flatMap((set) => {
        const taken = lines.map((line, i) => {
          const choice = set[i];
          const { mass, price, leadTime } =
            choice === null ? { mass: line.mass, price: 0, leadTime: 0 } : line.alternatives[choice];
          return { mass: line.quantity * mass, price: line.quantity * price, leadTime, is: choice !== null };
        });
        const mass = taken.reduce((sum, each) => sum + each.mass, part.mass);
        const price = taken.reduce((sum, each) => sum + each.price, part.price);
        const leadTime = Math.max(part.leadTime, ...taken.map((each) => each.leadTime));
        const count = part.count + taken.filter(({ is }) => is).length;
        return [{ mass, price, leadTime, count, spare: most - mass }];
      }),
    )
    .sort((a, b) => a[by] - b[by] || a.price - b.price || a.mass - b.mass);
}

describe.each(AIMS)("swaps with parts, by %s, against every set counted out", (by) => {
  it.each(Array.from({ length: 40 }, (_, seed) => seed))(
    "of question %s are the best ones, in order",
    (seed) => {
      const asked = question(seed, by);
      const { solutions, nearest } = solvePartSwaps({
        ...asked,
        parts: asked.parts.map(({ most, ...part }) => ({ ...part, allowed: () => most })),
      });
      const all = everySet(asked);
      const light = all.filter(({ spare }) => spare >= -1e-12).slice(0, asked.solutions);
      expect(solutions).toHaveLength(light.length);
      solutions.forEach((set, i) => {
        expect(set[by]).toBe(light[i][by]);
        expect(set.price).toBe(light[i].price);
        expect(set.mass).toBeCloseTo(light[i].mass, 12);
      });
      if (light.length === 0)
        expect(nearest.allowed - nearest.mass).toBeCloseTo(Math.max(...all.map(({ spare }) => spare)), 12);
    },
  );
});

describe("solvePartSwaps", () => {
  it("counts the chance of what else is on board, by hand: 92 ± 0.3 g beside four wheels of 2 ± 0.1 g, 101 g allowed", () => {
    const part = { price: 0, leadTime: 0, count: 0, mass: 0.092, uncertainty: 0.0003, allowed: () => 0.101 };
    const wheels = { quantity: 4, mass: 0.002, uncertainty: 0.0001, alternatives: [] };
    const { solutions } = solvePartSwaps({ lines: [wheels], parts: [part], by: "count", solutions: 1 });
    // √(0.3² + (4·0.1)²) = 0.5 g; 100 g lies 2 of these below: Φ(2) = 0.977 249 868.
    expect(solutions[0].mass).toBeCloseToRelative(0.1, 1e-12);
    expect(solutions[0].chance).toBeCloseToRelative(0.977249868, 1e-8);
  });

  it("works out no more ways than can be among the sets", () => {
    let asked = 0;
    const way = (price: number) => ({
      price,
      leadTime: 0,
      count: price === 0 ? 0 : 1,
      mass: 0.1,
      uncertainty: 0,
      allowed: () => {
        asked += 1;
        return 0.2;
      },
    });
    const { solutions } = solvePartSwaps({
      lines: [],
      parts: [way(0), way(50), way(70)],
      by: "price",
      solutions: 1,
    });
    expect(solutions).toHaveLength(1);
    expect(asked).toBe(1);
  });
});
