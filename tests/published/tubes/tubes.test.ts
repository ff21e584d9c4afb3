import { describe, expect, it } from "vitest";
import { honeycombFlow, tubeLoss } from "#shared/physics/restriction/honeycomb.ts";

describe("laminar flow from a room through a tube", () => {
  // Boussinesq 1891, the kinetic-energy correction of capillary viscometers: Δp = 128μLQ/(πD⁴) + m·ρV² with m = 1.12 for a well-rounded inlet. From memory. Three printed digits, and Shah's ±2.4 % on the excess.
  it("that is long loses Poiseuille's friction and Boussinesq's 1.12·ρV²", () => {
    const x = 3;
    expect((tubeLoss(x) - 64 * x) / 2).toBeCloseToRelative(1.12, 0.024);
  });

  // Atkinson & Goldstein 1938 in Goldstein, Modern Developments in Fluid Dynamics, sec. 139: Δp* = 13.74·√x⁺ where the boundary layers are thin, beside the jet's own head. From memory. Four printed digits against the correlation's three.
  it.each([1e-6, 1e-5, 1e-4])("that ends at x⁺ = %s loses 13.74·√x⁺", (x) => {
    expect(tubeLoss(x) - 1).toBeCloseToRelative(13.74 * Math.sqrt(x), 0.006);
  });

  // Langhaar 1942 (J. Applied Mechanics 9, A55–A58), linearised momentum equations: K(∞) = 1.28. From memory. Shah's ±2.4 %.
  it("that is long has Langhaar's excess of 1.28 heads", () => {
    expect(tubeLoss(1000) - 64_000 - 1).toBeCloseToRelative(1.28, 0.024);
  });
});

describe("the bend between short and long tubes", () => {
  // Momentum balance: the apparent friction never falls below that of developed flow, nor below that of the thin layers alone by more than the correlation's ±2.4 %.
  it("never loses less than developed flow, or than thin layers", () => {
    for (let power = -6; power <= 1; power += 0.1) {
      const x = 10 ** power;
      expect(tubeLoss(x)).toBeGreaterThan(1 + 64 * x);
      expect(tubeLoss(x) - 1).toBeGreaterThan(0.976 * Math.min(13.74 * Math.sqrt(x), 64 * x + 1.25));
    }
  });

  // Langhaar 1942: the flow is developed, its centre line to 1 %, at x⁺ = 0.0575. From memory. Beyond it the excess grows by a twentieth at most.
  it("ends where the flow is developed, x⁺ = 0.0575", () => {
    const excess = (x: number) => tubeLoss(x) - 64 * x;
    expect(excess(0.0575)).toBeCloseToRelative(excess(10), 0.05);
  });
});

describe("a honeycomb of 30 tubes, 1.2 mm by 8 mm, at 300 Pa in air of 1.2 kg/m³ and 1.81e-5 Pa·s", () => {
  // Worked out from Shah's formula apart from this code: V = 15.5 m/s has Re 1233, x⁺ 0.005406, f_app·Re 50.06, so 2.0825 heads of 144.15 Pa = 300.2 Pa.
  it("passes 15.5 m/s in each tube", () => {
    const flow = honeycombFlow(
      { count: 30, diameter: 1.2e-3, length: 8e-3 },
      { density: 1.2, viscosity: 1.81e-5 },
      300,
    );
    expect(flow / ((30 * Math.PI * 1.2e-3 ** 2) / 4)).toBeCloseToRelative(15.5, 0.001);
  });
});
