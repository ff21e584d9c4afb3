import { describe, expect, it } from "vitest";
import { solveSwaps } from "#shared/decide/swaps/swaps.ts";

interface Instance {
  readonly name: string;
  readonly capacity: number;
  readonly weights: readonly number[];
  readonly profits: readonly number[];
  readonly optimum: number;
}

/**
 * J. Burkardt, Florida State University, data sets KNAPSACK_01: instances P01 to P08 with the optimal selections as published there.
 * P01 to P07 after Kreher & Stinson, Combinatorial Algorithms (1998), and Martello & Toth, Knapsack Problems (1990); found in several public copies that agree.
 * A knapsack is a multiple-choice knapsack of two options a line; of sets with more, none with published optima could be had: those are held to brute force.
 */
const INSTANCES: readonly Instance[] = [
  {
    name: "P01",
    capacity: 165,
    weights: [23, 31, 29, 44, 53, 38, 63, 85, 89, 82],
    profits: [92, 57, 49, 68, 60, 43, 67, 84, 87, 72],
    optimum: 309,
  },
  {
    name: "P06",
    capacity: 170,
    weights: [41, 50, 49, 59, 55, 57, 60],
    profits: [442, 525, 511, 593, 546, 564, 617],
    optimum: 1735,
  },
  {
    name: "P07",
    capacity: 750,
    weights: [70, 73, 77, 80, 82, 87, 90, 94, 98, 106, 110, 113, 115, 118, 120],
    profits: [135, 139, 149, 150, 156, 163, 173, 184, 192, 201, 210, 214, 221, 229, 240],
    optimum: 1458,
  },
  {
    name: "P08",
    capacity: 6404180,
    weights: [
      382745, 799601, 909247, 729069, 467902, 44328, 34610, 698150, 823460, 903959, 853665, 551830, 610856,
      670702, 488960, 951111, 323046, 446298, 931161, 31385, 496951, 264724, 224916, 169684,
    ],
    profits: [
      825594, 1677009, 1676628, 1523970, 943972, 97426, 69666, 1296457, 1679693, 1902996, 1844992, 1049289,
      1252836, 1319836, 953277, 2067538, 675367, 853655, 1826027, 65731, 901489, 577243, 466257, 369261,
    ],
    optimum: 13549094,
  },
];

describe("the cheapest swaps, on published knapsacks", () => {
  // Each thing is a line that may be left behind, at the price of its profit: what is left in the sack is worth all less that price.
  it.each(INSTANCES)("$name: what is kept is worth the published optimum, $optimum", (instance) => {
    const { capacity, weights, profits, optimum } = instance;
    const lines = weights.map((mass, i) => ({
      quantity: 1,
      mass,
      alternatives: [{ mass: 0, price: profits[i], leadTime: 0 }],
    }));
    const worth = profits.reduce((sum, profit) => sum + profit, 0);
    const [best, second] = solveSwaps({ lines, allowed: capacity, by: "price" }).solutions;
    expect(worth - best.price).toBe(optimum);
    expect(best.mass).toBeLessThanOrEqual(capacity);
    expect(second.price).toBeGreaterThanOrEqual(best.price);
  });
});
