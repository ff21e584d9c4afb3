import fc from "fast-check";
import { describe, expect, it } from "vitest";
import {
  type SwapAim,
  type SwapLine,
  type SwapSet,
  type SwapsRequest,
  solveSwaps,
} from "#shared/decide/swaps/swaps.ts";
import { expectOutOfRange } from "#tests/support/outOfRange.ts";
import { PRICES, sixtyLines } from "#tests/support/swapLines.ts";

const line = (mass: number, alternatives: SwapLine["alternatives"] = [], quantity = 1): SwapLine => ({
  quantity,
  mass,
  alternatives,
});
const by = (mass: number, price: number, leadTime = 0) => ({ mass, price, leadTime });

/** Every set there is, in grams and cents, so that sums are exact. */
function everySet({ lines, allowed, by: aim }: SwapsRequest) {
  let sets = [{ mass: 0, price: 0, leadTime: 0, count: 0 }];
  for (const { quantity, mass, alternatives } of lines) {
    sets = sets.flatMap((set) => [
      { ...set, mass: set.mass + quantity * mass },
      ...alternatives.map((each) => ({
        mass: set.mass + quantity * each.mass,
        price: set.price + quantity * each.price,
        leadTime: Math.max(set.leadTime, each.leadTime),
        count: set.count + 1,
      })),
    ]);
  }
  const tie = aim === "price" ? "mass" : "price";
  return sets.filter(({ mass }) => mass <= allowed).sort((a, b) => a[aim] - b[aim] || a[tie] - b[tie]);
}

const figures = ({ mass, price, leadTime, count }: Omit<SwapSet, "choices" | "uncertainty" | "chance">) => ({
  mass,
  price,
  leadTime,
  count,
});

const small = fc.integer({ min: 0, max: 12 });
const anyLine = fc.record({
  quantity: fc.integer({ min: 1, max: 4 }),
  mass: small,
  alternatives: fc.array(fc.record({ mass: small, price: small, leadTime: fc.integer({ min: 0, max: 3 }) }), {
    maxLength: 3,
  }),
});
const anyRequest = fc.record({
  lines: fc.array(anyLine, { minLength: 1, maxLength: 5 }),
  allowed: fc.integer({ min: 0, max: 120 }),
  by: fc.constantFrom<SwapAim>("price", "leadTime", "count"),
  solutions: fc.integer({ min: 1, max: 6 }),
});

describe("solveSwaps", () => {
  it("gives the first sets of all that there are, counted out one by one, for any small list", () => {
    fc.assert(
      fc.property(anyRequest, (request) => {
        const expected = everySet(request);
        const tie = request.by === "price" ? "mass" : "price";
        const { reachable, solutions, lightest } = solveSwaps(request);
        expect(reachable).toBe(expected.length > 0);
        const keys = (set: { mass: number; price: number; leadTime: number; count: number }) => [
          set[request.by],
          set[tie],
        ];
        expect(solutions.map(keys)).toEqual(expected.slice(0, request.solutions).map(keys));
        expect(new Set(solutions.map(({ choices }) => choices.join())).size).toBe(solutions.length);
        // What each set says of itself is what its choices come to.
        for (const set of [...solutions, lightest]) {
          const chosen = request.lines.map(({ quantity, mass, alternatives }, i) => {
            const choice = set.choices[i];
            return {
              quantity,
              ...(choice === null ? { mass, price: 0, leadTime: 0 } : alternatives[choice]),
            };
          });
          expect(figures(set)).toEqual({
            mass: chosen.reduce((sum, { quantity, mass }) => sum + quantity * mass, 0),
            price: chosen.reduce((sum, { quantity, price }) => sum + quantity * price, 0),
            leadTime: Math.max(...chosen.map(({ leadTime }) => leadTime)),
            count: set.choices.filter((choice) => choice !== null).length,
          });
        }
        const least = Math.min(...everySet({ ...request, allowed: Infinity }).map(({ mass }) => mass));
        expect(lightest.mass).toBe(least);
      }),
      { numRuns: 400 },
    );
  });

  it("adds grams and cents as people do: 0.1 g and 0.2 g are no heavier than 0.3 g", () => {
    const lines = [line(0.0005, [by(0.0001, 0.1)]), line(0.0005, [by(0.0002, 0.2)])];
    const { solutions } = solveSwaps({ lines, allowed: 0.0003, by: "price" });
    expect(solutions).toHaveLength(1);
    expect(solutions[0]).toMatchObject({ choices: [0, 0], mass: 0.0003, price: 0.3, chance: 1 });
  });

  it("changes nothing, with a list that is light enough", () => {
    const { solutions } = solveSwaps({ lines: [line(2, [by(1, 5, 3)])], allowed: 2, by: "leadTime" });
    expect(solutions[0]).toEqual({
      choices: [null],
      mass: 2,
      uncertainty: 0,
      price: 0,
      leadTime: 0,
      count: 0,
      chance: 1,
    });
  });

  it("has no set and names the lightest, with a limit that none reaches", () => {
    const lines = [line(3, [by(2, 9), by(2, 5), by(4, 0)]), line(1)];
    expect(solveSwaps({ lines, allowed: 2.5, by: "price" })).toMatchObject({
      reachable: false,
      solutions: [],
      lightest: { choices: [1, null], mass: 3, price: 5, chance: 0 },
    });
  });

  it("says the chance of being light enough, by hand: four wheels of 2 ± 0.1 g and 92 ± 0.3 g, with 101 g allowed", () => {
    const lines = [
      { quantity: 1, mass: 0.092, uncertainty: 0.0003, alternatives: [] },
      { quantity: 4, mass: 0.029, uncertainty: 0, alternatives: [{ ...by(0.002, 1), uncertainty: 0.0001 }] },
    ];
    const [set] = solveSwaps({ lines, allowed: 0.101, by: "count" }).solutions;
    // √(0.3² + (4·0.1)²) = 0.5 g; 100 g lies 2 of these below: Φ(2) = 0.977 249 868.
    expect(set.uncertainty).toBeCloseToRelative(0.0005, 1e-12);
    expect(set.chance).toBeCloseToRelative(0.977249868, 1e-8);
  });

  it.each([
    ["lines.0.mass", { lines: [line(-1)] }],
    ["lines.0.quantity", { lines: [line(1, [], 0)] }],
    ["lines.1.alternatives.0.price", { lines: [line(1), line(1, [by(1, Number.NaN)])] }],
    ["allowed", { allowed: -1 }],
  ])("names %s, out of range", (path, change) => {
    expectOutOfRange(() => solveSwaps({ lines: [line(1)], allowed: 1, by: "price", ...change }), path);
  });
});

/** The least price, and the least mass for it, by a table over whole masses: another method, for masses that are whole numbers. */
function cheapest(lines: readonly SwapLine[], allowed: number) {
  let table = new Float64Array(allowed + 1).fill(Number.POSITIVE_INFINITY);
  table[0] = 0;
  for (const { mass, alternatives } of lines) {
    const next = new Float64Array(allowed + 1).fill(Number.POSITIVE_INFINITY);
    for (const each of [by(mass, 0), ...alternatives])
      for (let m = each.mass; m <= allowed; m++)
        next[m] = Math.min(next[m], table[m - each.mass] + each.price);
    table = next;
  }
  const price = Math.min(...table);
  return { price, mass: table.indexOf(price) };
}

describe("solveSwaps, on sixty lines of six alternatives", () => {
  it.each(Object.entries(PRICES))(
    "with %s, finds the price and the mass that a table over all masses finds",
    (_what, price) => {
      const lines = sixtyLines(price);
      const total = lines.reduce((sum, { mass }) => sum + mass, 0);
      const lightest = lines.reduce(
        (sum, each) => sum + Math.min(each.mass, ...each.alternatives.map(({ mass }) => mass)),
        0,
      );
      const allowed = Math.round((total + lightest) / 2);
      const { solutions } = solveSwaps({ lines, allowed, by: "price" });
      expect(solutions[0]).toMatchObject(cheapest(lines, allowed));
    },
  );
});
