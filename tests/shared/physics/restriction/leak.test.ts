import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { leakWorkings } from "#shared/physics/leakWorkings.ts";
import {
  isSealed,
  type Leak,
  leakFlow,
  leakNotes,
  leakSlope,
  lipShare,
} from "#shared/physics/restriction/leak.ts";
import { gapFlow, gapFrictionPressure } from "#shared/physics/restriction/lipGap.ts";
import { lawOf, type Restriction } from "#shared/physics/restriction/restriction.ts";
import { expectOutOfRange } from "#tests/support/outOfRange.ts";
import { RESTRICTION_EXAMPLES } from "#tests/support/restrictions.ts";

const air = { density: 1.2, viscosity: 1.81e-5, pressure: 101_325 };
const all = Object.values(RESTRICTION_EXAMPLES);
const some = fc.uniqueArray(fc.constantFrom(...all), { minLength: 1 });
const pressures = fc.double({ min: 0.01, max: 5000, noNaN: true });

describe("each kind of restriction", () => {
  it.each(all)("$kind rises strictly from nothing at no pressure", (one) => {
    const { flow } = lawOf(one);
    expect(flow(one, air, 0)).toBe(0);
    fc.assert(
      fc.property(pressures, (pressure) => {
        expect(flow(one, air, 1.001 * pressure)).toBeGreaterThan(flow(one, air, pressure));
      }),
    );
  });

  it.each(all)("$kind has the slope of its flow", (one) => {
    const { flow, slope } = lawOf(one);
    for (const pressure of [3, 120, 2500]) {
      const step = 1e-4 * pressure;
      const rise = flow(one, air, pressure + step) - flow(one, air, pressure - step);
      expect(slope(one, air, pressure)).toBeCloseToRelative(rise / (2 * step), 1e-5);
    }
  });

  // What one crossing of rotor and leak is proven for: docs/method/choosing.md.
  it.each(all.filter(({ kind }) => kind !== "holes"))(
    "$kind needs between the first and the second power of its flow",
    (one) => {
      const { flow, slope } = lawOf(one);
      for (const pressure of [0.1, 3, 30, 120, 700, 2500]) {
        const power = flow(one, air, pressure) / (pressure * slope(one, air, pressure));
        expect(power).toBeGreaterThan(1 - 1e-6);
        expect(power).toBeLessThan(2 + 1e-6);
      }
    },
  );

  it.each(all)("$kind asks the air for what its law reads, and for nothing else", (one) => {
    const { flow, air: needed } = lawOf(one);
    for (const name of ["density", "viscosity", "pressure"] as const) {
      const other = flow(one, { ...air, [name]: 1.01 * air[name] }, 300);
      expect(other !== flow(one, air, 300)).toBe(needed.includes(name));
    }
  });

  it.each(all)("$kind names each of its numbers, and its working is its own flow", (one) => {
    const { words } = lawOf(one);
    const own = Object.keys(one).filter((name) => name !== "kind");
    const unnamed = one.kind === "measuredLeak" ? ["density", "viscosity", "perimeter"] : [];
    expect([...Object.keys(words.numbers), ...unnamed].sort()).toEqual(own.sort());
    const [working, ...others] = leakWorkings([one], air, 300);
    expect(others).toEqual([]);
    expect(working.result.value).toBe(leakFlow([one], air, 300));
    expect(working.values.every(({ value }) => Number.isFinite(value))).toBe(true);
  });
});

describe("restrictions side by side", () => {
  it("pass the sum of their flows, with the sum of their slopes, at any pressure", () => {
    fc.assert(
      fc.property(some, pressures, (leak, pressure) => {
        const flows = leak.map((one) => leakFlow([one], air, pressure));
        const slopes = leak.map((one) => leakSlope([one], air, pressure));
        const sum = (values: number[]) => values.reduce((total, value) => total + value, 0);
        expect(leakFlow(leak, air, pressure)).toBeCloseToRelative(sum(flows), 1e-14);
        expect(leakSlope(leak, air, pressure)).toBeCloseToRelative(sum(slopes), 1e-14);
      }),
    );
  });

  it("have a working each, and one of their sum", () => {
    const workings = leakWorkings(all, air, 300);
    const sum = workings[all.length];
    expect(workings).toHaveLength(all.length + 1);
    expect(sum.values.map(({ value }) => value)).toEqual(workings.slice(0, -1).map((w) => w.result.value));
    expect(sum.result.value).toBe(leakFlow(all, air, 300));
    expect(sum.equation).toBe("Q = Q₁ + Q₂ + Q₃ + Q₄ + Q₅ + Q₆");
  });
});

describe("the working of a leak", () => {
  it("of a lip gap: its numbers give the flow, and the pressure, by hand", () => {
    const [{ result, values, equation }] = leakWorkings([RESTRICTION_EXAMPLES.lipGap], air, 500);
    const { P, h, v, K, ρ, μ, ℓ } = Object.fromEntries(values.map(({ symbol, value }) => [symbol, value]));
    expect(equation).toMatch(/^Q = P·h·v; {2}Δp = /);
    expect(P * h * v).toBeCloseToRelative(result.value, 1e-12);
    const reynolds = (2 * ρ * v * h) / μ;
    const f = Math.max(96 / reynolds, 0.3164 / reynolds ** 0.25);
    expect(0.5 * ρ * v * v * (K + (f * ℓ) / (2 * h))).toBeCloseToRelative(500, 1e-9);
  });

  it("of a measured leak with an opening names no gap, but the law of each and their sum", () => {
    const { measuredLeak, opening, lipGap } = RESTRICTION_EXAMPLES;
    const workings = leakWorkings([{ ...lipGap, height: 0 }, measuredLeak, opening], air, 500);
    expect(workings.map(({ title }) => title)).toEqual([
      "flow through the measured leak",
      "flow through the opening",
      "flow through everything that leaks",
    ]);
    const byHand = 5e-5 * 500 ** 0.6 + 0.61 * 4e-6 * Math.sqrt((2 * 500) / 1.2);
    expect(workings[2].result.value).toBeCloseToRelative(byHand, 1e-12);
  });

  it("of a sealed skirt says that nothing leaks", () => {
    const [working, ...others] = leakWorkings([], air, 500);
    expect(others).toEqual([]);
    expect(working.equation).toBe("Q = 0: nothing leaks");
    expect(working.result.value).toBe(0);
    expect(working.source).not.toBe("");
  });
});

describe("a sealed skirt", () => {
  const shut: Restriction = { kind: "lipGap", perimeter: 0.25, height: 0, land: 3e-3, lossSum: 1.5 };
  const none: Restriction = { kind: "opening", area: 0 };

  it("passes nothing at any pressure, with a slope of 0", () => {
    for (const leak of [[], [shut, none]] satisfies Leak[]) {
      expect(isSealed(leak)).toBe(true);
      expect(leakFlow(leak, air, 500)).toBe(0);
      expect(leakSlope(leak, air, 500)).toBe(0);
    }
    for (const one of all) expect(isSealed([shut, one])).toBe(false);
  });

  it("pulls half of its land's width", () => {
    expect(lipShare([shut], air, 500)).toBe(0.5);
    expect(lipShare([], air, 500)).toBe(0.5);
  });

  it("refuses a pressure below 0", () => {
    expectOutOfRange(() => leakFlow([shut], air, -1), "pressure");
  });
});

describe("the share of the depression under the lip", () => {
  const lip = { perimeter: 0.25, height: 5e-4, land: 3e-3, lossSum: 1.5 };

  // σ = 1 − ½·Δp_f/Δp of each stretch, weighted by its length.
  it("is the mean of its stretches by their length, whatever leaks beside", () => {
    const deep = { ...lip, perimeter: 0.05, height: 9e-4 };
    const share = (gap: typeof lip) =>
      1 - (0.5 * gapFrictionPressure(gap, air, gapFlow(gap, air, 300))) / 300;
    const leak: Leak = [
      { kind: "lipGap", ...lip },
      { kind: "joint", ...deep, height: 5e-4, depth: 4e-4 },
      RESTRICTION_EXAMPLES.opening,
    ];
    const expected = (0.25 * share(lip) + 0.05 * share(deep)) / 0.3;
    expect(lipShare(leak, air, 300)).toBeCloseToRelative(expected, 1e-14);
  });
});

describe("notes on a leak", () => {
  it("are those of its kinds outside the range of their sources", () => {
    expect(leakNotes(all, air, 300)).toEqual([]);
    const wide: Restriction = { kind: "honeycomb", count: 4, diameter: 5e-3, length: 0.02 };
    const tiny: Restriction = { kind: "holes", diameter: 3e-4, thickness: 2e-5, count: 1 };
    expect(leakNotes([wide, tiny], air, 50).map(({ code }) => code)).toEqual([
      "honeycomb-turbulent",
      "hole-reynolds-low",
    ]);
  });

  it("of holes want the pressure of the air", () => {
    const { density, viscosity } = air;
    expectOutOfRange(
      () => leakFlow([RESTRICTION_EXAMPLES.holes], { density, viscosity }, 50),
      "air.pressure",
    );
  });
});
