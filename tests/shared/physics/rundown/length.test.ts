import { describe, expect, it } from "vitest";
import type { Moment, RundownLaw } from "#shared/physics/rundown/law.ts";
import { chargeLeftAfter } from "#shared/physics/rundown/length.ts";

/** A law whose charge falls at a given rate and whose cell has a given voltage, nothing else of it matters here. */
function lawOf(rate: (charge: number) => number, voltage: (charge: number) => number) {
  let asked = 0;
  const law: RundownLaw = {
    momentAt: (time, charge, rise) => {
      asked += 1;
      const state = { time, charge, rise, chargeRate: -rate(charge), cellVoltage: voltage(charge) };
      return { ...state, works: true } as Moment;
    },
    notesAt: () => [],
  };
  return { law, asked: () => asked };
}

const volts = (charge: number) => 3 + charge;

describe("chargeLeftAfter", () => {
  // Exact: a steady rate r empties z₀ in z₀/r.
  it.each([
    [1, 0],
    [1, 25],
    [0.8, 60],
  ])("at a steady rate of 1/100 s from %s: z₀ − t/100 after %s s", (from, time) => {
    const { law } = lawOf(() => 0.01, volts);
    expect(chargeLeftAfter(law, law.momentAt(0, from, 0), 2, time)).toBeCloseTo(from - time / 100, 12);
  });

  // Exact: dz/dt = −k·z gives z = z₀·e^(−kt).
  it("at a rate in step with the charge: falls as an exponential, to a thousandth", () => {
    const { law } = lawOf((charge) => 0.02 * charge, volts);
    expect(chargeLeftAfter(law, law.momentAt(0, 1, 0), 2, 50)).toBeCloseTo(Math.exp(-1), 3);
  });

  it("after the cell is empty, or has come down to its minimum voltage: null", () => {
    const { law } = lawOf(() => 0.01, volts);
    const start = law.momentAt(0, 1, 0);
    expect(chargeLeftAfter(law, start, 2, 101)).toBeNull();
    expect(chargeLeftAfter(law, start, 3.5, 60)).toBeNull();
    expect(chargeLeftAfter(law, start, 3.5, 40)).toBeCloseTo(0.6, 12);
  });

  it("where nothing is drawn: the charge stays, however long", () => {
    const { law } = lawOf(() => 0, volts);
    expect(chargeLeftAfter(law, law.momentAt(0, 0.7, 0), 2, 1e6)).toBe(0.7);
  });

  it("of any run: asks for a few dozen moments", () => {
    const { law, asked } = lawOf(() => 1e-9, volts);
    chargeLeftAfter(law, law.momentAt(0, 1, 0), 2, 1e5);
    expect(asked()).toBeLessThan(70);
  });
});
