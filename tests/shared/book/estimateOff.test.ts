import { describe, expect, it } from "vitest";
import type { Book } from "#shared/book/book.ts";
import { type EstimateOff, estimateOff } from "#shared/book/estimateOff.ts";
import { rotorBasis } from "#shared/book/rotorBasis.ts";
import { demoBook } from "#tests/support/demoBook.ts";

const book = demoBook();

function offOf(id: string, changedBook: Book = book): EstimateOff {
  const off = estimateOff(changedBook, id);
  if (!off) throw new Error(`${id} was tested and has a drawing.`);
  return off;
}

describe("estimateOff, a rotor of the demo that was drawn and then tested", () => {
  // ψ with no flow from the drawing, by hand: 2·η_h·σ with Wiesner's σ = 1 − √(sin β₂)/Z^0.7 and η_h = 0.6.
  it.each([
    ["swept-nine", 42, 9],
    ["straight-seven", 88, 7],
  ])("%s has the estimate that slip and efficiency give by hand, with no flow", (id, angle, blades) => {
    const slip = 1 - Math.sqrt(Math.sin((angle * Math.PI) / 180)) / blades ** 0.7;
    const { blocked, marked } = offOf(id);
    expect(blocked.estimated).toBeCloseToRelative(2 * 0.6 * slip, 1e-12);
    expect(marked).toBe(0.3);
  });

  it("is nothing for an axial rotor, whose curve its geometry doesn't give: untested, a curve test is asked for", () => {
    expect(estimateOff(book, "tube-five")).toBeNull();
    const untested = { ...book, tests: [] };
    const basis = rotorBasis(untested, "tube-five");
    expect(basis.basis === "missing" && basis.missing.message).toMatch(/an axial rotor can't be estimated/);
    expect(rotorBasis(untested, "swept-nine").basis).toBe("estimated");
  });

  // ψ and λ by hand: c_m2/u = φ·D/(4·b₂), ψ_E = 2[σ − (c_m2/u)·cot β₂], ψ = η_h·ψ_E − (c_m2/u)², λ = φ·ψ_E.
  it.each([
    ["swept-nine", 42, 9, 0.13],
    ["straight-seven", 88, 7, 0.15],
  ])("%s has the estimate by hand at the flow of best efficiency too", (id, angle, blades, width) => {
    const radians = (angle * Math.PI) / 180;
    const slip = 1 - Math.sqrt(Math.sin(radians)) / blades ** 0.7;
    const { bestPhi, pressure, power } = offOf(id);
    const phi = bestPhi ?? Number.NaN;
    const through = phi / (4 * width);
    const euler = 2 * (slip - through / Math.tan(radians));
    expect(pressure?.estimated).toBeCloseToRelative(0.6 * euler - through ** 2, 1e-12);
    expect(power?.estimated).toBeCloseToRelative(phi * euler, 1e-12);
  });

  it("stands beside the tested curve, at the flow where that is most efficient", () => {
    const basis = rotorBasis(book, "swept-nine");
    if (basis.basis === "missing" || !basis.lambda) throw new Error("The demo tests it.");
    const at = (coefficients: readonly number[], phi: number) =>
      coefficients.reduce((sum, coefficient, power) => sum + coefficient * phi ** power, 0);
    const { psi, lambda, phiMin, phiMax } = basis;
    const efficiency = (phi: number) => (phi * at(psi, phi)) / at(lambda, phi);
    const { bestPhi, pressure, power, blocked } = offOf("swept-nine");
    if (bestPhi === null) throw new Error("Its power was measured.");
    expect(bestPhi).toBeGreaterThan(phiMin);
    expect(bestPhi).toBeLessThan(phiMax);
    for (const share of [0.9, 1.1]) expect(efficiency(share * bestPhi)).toBeLessThan(efficiency(bestPhi));
    expect(pressure?.tested).toBeCloseToRelative(at(psi, bestPhi), 1e-12);
    expect(power?.tested).toBeCloseToRelative(at(lambda, bestPhi), 1e-12);
    expect(blocked.tested).toBe(psi[0]);
  });
});

describe("estimateOff, where there is nothing to set side by side", () => {
  it("is null for a rotor without a drawing, a propeller, one that was never tested, one that the book has not", () => {
    const undrawn = {
      ...book,
      rotors: book.rotors.map((rotor) => ({ ...rotor, data: { ...rotor.data, geometry: undefined } })),
    };
    const untested = { ...book, tests: book.tests.filter(({ data }) => data.kind !== "curve") };
    expect(estimateOff(undrawn, "swept-nine")).toBeNull();
    expect(estimateOff(book, "pusher-three")).toBeNull();
    expect(rotorBasis(untested, "swept-nine").basis).toBe("estimated");
    expect(estimateOff(untested, "swept-nine")).toBeNull();
    expect(estimateOff(book, "none")).toBeNull();
  });
});
