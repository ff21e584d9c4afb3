import { describe, expect, it } from "vitest";
import { chancesOf } from "#shared/decide/fitUp/chance.ts";
import { changesThatClose, measuredAt } from "#shared/decide/fitUp/change.ts";
import { type Dimension, stackOf } from "#shared/decide/fitUp/stack.ts";
import { normalCdf } from "#shared/numeric/normal.ts";

const stack = (clearance: number, ...tolerances: number[]): Dimension[] => [
  { nominal: 0.02 + clearance + 0.01 * (tolerances.length - 2), tolerance: tolerances[0], sense: 1 },
  { nominal: 0.02, tolerance: tolerances[1], sense: -1 },
  ...tolerances.slice(2).map((tolerance): Dimension => ({ nominal: 0.01, tolerance, sense: -1 })),
];

const factorial = (n: number): number => (n <= 1 ? 1 : n * factorial(n - 1));

/** P(c + Σ e ≥ 0), e even over ± t each: Σ over all signs of ± (c + Σ ± t)ⁿ, over 2ⁿ n! Π t. Exact, by repeated integration. */
function evenChance(clearance: number, tolerances: readonly number[]): number {
  const n = tolerances.length;
  let sum = 0;
  for (let signs = 0; signs < 2 ** n; signs++) {
    const minus = tolerances.filter((_, i) => signs & (1 << i)).length;
    const end = tolerances.reduce((total, t, i) => total + (signs & (1 << i) ? -t : t), clearance);
    sum += (minus % 2 === 0 ? 1 : -1) * Math.max(0, end) ** n;
  }
  return sum / (2 ** n * factorial(n) * tolerances.reduce((product, t) => product * t, 1));
}

describe("chancesOf", () => {
  it.each([
    [0.1e-3, [0.2e-3, 0.2e-3]],
    [-0.05e-3, [0.2e-3, 0.1e-3]],
    [0.15e-3, [0.2e-3, 0.2e-3, 0.2e-3, 0.05e-3]],
    [0, [0.3e-3, 0.1e-3, 0.2e-3]],
  ] as const)(
    "of %s m left with tolerances %j, even errors, agrees with the exact sum",
    (clearance, tolerances) => {
      const { uniform } = chancesOf(stack(clearance, ...tolerances));
      expect(Math.abs(uniform - evenChance(clearance, tolerances))).toBeLessThan(3e-3);
    },
  );

  it("with normal errors is the normal distribution's, a tolerance three standard deviations", () => {
    const { normal } = chancesOf(stack(0.1e-3, 0.2e-3, 0.2e-3));
    expect(normal).toBeCloseToRelative(normalCdf((3 * 0.1) / Math.hypot(0.2, 0.2)), 1e-12);
  });

  it("is sure where the worst case closes, and where even the best does not", () => {
    expect(chancesOf(stack(0.5e-3, 0.2e-3, 0.2e-3)).uniform).toBe(1);
    expect(chancesOf(stack(-0.5e-3, 0.2e-3, 0.2e-3)).uniform).toBe(0);
  });

  it("of a hundred shims is near the normal distribution with the even errors' own variance", () => {
    const shims: Dimension[] = [
      { nominal: 0.0505, tolerance: 0.1e-3, sense: 1 },
      { nominal: 0.5e-3, tolerance: 0.1e-3, sense: -1, quantity: 100 },
    ];
    const sd = (0.1e-3 * Math.sqrt(101)) / Math.sqrt(3);
    expect(Math.abs(chancesOf(shims).uniform - normalCdf(0.5e-3 / sd))).toBeLessThan(5e-3);
  });
});

describe("changesThatClose", () => {
  it("of a stack that may not close, each change alone brings its lower worst case to 0", () => {
    const dimensions: Dimension[] = [
      { nominal: 0.03, tolerance: 0.2e-3, sense: 1 },
      { nominal: 0.018, tolerance: 0.1e-3, sense: -1 },
      { nominal: 0.006, tolerance: 0.1e-3, sense: -1, quantity: 2 },
    ];
    const changes = changesThatClose(dimensions);
    expect(changes[0]?.by).toBeCloseToRelative(0.5e-3, 1e-9);
    for (const change of changes) {
      expect(change).not.toBeNull();
      if (!change) continue;
      const changed = dimensions.map((each, i) =>
        i === change.place ? { ...each, nominal: change.nominal } : each,
      );
      expect(stackOf(changed).worstCase[0]).toBe(0);
    }
  });

  it("of a stack that closes changes nothing, and never makes a part smaller than its tolerance", () => {
    expect(changesThatClose(stack(1e-3, 0.2e-3, 0.2e-3))).toEqual([null, null]);
    const shim: Dimension[] = [
      { nominal: 0.01, tolerance: 0.1e-3, sense: 1 },
      { nominal: 0.011, tolerance: 0.1e-3, sense: -1 },
      { nominal: 0.2e-3, tolerance: 0.1e-3, sense: -1 },
    ];
    expect(changesThatClose(shim).map((change) => change !== null)).toEqual([true, true, false]);
  });
});

describe("measuredAt", () => {
  it("takes the measured tolerance where it is the smaller one, and no other", () => {
    const dimensions = stack(0.2e-3, 0.2e-3, 0.01e-3);
    expect(measuredAt(dimensions, [0], 0.05e-3).worstCase[0]).toBeCloseTo(0.14e-3, 9);
    expect(measuredAt(dimensions, [1], 0.05e-3).worstCase[0]).toBeCloseTo(-0.01e-3, 9);
  });
});
