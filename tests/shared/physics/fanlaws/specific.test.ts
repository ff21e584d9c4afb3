import { describe, expect, it } from "vitest";
import { suitsDuty } from "#shared/decide/size/suits.ts";
import { coefficientsOf } from "#shared/physics/fanlaws/coefficients.ts";
import { CORDIER_RANGE, cordierSpeed } from "#shared/physics/fanlaws/cordier.ts";
import { specificNumbers } from "#shared/physics/fanlaws/specific.ts";
import { expectOutOfRange } from "#tests/support/outOfRange.ts";

describe("specific speed and diameter", () => {
  // By hand: ω = 2000 rad/s, Q = 4 L/s, Δp = 600 Pa, ρ = 1.2: Δp/ρ = 500.
  const state = { speed: 2000, diameter: 0.05, flow: 0.004, pressure: 600, density: 1.2 };

  it("of φ and ψ of that state: N_s = ω√Q/(Δp/ρ)^¾, D_s = D(Δp/ρ)^¼/√Q", () => {
    const { phi, psi } = coefficientsOf({ ...state, shaftPower: null }, state);
    const { speed, diameter } = specificNumbers(phi, psi);
    expect(speed).toBeCloseToRelative((2000 * Math.sqrt(0.004)) / 500 ** 0.75, 1e-12);
    expect(diameter).toBeCloseToRelative((0.05 * 500 ** 0.25) / Math.sqrt(0.004), 1e-12);
  });

  it.each([0, -1, Number.NaN])("of a φ or ψ of %s: refused by name", (bad) => {
    expectOutOfRange(() => specificNumbers(bad, 1), "phi");
    expectOutOfRange(() => specificNumbers(0.1, bad), "psi");
  });
});

describe("the Cordier line", () => {
  // Wright's two laws (from memory) at 2.84: 9.0·2.84^−2.103 = 1.0019, 3.25·2.84^−1.126 = 1.0033.
  it("its two laws meet at a specific speed of 1, within half a per cent", () => {
    expect(cordierSpeed(2.84)).toBeCloseTo(1.002, 2);
    expect(cordierSpeed(2.8400001)).toBeCloseToRelative(cordierSpeed(2.84), 5e-3);
  });

  it("falls all along its range, and is given nowhere else", () => {
    const [least, most] = CORDIER_RANGE;
    let before = Number.POSITIVE_INFINITY;
    for (let d = least; d <= most; d += 0.05) {
      expect(cordierSpeed(d)).toBeLessThan(before);
      before = cordierSpeed(d);
    }
    expectOutOfRange(() => cordierSpeed(0.5), "specificDiameter");
    expectOutOfRange(() => cordierSpeed(11), "specificDiameter");
  });
});

describe("suitsDuty", () => {
  // ψ = 1 − 16φ², λ = 0.05 + φ: η = φ(1 − 16φ²)/(0.05 + φ); its best where (1 − 48φ²)(0.05 + φ) = φ − 16φ³.
  const rotor = { psi: [1, 0, -16], lambda: [0.05, 1], phiMax: 0.25 };

  it("at the best flow: all of the best efficiency, the size as it is", () => {
    let [lo, hi] = [0.01, 0.2];
    for (let i = 0; i < 200; i++) {
      const phi = (lo + hi) / 2;
      if ((1 - 48 * phi * phi) * (0.05 + phi) > phi - 16 * phi ** 3) lo = phi;
      else hi = phi;
    }
    const at = suitsDuty(rotor, { phi: lo, diameter: 0.05 });
    expect(at?.share).toBeCloseToRelative(1, 1e-9);
    expect(at?.diameter).toBeCloseToRelative(0.05, 1e-6);
    expect(at?.best.speed).toBeCloseToRelative(specificNumbers(lo, 1 - 16 * lo * lo).speed, 1e-6);
  });

  it("beyond it: less, a higher specific speed as used, a larger rotor that would suit", () => {
    const at = suitsDuty(rotor, { phi: 0.2, diameter: 0.05 });
    expect(at?.share).toBeLessThan(0.7);
    expect(at?.used.speed).toBeGreaterThan(at?.best.speed ?? 0);
    expect(at?.diameter).toBeGreaterThan(0.05);
  });

  it("of a power that does not belong to the pressure, or no flow: null", () => {
    expect(suitsDuty({ ...rotor, lambda: [0, 0.5] }, { phi: 0.1, diameter: 0.05 })).toBeNull();
    expect(suitsDuty(rotor, { phi: 0, diameter: 0.05 })).toBeNull();
  });
});
