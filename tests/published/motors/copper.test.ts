import { describe, expect, it } from "vitest";
import { limitCurrent, steadyWindingTemperature, windingResistance } from "#shared/physics/winding.ts";

const kelvin = (celsius: number) => celsius + 273.15;

describe("resistance of a copper winding", () => {
  // Sawhney, Electrical and Electronic Measurements, Example 5.19 (p. 215): α = 0.00393 at 20 °C. Found in a public textbook companion. Exact.
  it("of 10 Ω at 20 °C is 15.109 Ω at 150 °C", () => {
    expect(windingResistance(10, kelvin(150))).toBeCloseToRelative(15.109, 1e-9);
  });

  // B. R. Gupta, Network Analysis, Example 1-3 (p. 18): 1.3 Ω at 30 °C, 1.6 Ω hot: a rise of 61.05 K; α at 30 °C 0.0037814. Found in a public textbook companion. The book rounds α to 0.00378: 5e-4.
  it("from 1.3 Ω at 30 °C to 1.6 Ω rises by 61.05 K", () => {
    const ratio = windingResistance(1, kelvin(30 + 61.05)) / windingResistance(1, kelvin(30));
    expect(ratio).toBeCloseToRelative(1.6 / 1.3, 5e-4);
    const slope = windingResistance(1, kelvin(31)) / windingResistance(1, kelvin(30)) - 1;
    expect(slope).toBeCloseToRelative(0.0037814, 5e-4);
  });

  // Boylestad, Introductory Circuit Analysis, Example 3.9, with 234.5 °C inferred zero (ours lies at 234.453). From memory. 4e-5 of that, and four printed digits: 1e-4.
  it("of 50 Ω at 20 °C is 65.72 Ω at 100 °C", () => {
    expect(windingResistance(50, kelvin(100))).toBeCloseToRelative(65.72, 1e-4);
  });

  // IEC 60034-1, resistance method: θ₂ + 235 = (R₂/R₁)(θ₁ + 235). From memory. 235 against our 234.453: 4e-4 in the ratio at 51 K.
  it("at 1.2 times its value at 20 °C is at the standard's 71 °C", () => {
    expect(windingResistance(1, kelvin(71))).toBeCloseToRelative(1.2, 4e-4);
  });

  // Haumer, Kral et al., Modelica Conference 2009: 0.03864 Ω at 20 °C, α = 0.00392, 500 W of copper loss at 100 A and 95 °C. Found. Our α is 0.00393: 5.8e-4 more at 75 K, hence 8e-4.
  it("of the loss table's motor at 95 °C and 100 A heats by 500 W", () => {
    expect(100 ** 2 * windingResistance(0.03864, kelvin(95))).toBeCloseToRelative(500, 8e-4);
  });
});

describe("steady temperature of a winding at constant current", () => {
  // T = T_a + R_th I² R₂₀ [1 + α(T − 20 °C)], solved. Derived: no published example was found. 20 K/W, 2 Ω, 25 °C.
  it.each([
    [1, 73.3934504],
    [1.5, 166.9905617],
  ])("at %s A is %s °C", (current, celsius) => {
    expect(steadyWindingTemperature(current, 2, 20, kelvin(25)) - 273.15).toBeCloseToRelative(celsius, 1e-8);
  });

  it("with 20 K/W and 2 Ω has a limit current of 2.52216637 A", () => {
    expect(limitCurrent(2, 20)).toBeCloseToRelative(2.52216637, 1e-8);
  });
});
