import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { burstSpeed, discStress, rimStress, rotorStress, speedFactor } from "#shared/physics/limits/disc.ts";
import { expectOutOfRange } from "#tests/support/outOfRange.ts";

const disc = { outerRadius: 0.021, boreRadius: 0.001, density: 1240, poisson: 0.35 };
const rim = { bladeMass: 1e-3, bladeRadius: 0.015, rimThickness: 0.002 };

describe("disc stress", () => {
  it("at rest is exactly none and grows with the square of speed", () => {
    expect(discStress(disc, 0)).toBe(0);
    expect(discStress(disc, 4000)).toBeCloseToRelative(4 * discStress(disc, 2000), 1e-14);
  });

  // A thin ring: σ = ρω²r².
  it("of a bore nearly as wide as the disc is that of a thin ring", () => {
    const ring = { ...disc, boreRadius: 0.021 * (1 - 1e-9) };
    expect(discStress(ring, 3000)).toBeCloseToRelative(1240 * 3000 ** 2 * 0.021 ** 2, 1e-8);
  });

  it.each([
    ["rotor.outerRadius", { outerRadius: 0 }],
    ["rotor.boreRadius", { boreRadius: -1e-3 }],
    ["rotor.boreRadius", { boreRadius: 0.021 }],
    ["rotor.materialDensity", { density: 0 }],
    ["rotor.poisson", { poisson: 0.51 }],
    ["rotor.poisson", { poisson: Number.NaN }],
  ])("refuses by %s a disc of %o", (quantity, change) => {
    expectOutOfRange(() => discStress({ ...disc, ...change }, 1000), quantity);
    expectOutOfRange(() => rimStress({ ...disc, ...change }, rim, 1000), quantity);
  });

  it("refuses a speed below 0", () => {
    expectOutOfRange(() => discStress(disc, -1), "speed");
    expectOutOfRange(() => rimStress(disc, rim, Number.NaN), "speed");
  });
});

describe("rim stress", () => {
  // Balance of the blades' pull: half of it is taken by two cuts through a ring, F = 2∫q·sin → σ·2(r_o − r_i)t = q·2·r_o·t.
  it("of a thin ring carries the blades' pull over its two cut faces", () => {
    const ring = { ...disc, boreRadius: 0.021 * (1 - 1e-6) };
    const pull = rim.bladeMass * 3000 ** 2 * rim.bladeRadius;
    const cut = 0.021 * 1e-6 * rim.rimThickness;
    expect(rimStress(ring, rim, 3000)).toBeCloseToRelative(pull / (2 * Math.PI * cut), 1e-5);
  });

  it("of a pierced disc is twice that of one without a bore", () => {
    const pierced = rimStress({ ...disc, boreRadius: 1e-9 }, rim, 3000);
    expect(pierced).toBeCloseToRelative(2 * rimStress({ ...disc, boreRadius: 0 }, rim, 3000), 1e-12);
  });

  it("adds to the disc's own, and without blades adds nothing", () => {
    expect(rotorStress(disc, rim, 3000)).toBe(discStress(disc, 3000) + rimStress(disc, rim, 3000));
    expect(rotorStress(disc, null, 3000)).toBe(discStress(disc, 3000));
  });

  it.each([
    ["rotor.bladeMass", { bladeMass: -1 }],
    ["rotor.bladeRadius", { bladeRadius: Number.NaN }],
    ["rotor.rimThickness", { rimThickness: 0 }],
  ])("refuses by %s blades of %o", (quantity, change) => {
    expectOutOfRange(() => rimStress(disc, { ...rim, ...change }, 1000), quantity);
  });
});

describe("strength", () => {
  it("is reached exactly at the burst speed, at any speed by its factor", () => {
    fc.assert(
      fc.property(fc.double({ min: 1e6, max: 1e8, noNaN: true }), (strength) => {
        const burst = burstSpeed(disc, rim, strength);
        expect(rotorStress(disc, rim, burst)).toBeCloseToRelative(strength, 1e-13);
        expect(speedFactor(strength, rotorStress(disc, rim, 1500)) * 1500).toBeCloseToRelative(burst, 1e-13);
      }),
    );
  });

  it("at rest is endlessly far, and refuses what has none", () => {
    expect(speedFactor(3e7, 0)).toBe(Number.POSITIVE_INFINITY);
    expectOutOfRange(() => speedFactor(0, 1), "rotor.strength");
    expectOutOfRange(() => speedFactor(1, -1), "stress");
  });
});
