import { describe, expect, it } from "vitest";
import { type DischargeReading, type DischargeRequest, fitDischarge } from "#shared/fit/dischargeFit.ts";
import { nonFalling } from "#shared/fit/monotone.ts";
import { NotEnoughDataError } from "#shared/numeric/errors.ts";
import { createRandom } from "#shared/numeric/random.ts";
import { openCircuitCurve } from "#shared/physics/pack.ts";
import { expectOutOfRange } from "#tests/support/outOfRange.ts";

/** Invented, with the shoulder and the knee of a lithium cell. */
const truth = openCircuitCurve([
  [0, 3.1],
  [0.05, 3.42],
  [0.15, 3.58],
  [0.4, 3.7],
  [0.7, 3.88],
  [0.9, 4.06],
  [1, 4.19],
]);
const CAPACITY = 2340;
const RESISTANCE = 0.032;

/** Readings at even charges; the current by its place. */
function discharge(count: number, current: (i: number) => number, noise = 0, seed = 3): DischargeReading[] {
  const random = createRandom(seed);
  return Array.from({ length: count }, (_, i) => {
    const z = 1 - i / (count - 1);
    const off = noise * (random.uniform() + random.uniform() + random.uniform() - 1.5) * 2;
    return {
      drawn: (1 - z) * CAPACITY,
      voltage: truth(z) - RESISTANCE * current(i) + off,
      current: current(i),
    };
  });
}

const asked = (readings: DischargeReading[], change: Partial<DischargeRequest> = {}): DischargeRequest => ({
  runs: [{ readings, emptied: true }],
  knownResistance: null,
  knownCapacity: null,
  ...change,
});

function worst(curve: readonly (readonly [number, number])[], from = 0): number {
  const found = openCircuitCurve(curve);
  const places = Array.from({ length: 101 }, (_, i) => i / 100).filter((z) => z >= from);
  return Math.max(...places.map((z) => Math.abs(found(z) - truth(z))));
}

describe("fitDischarge, of synthetic discharges", () => {
  it("with a rest after every load: finds resistance, capacity and curve", () => {
    const fit = fitDischarge(asked(discharge(81, (i) => (i % 2 === 0 ? 0 : 2.4))));
    expect(fit.resistanceFrom).toBe("rests");
    expect(fit.resistance).toBeCloseToRelative(RESISTANCE, 0.02);
    expect(fit.capacity).toBeCloseToRelative(CAPACITY, 1e-12);
    expect(worst(fit.curve, 0.05)).toBeLessThan(0.004);
    expect(fit.warnings).toEqual([]);
  });

  it("at two currents in turn, with 3 mV of noise: within its own error, in 60 of 60 trials within four", () => {
    for (let seed = 1; seed <= 60; seed++) {
      const fit = fitDischarge(asked(discharge(80, (i) => (i % 2 === 0 ? 0.4 : 3), 0.003, seed)));
      expect(fit.resistanceFrom).toBe("currents");
      expect(Math.abs(fit.resistance - RESISTANCE)).toBeLessThan(4 * (fit.resistanceError ?? 0) + 2e-4);
    }
  });

  it("at one current with the resistance known: the curve lies R·I above the readings, exactly", () => {
    const readings = discharge(30, () => 1.5);
    const fit = fitDischarge(asked(readings, { knownResistance: RESISTANCE }));
    expect(fit.resistanceFrom).toBe("known");
    expect(fit.warnings.map(({ code }) => code)).toEqual(["resistance-not-told"]);
    expect(fit.curve).toHaveLength(30);
    fit.curve.forEach(([z, v]) => {
      expect(v).toBeCloseToRelative(truth(Math.min(1, Math.max(0, z))), 1e-5);
    });
  });

  it("at rest throughout: needs no resistance", () => {
    const fit = fitDischarge(asked(discharge(25, () => 0)));
    expect(fit.resistanceFrom).toBe("known");
    expect(worst(fit.curve)).toBeLessThan(0.01);
  });

  it("stopped before: takes the capacity as known, and a straight end of at most 5 %", () => {
    const readings = discharge(60, (i) => (i % 2 === 0 ? 0 : 2.4)).slice(0, 58);
    const request = asked(readings, { knownCapacity: CAPACITY });
    const fit = fitDischarge({ ...request, runs: [{ readings, emptied: false }] });
    expect(fit.capacityFrom).toBe("known");
    expect(fit.curve[0][0]).toBe(0);
    expect(fit.warnings.map(({ code }) => code)).toContain("curve-end-extended");
  });

  it("noise that runs against the order: the curve never falls as charge rises, and it is said", () => {
    const fit = fitDischarge(asked(discharge(40, () => 0, 0.03)));
    for (let i = 1; i < fit.curve.length; i++)
      expect(fit.curve[i][1]).toBeGreaterThanOrEqual(fit.curve[i - 1][1]);
    expect(fit.warnings.map(({ code }) => code)).toContain("curve-made-monotone");
  });

  it("two discharges of one pack: each by its own charge, the capacity their mean", () => {
    const first = discharge(41, (i) => (i % 2 === 0 ? 0 : 2));
    const second = discharge(41, (i) => (i % 2 === 0 ? 0 : 2)).map((row) => ({
      ...row,
      drawn: 0.9 * row.drawn,
    }));
    const runs = [first, second].map((readings) => ({ readings, emptied: true }));
    const fit = fitDischarge({ runs, knownResistance: null, knownCapacity: null });
    expect(fit.capacity).toBeCloseToRelative(0.95 * CAPACITY, 1e-12);
    expect(fit.resistance).toBeCloseToRelative(RESISTANCE, 0.05);
    expect(fit.residuals.map((rows) => rows.length)).toEqual([41, 41]);
  });
});

const rising = (z: number) => RESISTANCE * (1 + 1.2 * Math.exp(-z / 0.12));

/** Each charge at rest and under load. */
function inPairs(resistance: (z: number) => number, seed: number): DischargeReading[] {
  const random = createRandom(seed);
  const noise = () => 0.002 * (random.uniform() + random.uniform() + random.uniform() - 1.5);
  return Array.from({ length: 31 }, (_, i) => 1 - i / 30).flatMap((z) =>
    [0, 2.4].map((current) => ({
      drawn: (1 - z) * CAPACITY,
      voltage: truth(z) - resistance(z) * current + noise(),
      current,
    })),
  );
}

/** Drawn at two currents, the heavier one until it reaches the minimum. */
function atTwoCurrents(resistance: (z: number) => number) {
  return [1.2, 4.8].map((current) => ({
    emptied: true,
    readings: Array.from({ length: 51 }, (_, i) => 1 - i / 50)
      .map((z) => ({
        drawn: (1 - z) * CAPACITY,
        voltage: truth(z) - resistance(z) * current,
        current,
      }))
      .filter(({ voltage }) => voltage > truth(0) - 0.04),
  }));
}

describe("fitDischarge, of a cell whose resistance varies with its charge", () => {
  it("finds that resistance in 60 of 60 trials, each within four of its errors and a tenth", () => {
    for (let seed = 1; seed <= 60; seed++) {
      const { resistanceByCharge } = fitDischarge(asked(inPairs(rising, seed)));
      expect(resistanceByCharge?.length).toBeGreaterThanOrEqual(4);
      for (const { charge, resistance, standardError } of resistanceByCharge ?? []) {
        expect(Math.abs(resistance - rising(charge))).toBeLessThan(4 * standardError + 0.1 * rising(charge));
      }
    }
  });

  it("does not, in any of 60 trials, find one in a cell of one resistance", () => {
    for (let seed = 1; seed <= 60; seed++)
      expect(fitDischarge(asked(inPairs(() => RESISTANCE, seed))).resistanceByCharge).toBeNull();
  });

  it("nor in discharges that alternate between load and rest through the knee", () => {
    for (let seed = 1; seed <= 20; seed++)
      expect(
        fitDischarge(asked(discharge(81, (i) => (i % 2 === 0 ? 0 : 2.4), 0.001, seed))).resistanceByCharge,
      ).toBeNull();
  });

  it("takes the sag out of each reading by the resistance at its charge", () => {
    const fit = fitDischarge(asked(inPairs(rising, 1)));
    expect(worst(fit.curve, 0.1)).toBeLessThan(0.006);
    const one = fitDischarge(asked(inPairs(() => RESISTANCE, 1)));
    const rms = (found: typeof fit) =>
      Math.sqrt(found.residuals[0].reduce((sum, { voltage }) => sum + voltage ** 2, 0) / 62);
    expect(rms(fit)).toBeLessThan(4 * rms(one));
  });
});

describe("fitDischarge, of discharges at different currents", () => {
  it("tells the resistance from one to the other, by the charge of the gentler one", () => {
    const runs = atTwoCurrents(() => RESISTANCE);
    expect(runs[1].readings.length).toBeLessThan(runs[0].readings.length);
    const fit = fitDischarge({ runs, knownResistance: null, knownCapacity: null });
    expect(fit.resistanceFrom).toBe("discharges");
    expect(fit.resistance).toBeCloseToRelative(RESISTANCE, 1e-6);
    expect(fit.resistanceByCharge).toBeNull();
    expect(fit.capacity).toBeCloseToRelative(CAPACITY, 0.021);
    expect(fit.residuals.flat().every(({ voltage }) => Math.abs(voltage) < 0.003)).toBe(true);
  });

  it("tells it by charge: R = (V_1 − V_2)/(I_2 − I_1) by hand", () => {
    const runs = atTwoCurrents(rising);
    const { resistanceByCharge } = fitDischarge({ runs, knownResistance: null, knownCapacity: null });
    const [gentle, heavy] = runs.map(({ readings }) => readings);
    for (const { charge, resistance } of resistanceByCharge?.slice(1) ?? []) {
      const near = heavy.reduce((best, row, i) =>
        Math.abs(1 - row.drawn / CAPACITY - charge) < Math.abs(1 - best.drawn / CAPACITY - charge)
          ? heavy[i]
          : best,
      );
      const beside = gentle.find(({ drawn }) => drawn === near.drawn);
      const byHand = ((beside?.voltage ?? Number.NaN) - near.voltage) / (4.8 - 1.2);
      expect(resistance).toBeCloseToRelative(byHand, 0.08);
    }
    expect(resistanceByCharge?.length).toBeGreaterThan(4);
  });

  it("at one and the same current can't: asks for rests, or another current", () => {
    const [first] = atTwoCurrents(rising);
    expect(() => fitDischarge({ runs: [first, first], knownResistance: null, knownCapacity: null })).toThrow(
      NotEnoughDataError,
    );
  });
});

describe("fitDischarge, of readings that can't tell", () => {
  const loaded = discharge(30, () => 1.5);
  const refusal = (request: DischargeRequest): string => {
    try {
      fitDischarge(request);
    } catch (error) {
      if (error instanceof NotEnoughDataError) return error.need;
      throw error;
    }
    return "";
  };

  it.each([
    [
      "a full pack at rest, nothing drawn yet",
      asked([{ drawn: 0, voltage: 4.15, current: 0 }]),
      /^Draw on and read voltage and current/,
    ],
    ["one current, no resistance known", asked(loaded), /Rest for a minute/],
    [
      "a current that only drifts with the charge",
      asked(discharge(30, (i) => 1 + i / 60)),
      /Rest for a minute/,
    ],
    ["too few readings for a resistance", asked(discharge(4, (i) => (i % 2 ? 0 : 2))), /Rest for a minute/],
    [
      "stopped at half, capacity known",
      asked(loaded, {
        runs: [{ readings: loaded.slice(0, 15), emptied: false }],
        knownCapacity: CAPACITY,
        knownResistance: 0.03,
      }),
      /Draw on/,
    ],
    [
      "no discharge to empty, capacity unknown",
      asked(loaded, { runs: [{ readings: loaded, emptied: false }], knownResistance: 0.03 }),
      /Draw on/,
    ],
    ["not from full", asked(loaded.slice(5), { knownResistance: 0.03 }), /Start with the full pack/],
    ["two charges alone", asked([loaded[0], loaded[29]], { knownResistance: 0.03 }), /ten or more charges/],
  ])("%s: says what to measure next", (_, request, need) => {
    expect(refusal(request)).toMatch(need);
  });

  it.each([0, 29])(
    "a first or last reading a millionth of a coulomb off (reading %i): the curve still rises",
    (at) => {
      const off = loaded.map((row, i) => (i === at ? { ...row, drawn: Math.abs(row.drawn - 1e-6) } : row));
      const { curve } = fitDischarge(
        asked(off, {
          runs: [{ readings: off, emptied: false }],
          knownCapacity: CAPACITY,
          knownResistance: RESISTANCE,
        }),
      );
      expect(curve[0][0]).toBe(0);
      expect(curve[curve.length - 1][0]).toBe(1);
      expect(curve.slice(1).every(([charge], i) => charge > curve[i][0])).toBe(true);
    },
  );

  it.each([
    ["runs.0.readings.0.voltage", { ...loaded[0], voltage: 0 }],
    ["runs.0.readings.0.voltage", { ...loaded[0], voltage: Number.NaN }],
    ["runs.0.readings.0.current", { ...loaded[0], current: -1 }],
    ["runs.0.readings.0.drawn", { ...loaded[0], drawn: Number.POSITIVE_INFINITY }],
  ])("with a wrong %s: throws and names it", (path, row) => {
    expectOutOfRange(() => fitDischarge(asked([row, ...loaded.slice(1)])), path);
  });
});

describe("nonFalling", () => {
  it("pools what breaks the order, by weight", () => {
    const series = [1, 3, 2, 5].map((value, i) => ({ value, weight: i === 1 ? 3 : 1 }));
    expect(nonFalling(series)).toEqual([1, 2.75, 2.75, 5]);
    expect(nonFalling([3, 2, 1].map((value) => ({ value, weight: 1 })))).toEqual([2, 2, 2]);
    expect(nonFalling([])).toEqual([]);
  });
});
