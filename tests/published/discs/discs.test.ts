import { describe, expect, it } from "vitest";
import { discStress } from "#shared/physics/limits/disc.ts";

const radPerSecond = (rpm: number) => (rpm * Math.PI) / 30;

describe("largest stress of a turning disc", () => {
  // Ugural & Fenster, Advanced Strength and Applied Elasticity, Example 8.4 (p. 246): 211.8 MPa. Found; digits as printed by a public textbook companion.
  it("with a bore, steel at 6900 rpm, is the textbook's 211.7646 MPa", () => {
    const disc = { outerRadius: 0.25, boreRadius: 0.05, density: 7800, poisson: 0.3 };
    expect(discStress(disc, radPerSecond(6900))).toBeCloseToRelative(211764600.73, 1e-6);
  });

  // Ugural & Fenster, Example 8.4, second figure: the shrink fit on a solid steel shaft of E = 200 GPa that just comes loose at 6900 rpm is 0.0524957 mm.
  // By Hooke's law the bore grows by r·σ/E, as no pressure is left on it; the shaft by r³·(1 − ν)ρω²/(4E).
  it("with a bore, stretches it away from the shaft by the textbook's shrink fit, 5.249573e-5 m", () => {
    const [radius, modulus, speed] = [0.05, 200e9, radPerSecond(6900)];
    const disc = { outerRadius: 0.25, boreRadius: radius, density: 7800, poisson: 0.3 };
    const bore = (radius * discStress(disc, speed)) / modulus;
    const shaft = (radius ** 3 * (1 - 0.3) * 7800 * speed ** 2) / (4 * modulus);
    expect(bore - shaft).toBeCloseToRelative(5.24957318528e-5, 1e-6);
  });

  // Timoshenko & Goodier, Theory of Elasticity, art. 32: a pin hole doubles the stress at the centre. Found as a statement in teaching notes; derived. Limit r_i → 0.
  it("with a pin hole is twice that without", () => {
    const disc = { outerRadius: 0.1, boreRadius: 0, density: 7800, poisson: 0.3 };
    const pierced = { ...disc, boreRadius: 1e-9 };
    expect(discStress(pierced, 1000) / discStress(disc, 1000)).toBeCloseToRelative(2, 1e-12);
  });

  // Solid steel disc, 250 mm, 14 000 rpm: closed form, derived. A public page divides by (1 − ν), which is wrong for a thin disc.
  it("without a bore, steel at 14 000 rpm, is 108.74942 MPa", () => {
    const disc = { outerRadius: 0.125, boreRadius: 0, density: 7850, poisson: 0.3 };
    expect(discStress(disc, radPerSecond(14_000))).toBeCloseToRelative(108749420, 1e-7);
  });

  // Printed rotor, 60 mm, 1240 kg/m³, ν = 0.35, 30 000 rpm: closed form, derived, seven digits.
  it.each([
    [0, 4612313],
    [0.001, 9226614],
  ])("of a printed rotor with a bore of radius %s m at 30 000 rpm is %s Pa", (boreRadius, expected) => {
    const disc = { outerRadius: 0.03, boreRadius, density: 1240, poisson: 0.35 };
    expect(discStress(disc, radPerSecond(30_000))).toBeCloseToRelative(expected, 1e-6);
  });
});
