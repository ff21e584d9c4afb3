import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { evaluatePolynomial } from "#shared/numeric/polynomial.ts";
import { estimatedRotor, eulerCoefficient, wiesnerSlip } from "#shared/physics/fanlaws/estimate.ts";
import { expectOutOfRange } from "#tests/support/outOfRange.ts";

const drawing = { diameter: 0.042, exitWidth: 0.006, bladeAngleDegrees: 45, blades: 9 };
const drawings = fc.record({
  diameter: fc.double({ min: 0.02, max: 0.2, noNaN: true }),
  exitWidth: fc.double({ min: 0.002, max: 0.03, noNaN: true }),
  bladeAngleDegrees: fc.double({ min: 10, max: 90, noNaN: true }),
  blades: fc.integer({ min: 3, max: 40 }),
});

describe("slip factor", () => {
  // Wiesner's formula for radial blades, √(sin 90°) = 1.
  it("of eight radial blades is 1 − 8^−0.7", () => {
    expect(wiesnerSlip(90, 8)).toBeCloseToRelative(1 - 8 ** -0.7, 1e-14);
  });

  it("grows with the number of blades towards 1", () => {
    expect(wiesnerSlip(45, 20)).toBeGreaterThan(wiesnerSlip(45, 10));
    expect(wiesnerSlip(45, 1e9)).toBeCloseTo(1, 5);
  });

  it("refuses a single blade, half a blade, and angles beyond radial", () => {
    expectOutOfRange(() => wiesnerSlip(45, 1), "rotor.blades");
    expectOutOfRange(() => wiesnerSlip(45, 7.5), "rotor.blades");
    expectOutOfRange(() => wiesnerSlip(0, 7), "rotor.bladeAngle");
    expectOutOfRange(() => wiesnerSlip(91, 7), "rotor.bladeAngle");
    expectOutOfRange(() => eulerCoefficient(1, 0.2, Number.NaN), "rotor.bladeAngle");
  });
});

describe("estimated rotor", () => {
  it("with no flow makes 0.6 of the Euler work into pressure and takes no power", () => {
    const { psi, lambda, estimated, uncertainty } = estimatedRotor(drawing);
    expect(psi[0]).toBeCloseToRelative(0.6 * 2 * wiesnerSlip(45, 9), 1e-14);
    expect(lambda[0]).toBe(0);
    expect(estimated).toBe(true);
    expect(uncertainty).toBe(0.3);
  });

  // Written out once more in metres a second: c_m2 = Q/(πDb₂), c_u2 = σu − c_m2/tan β₂, Δp = η_h ρ u c_u2 − ½ρc_m2², P = ρQuc_u2.
  it("at any flow is Euler's equation in velocities", () => {
    fc.assert(
      fc.property(drawings, fc.double({ min: 0, max: 0.4, noNaN: true }), (geometry, phi) => {
        const { psi, lambda } = estimatedRotor(geometry);
        const [u, rho, d] = [50, 1.2, geometry.diameter];
        const flow = phi * (Math.PI / 4) * d ** 2 * u;
        const radial = flow / (Math.PI * d * geometry.exitWidth);
        const angle = (geometry.bladeAngleDegrees * Math.PI) / 180;
        const slip = 1 - Math.sqrt(Math.sin(angle)) / geometry.blades ** 0.7;
        const swirl = slip * u - radial / Math.tan(angle);
        const pressure = 0.6 * rho * u * swirl - 0.5 * rho * radial ** 2;
        const power = rho * flow * u * swirl;
        const scale = 0.5 * rho * u ** 2;
        expect(Math.abs(evaluatePolynomial(psi, phi) * scale - pressure)).toBeLessThan(
          1e-10 * scale * (1 + radial ** 2),
        );
        const throughput = (Math.PI / 4) * d ** 2 * u;
        expect(Math.abs(evaluatePolynomial(lambda, phi) * scale * throughput - power)).toBeLessThan(
          1e-10 * scale * throughput * (1 + radial ** 2),
        );
      }),
    );
  });

  it("falls with flow and reaches zero, swept back or radial", () => {
    fc.assert(
      fc.property(drawings, (geometry) => {
        const { psi } = estimatedRotor(geometry);
        expect(psi[1]).toBeLessThanOrEqual(1e-12);
        expect(psi[2]).toBeLessThan(0);
      }),
    );
  });

  it.each([
    ["rotor.diameter", { diameter: 0 }],
    ["rotor.exitWidth", { exitWidth: 0 }],
    ["rotor.hydraulicEfficiency", { hydraulicEfficiency: 0 }],
    ["rotor.hydraulicEfficiency", { hydraulicEfficiency: 1.1 }],
    ["rotor.blades", { blades: 0 }],
    ["rotor.bladeAngle", { bladeAngleDegrees: 120 }],
  ])("refuses by %s a drawing of %o", (quantity, change) => {
    expectOutOfRange(() => estimatedRotor({ ...drawing, ...change }), quantity);
  });
});
