import { describe, expect, it } from "vitest";
import { sumOf } from "#shared/book/mass/ledger.ts";
import { type Limits, limitsOf } from "#shared/decide/limits/limits.ts";
import { solveSwaps } from "#shared/decide/swaps/swaps.ts";
import { type PredictInput, predict } from "#shared/physics/predict.ts";

/** Facts of the trade: common practice, no source. Each is an order of magnitude or a direction, no measured value. */
const SMALL_CUP: PredictInput = {
  air: { temperature: 293.15, pressure: 101325, humidity: 0.5 },
  rotor: {
    diameter: 0.03,
    psi: [1, -1.5, -30],
    lambda: [0.03, 1.2],
    phiMin: 0,
    phiMax: 0.16,
    sizeCorrection: null,
  },
  motor: { kv: 7000, resistance: 1.2, frictionTorque: 1.5e-4, viscousTorque: 0, thermalResistance: null },
  pack: { series: 1, parallel: 1, openCircuitVoltage: 3.7, cellResistance: 0.08, wireResistance: 0.03 },
  supply: { duty: 1, driverResistance: 0, auxCurrent: 0 },
  skirt: {
    perimeter: 0.25,
    area: 0.0045,
    gap: 0.0006,
    roughness: 0,
    land: 0.002,
    edge: "square",
    openings: [],
    measuredLeak: null,
  },
  vehicle: {
    mass: 0.03,
    wheelFriction: 0.7,
    skirtFriction: 0.3,
    skirtShare: 0,
    rollingResistance: 0.02,
    driven: "both",
    wheelbase: 0.08,
    track: 0.07,
    cgHeight: 0.012,
    cgFromRear: 0.04,
    suctionFromRear: 0.04,
    jolt: 0,
    jetArea: null,
    jetAngle: 0,
  },
};
const withGap = (gap: number): PredictInput => ({ ...SMALL_CUP, skirt: { ...SMALL_CUP.skirt, gap } });

describe("one small printed rotor on a single 3.7 V lithium cell, through a palm-sized cup", () => {
  // Common practice, no source: a pull of the order of 65 grams-force, 0.3–1.5 N over plausible gaps.
  it.each([0.0005, 0.0007, 0.001])("at a gap of %s m pulls between 0.3 and 1.5 N", (gap) => {
    const { suction } = predict(withGap(gap));
    expect(suction).toBeGreaterThan(0.3);
    expect(suction).toBeLessThan(1.5);
  });
});

describe("a vehicle with μ < 1, at one and the same pull", () => {
  // Common practice, no source: such builds run well overhead and struggle on walls.
  it.each([0.3, 0.5, 0.7, 0.95])(
    "with μ = %s has a smaller margin on the wall than on the ceiling",
    (wheelFriction) => {
      const { attitudes } = predict(
        { ...SMALL_CUP, vehicle: { ...SMALL_CUP.vehicle, wheelFriction } },
        [90, 180],
      );
      const [wall, ceiling] = attitudes.map((attitude) => attitude.parked.margin ?? 0);
      expect(wall).toBeLessThan(ceiling);
    },
  );
});

/** A small fan rated 12 V and 0.18 A, its constants plausible and invented; class 130 wire. */
function smallFan(voltage: number): Limits {
  const { air, skirt, vehicle } = SMALL_CUP;
  const cell = {
    capacity: 1e6,
    minimumVoltage: 1,
    resistance: 0,
    curve: [
      [0, voltage],
      [1, voltage],
    ],
  } as const;
  return limitsOf({
    build: {
      air,
      skirt: { ...skirt, gap: 0.001 },
      vehicle,
      rotor: { ...SMALL_CUP.rotor, diameter: 0.04 },
      motor: {
        kv: 1000,
        resistance: 6,
        frictionTorque: 4e-4,
        viscousTorque: 0,
        thermalResistance: 50,
        thermalTimeConstant: 60,
      },
      pack: { series: 1, parallel: 1, wireResistance: 0, cell },
      supply: { duty: 1, driverResistance: 0, auxCurrent: 0 },
    },
    motor: { windingLimit: 403.15, ratedVoltage: 12, maxCurrent: null },
    rotor: null,
    rotorMass: null,
    fallHeight: null,
    estimated: [],
  });
}

describe("a small fan rated 12 V", () => {
  const winding = (voltage: number) => {
    const { limits, warmUp } = smallFan(voltage);
    const ratio = limits.find(({ key }) => key === "winding")?.ratio ?? Number.NaN;
    return { ratio, timeToLimit: warmUp?.timeToLimit ?? null };
  };

  // Common practice, no source: such a fan survives a while on 24 V and burns when taken further.
  it("at 12 V hardly gets warm, and at 24 V comes near its winding's limit without burning in minutes", () => {
    expect(winding(12)).toMatchObject({ timeToLimit: null });
    expect(winding(12).ratio).toBeLessThan(0.2);
    expect(winding(24).ratio).toBeGreaterThan(0.8);
    expect(winding(24).timeToLimit ?? Number.POSITIVE_INFINITY).toBeGreaterThan(120);
  });

  it("beyond 24 V burns: within a minute at 36 V, within seconds at 48 V", () => {
    expect(winding(36).timeToLimit).toBeLessThan(60);
    expect(winding(48).timeToLimit).toBeLessThan(15);
    expect(smallFan(48).first.sentence).toMatch(
      /^The winding reaches 130\u202f°C after \d+ s from cold: the motor burns first/,
    );
  });

  // Common practice, no source: pressure grows with the square of the voltage at most, heat with the cube or worse.
  it("on twice its voltage makes up to 4 times the pressure and more than 8 times the heat", () => {
    const { overVoltage } = smallFan(24);
    expect(overVoltage?.ratio).toBeCloseToRelative(2, 1e-12);
    expect(overVoltage?.pressureRatio).toBeGreaterThan(3);
    expect(overVoltage?.pressureRatio).toBeLessThan(4);
    expect(overVoltage?.heatRatio).toBeGreaterThan(8);
  });
});

describe("the masses of a build, swap by swap", () => {
  // Common practice, no source: of 105 g, motors from 19 to 6 g and wheels from 29 to 2 g bring it to about 65 g, electronics from 27 to 6 g to about 45 g, before a cover.
  const lines = [
    { quantity: 1, mass: 0.03, alternatives: [] },
    { quantity: 1, mass: 0.019, alternatives: [{ mass: 0.006, price: 12, leadTime: 14 }] },
    { quantity: 1, mass: 0.029, alternatives: [{ mass: 0.002, price: 4, leadTime: 3 }] },
    { quantity: 1, mass: 0.027, alternatives: [{ mass: 0.006, price: 25, leadTime: 21 }] },
  ];
  const best = (allowed: number, by: "price" | "count") => solveSwaps({ lines, allowed, by }).solutions[0];

  it("leave the ledger 40 g too heavy for 65 g, then nothing to spare, then about 20 g, before a cover", () => {
    const order = [[], [1, 2], [1, 2, 3]];
    const sums = order.map(
      (swapped) =>
        sumOf(
          lines.map(({ quantity, mass, alternatives }, i) => ({
            quantity,
            mass: swapped.includes(i) ? alternatives[0].mass : mass,
            uncertainty: 0,
          })),
        ).value,
    );
    const headroom = sums.map((mass) => 0.065 - mass);
    [-0.04, 0, 0.02].forEach((stated, i) => {
      expect(Math.abs(headroom[i] - stated)).toBeLessThanOrEqual(0.001 + 1e-12);
    });
  });

  it("weigh 105 g as they are, 40 g too much for 65 g", () => {
    expect(best(0.105, "price")).toMatchObject({ mass: 0.105, count: 0 });
  });

  it.each(["price", "count"] as const)("come to 65 g by motors and wheels, best by %s", (by) => {
    const set = best(0.065, by);
    expect(set.choices).toEqual([null, 0, 0, null]);
    expect(Math.abs(set.mass - 0.065)).toBeLessThanOrEqual(0.001);
  });

  it("come to about 45 g by the electronics as well", () => {
    const set = best(0.046, "price");
    expect(set.choices).toEqual([null, 0, 0, 0]);
    expect(Math.abs(set.mass - 0.045)).toBeLessThanOrEqual(0.001 + 1e-12);
  });
});
