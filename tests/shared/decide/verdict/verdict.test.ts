import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { rankOf, type VERDICT_STATES } from "#shared/decide/verdict/states.ts";
import { verdictOf } from "#shared/decide/verdict/verdict.ts";
import { type Change, findings } from "./examples.ts";

const stateOf = (change: Change) => verdictOf(findings(change)).state;

describe("verdictOf, at each threshold", () => {
  // Left: just on the bad side, right: the least that is not.
  it.each<[string, Change, Change]>([
    ["bursts", { factor: 1 - 1e-9 }, { factor: 1 }],
    ["burns", { winding: 393.15 + 1e-9 }, { winding: 393.15 }],
    ["falls", { parked: 1 - 1e-9 }, { parked: 1 }],
    ["falls", { driving: 1 - 1e-9 }, { driving: 1 }],
    ["over-rating", { ratings: { "motor-voltage": 1 + 1e-9 } }, { ratings: { "motor-voltage": 1 } }],
    ["over-rating", { ratings: { "motor-current": 1 + 1e-9 } }, { ratings: { "motor-current": 1 } }],
    ["over-rating", { ratings: { "cell-current": 1 + 1e-9 } }, { ratings: { "cell-current": 1 } }],
    ["over-rating", { ratings: { "cell-voltage": 1 + 1e-9 } }, { ratings: { "cell-voltage": 1 - 1e-9 } }],
    ["over-rating", { factor: 2 - 1e-9 }, { factor: 2 }],
    ["tight", { parked: 1.5 - 1e-9 }, { parked: 1.5 }],
    ["tight", { driving: 1.5 - 1e-9 }, { driving: 1.5 }],
    ["unsure", { chance: 0.95 - 1e-9 }, { chance: 0.95 }],
    ["unsure", { contradictions: ["Pull 4 let go below what it held."] }, { contradictions: [] }],
  ])("%s on one side, and not on the other", (state, past, within) => {
    expect(stateOf(past)).toBe(state);
    expect(rankOf(stateOf(within))).toBeGreaterThan(rankOf(state as (typeof VERDICT_STATES)[number]));
  });

  it("holds, with nothing past anything, and at a margin that is exactly the target", () => {
    expect(stateOf({})).toBe("holds");
    expect(stateOf({ parked: 1.5 })).toBe("holds");
  });

  it("holds without any pull, with no suction needed, whether or not the rotor turns", () => {
    expect(verdictOf(findings({ parked: null, driving: null }))).toMatchObject({
      state: "holds",
      least: null,
    });
    expect(stateOf({ parked: null, driving: null, turns: false })).toBe("holds");
  });

  it("falls, with a rotor that stands, for that reason", () => {
    expect(verdictOf(findings({ turns: false, parked: 0 }))).toMatchObject({
      state: "falls",
      reason: { kind: "standing" },
    });
  });
});

describe("verdictOf, with limits that aren't known", () => {
  it("doesn't take an unknown strength, winding or rating for a clearance: it names each as not judged", () => {
    const { state, notJudged } = verdictOf(
      findings({ factor: null, winding: null, ratings: { "motor-voltage": null } }),
    );
    expect(state).toBe("holds");
    expect(notJudged).toEqual(["winding", "motor-voltage", "rotor-speed"]);
  });

  it("holds a winding whose limit isn't stated against the 155 °C of class 155 wire, on both sides", () => {
    const at = (celsius: number) => stateOf({ winding: celsius + 273.15, windingLimit: null });
    expect([at(155), at(155.01)]).toEqual(["holds", "burns"]);
  });
});

describe("verdictOf, with several things wrong", () => {
  const WRONG: Readonly<Record<string, Change>> = {
    bursts: { factor: 0.9 },
    burns: { winding: 480 },
    falls: { parked: 0.8 },
    "over-rating": { ratings: { "motor-current": 1.2 } },
    tight: { driving: 1.2 },
    unsure: { chance: 0.6 },
  };
  const states = Object.keys(WRONG);
  const pairs = states.flatMap((worse, i) => states.slice(i + 1).map((other) => [worse, other] as const));

  it.each(pairs)("says %s where it is %s as well", (worse, other) => {
    expect(stateOf({ ...WRONG[other], ...WRONG[worse] })).toBe(worse);
  });

  // Whatever else is found, making one thing worse never makes the verdict better.
  it("never comes to a better state, with any one thing made worse", () => {
    const share = fc.double({ min: 0.2, max: 2, noNaN: true });
    const some = fc.record({ a: share, b: share, c: share, d: share, e: share, f: share });
    const change = ({ a, b, c, d, e, f }: Record<"a" | "b" | "c" | "d" | "e" | "f", number>): Change => ({
      factor: 2 * a,
      winding: 293.15 + 100 * b,
      parked: 2 * c,
      driving: Math.min(2 * c, 2 * d),
      ratings: { "cell-current": e },
      chance: Math.min(1, f),
    });
    const worse = { a: 0.9, b: 1.1, c: 0.9, d: 0.9, e: 1.1, f: 0.9 } as const;
    fc.assert(
      fc.property(some, fc.constantFrom(..."abcdef"), (found, key) => {
        const at = key as keyof typeof worse;
        const after = { ...found, [at]: found[at] * worse[at] };
        expect(rankOf(stateOf(change(after)))).toBeLessThanOrEqual(rankOf(stateOf(change(found))));
      }),
    );
  });
});

describe("the least margin of a verdict", () => {
  it("is the driving one, with driving harder than parked, and says what ends it", () => {
    expect(verdictOf(findings({ parked: 2, driving: 1.7 })).least).toEqual({
      name: "the overhang",
      angle: 128,
      margin: 1.7,
      over: null,
      driving: true,
      governs: ["climb"],
    });
  });

  it("is the parked one, with both alike", () => {
    expect(verdictOf(findings({ parked: 2 })).least).toMatchObject({ driving: false, governs: ["slide"] });
  });
});

describe("the nearest limit of a verdict", () => {
  it("is the one used furthest among those that burn or burst: a voltage is only a cause", () => {
    const { nearest } = verdictOf(findings({ ratings: { "motor-voltage": 0.99, "cell-current": 0.9 } }));
    expect(nearest).toMatchObject({ key: "cell-current", ratio: expect.closeTo(0.9, 12) });
  });
});
