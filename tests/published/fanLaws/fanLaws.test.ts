import { describe, expect, it } from "vitest";
import {
  coefficientsOf,
  type RotorReading,
  type RotorState,
  readingOf,
  tipSpeed,
} from "#shared/physics/fanlaws/coefficients.ts";
import { eulerCoefficient } from "#shared/physics/fanlaws/estimate.ts";

const radPerSecond = (rpm: number) => (rpm * Math.PI) / 30;

function rescaled(reading: RotorReading, from: RotorState, to: RotorState): RotorReading {
  return readingOf(coefficientsOf(reading, from), to);
}

describe("a fan rescaled in speed, size and density", () => {
  // Fox & McDonald, Example 10.11 (p. 546). Inputs found in a public textbook companion, results by the closed form (the book's rounded table from memory).
  const from = { diameter: 0.9144, speed: radPerSecond(600), density: 1.201384725 };
  const to = { diameter: 1.0668, speed: radPerSecond(1150), density: 0.720830835 };

  it.each([
    [
      4.719474432000001, 934.0834125, 11260.068037000001, 14.364172087495145, 2802.3583109508263,
      102817.24977332455,
    ],
    [
      9.438948864000002, 871.811185, 13870.017582000002, 28.72834417499029, 2615.5344235541043,
      126649.06263469119,
    ],
    [
      14.158423296000002, 737.3031736, 15957.977218, 43.09251626248543, 2211.9948267771856,
      145714.51292378447,
    ],
    [
      18.877897728000004, 528.0684892, 17225.666997, 57.45668834998058, 1584.2665651242005,
      157289.96488501967,
    ],
    [23.597372160000006, 254.0706882, 17225.666997, 71.82086043747573, 762.2414605786247, 157289.96488501967],
  ])("from %s m³/s, %s Pa, %s W is the textbook's scaled curve", (flow, pressure, shaftPower, q2, p2, w2) => {
    const scaled = rescaled({ flow, pressure, shaftPower }, from, to);
    expect(scaled.flow).toBeCloseToRelative(q2, 1e-6);
    expect(scaled.pressure).toBeCloseToRelative(p2, 1e-6);
    expect(scaled.shaftPower ?? Number.NaN).toBeCloseToRelative(w2, 1e-6);
  });
});

describe("a fan rescaled in size", () => {
  // Douglas et al., problem of chapter 9 (attribution from memory); answer 9.15 m/s found in a public copy. Three printed digits.
  it("to a quarter at three times the speed has the textbook's 9.15 m/s for 12.2 m/s", () => {
    const area = (diameter: number) => (Math.PI / 4) * diameter ** 2;
    const from = { diameter: 1.83, speed: radPerSecond(1400), density: 1.2 };
    const to = { diameter: 1.83 * 0.25, speed: radPerSecond(4200), density: 1.2 };
    const scaled = rescaled({ flow: 12.2 * area(1.83), pressure: 100, shaftPower: null }, from, to);
    expect(scaled.flow / area(to.diameter)).toBeCloseToRelative(9.15, 0.001);
  });

  // D. A. Chin, Fluid Mechanics for Engineers in SI Units, Problem 6.7. Inputs found; the page's 459 mm comes of a slip in its cube root, 460.4854 mm is right.
  it("to 460.4854 mm at 1500 rpm passes the 3 m³/s asked for", () => {
    const from = { diameter: 0.26, speed: radPerSecond(2500), density: 1.2 };
    const to = { diameter: 0.4604854, speed: radPerSecond(1500), density: 1.2 };
    // D printed to 1e-7 of a metre, cubed: 1e-6.
    expect(rescaled({ flow: 0.9, pressure: 100, shaftPower: null }, from, to).flow).toBeCloseToRelative(
      3,
      1e-6,
    );
  });

  // Textbook problem, inputs found, results derived (closed form with g = 9.81, water 1000 kg/m³).
  it("by 1.8 to a head of 80 mm runs at 275.845 rpm with 37.4123 m³/s and 36 701.46 W", () => {
    const from = { diameter: 1, speed: radPerSecond(430), density: 1.2 };
    const to = { diameter: 1.8, speed: radPerSecond(275.845), density: 1.2 };
    const scaled = rescaled({ flow: 10, pressure: 60 * 9.81, shaftPower: 7357.5 }, from, to);
    expect(scaled.pressure).toBeCloseToRelative(80 * 9.81, 1e-5);
    expect(scaled.flow).toBeCloseToRelative(37.4123, 1e-5);
    expect(scaled.shaftPower ?? Number.NaN).toBeCloseToRelative(36701.46, 2e-5);
  });

  // Douglas et al., Example 23.1 (p. 814): inputs found, ratios derived.
  it("from 0.5 to 0.35 m and 750 to 1450 rpm has the ratios 0.66313333 and 1.83151111", () => {
    const from = { diameter: 0.5, speed: radPerSecond(750), density: 1000 };
    const to = { diameter: 0.35, speed: radPerSecond(1450), density: 1000 };
    const scaled = rescaled({ flow: 1, pressure: 1, shaftPower: null }, from, to);
    expect(scaled.flow).toBeCloseToRelative(0.66313333, 1e-7);
    expect(scaled.pressure).toBeCloseToRelative(1.83151111, 1e-7);
  });

  // Çengel & Cimbala, Example 14-11: C_Q = Q/(ωD³), C_H = gH/(ω²D²), C_P = P/(ρω³D⁵). Inputs found; printed answers 0.108 m, 168 rad/s, 160 W from memory.
  // Three printed digits of D (0.46 %, cubed and to the fifth) and ω (0.3 %): 2 % of flow, 2 % of head, 4 % of power.
  it("to 0.108 m and 168 rad/s gives the 2.4 l/s, 4.5 m and 160 W asked for", () => {
    const phi = (0.0112 * 8) / Math.PI;
    const psi = 0.133 * 8;
    const lambda = (0.00184 * 64) / Math.PI;
    const pump = readingOf({ phi, psi, lambda }, { diameter: 0.108, speed: 168, density: 1226 });
    expect(pump.flow).toBeCloseToRelative(0.0024, 0.02);
    expect(pump.pressure).toBeCloseToRelative(1226 * 9.81 * 4.5, 0.02);
    expect(pump.shaftPower ?? Number.NaN).toBeCloseToRelative(160, 0.04);
  });
});

describe("a fan rescaled in speed alone", () => {
  const at = (rpm: number) => ({ diameter: 1, speed: radPerSecond(rpm), density: 1.2 });

  // Fox & McDonald, Example 10.7 (p. 522): 300 US gpm, 25 and 21.9 ft. Inputs found, the book's roundings (449 gpm, 49.0 ft) from memory.
  it("from 1170 to 1750 rpm has the textbook's 448.718 and 55.93, 48.995", () => {
    const scaled = (head: number) =>
      rescaled({ flow: 300, pressure: head, shaftPower: null }, at(1170), at(1750));
    expect(scaled(25).flow).toBeCloseToRelative(448.718, 2e-5);
    expect(scaled(25).pressure).toBeCloseToRelative(55.93, 2e-5);
    expect(scaled(21.9).pressure).toBeCloseToRelative(48.995, 2e-5);
  });

  // ASHRAE Handbook, HVAC Systems and Equipment, chapter 21, figure 4: 6000 cfm, 1.13 in. of water. From memory. Three printed digits: 0.3 %.
  it("from 600 to 650 rpm has the handbook's 6500 cfm and 1.33 inches", () => {
    const scaled = rescaled({ flow: 6000, pressure: 1.13, shaftPower: null }, at(600), at(650));
    expect(scaled.flow).toBeCloseToRelative(6500, 0.003);
    expect(scaled.pressure).toBeCloseToRelative(1.33, 0.003);
  });

  // U.S. DOE/AMCA fan sourcebook, rules of thumb: ±10 % speed changes pressure by 19–21 %, power by 27–33 %; −20 % halves the power. From memory. Closed form.
  it.each([
    [0.9, 1 - 0.19, 1 - 0.271],
    [1.1, 1 + 0.21, 1 + 0.331],
    [0.8, 0.64, 0.512],
  ])("at %s of its speed has %s of its pressure and %s of its power", (share, pressure, power) => {
    const scaled = rescaled({ flow: 1, pressure: 1, shaftPower: 1 }, at(1000), at(1000 * share));
    expect(scaled.pressure).toBeCloseTo(pressure, 9);
    expect(scaled.shaftPower ?? Number.NaN).toBeCloseTo(power, 9);
  });
});

describe("coefficients of a published fan", () => {
  const state = { diameter: 0.89, speed: radPerSecond(720), density: 1.2 };

  // A. V. Arasu, Turbomachines, Example 3.10 (p. 110): 2.558 m³/s, 735.75 Pa, 2.2919 kW, 82.1 %. Found in a public textbook companion. Three printed digits.
  it("at its flow and power have the book's efficiency of 82.1 %", () => {
    const { efficiency } = coefficientsOf({ flow: 2.558, pressure: 735.75, shaftPower: 2291.9 }, state);
    expect(efficiency ?? Number.NaN).toBeCloseToRelative(0.821, 0.001);
  });

  // The same fan in φ, ψ, λ: definitions of Eck, Bommes, Carolus from memory, numbers derived.
  it("at its flow and power are φ 0.1226, ψ 1.0893, λ 0.1626", () => {
    const reading = { flow: 2.5583559775, pressure: 735.75, shaftPower: 2292.186614 };
    const { phi, psi, lambda, efficiency } = coefficientsOf(reading, state);
    expect(phi).toBeCloseToRelative(0.122565983, 1e-7);
    expect(psi).toBeCloseToRelative(1.089273077, 1e-7);
    expect(lambda ?? Number.NaN).toBeCloseToRelative(0.162579375, 1e-7);
    expect(efficiency ?? Number.NaN).toBeCloseToRelative(0.8211854998, 1e-7);
  });

  // The other school's C_Q = Q/(ωD³), C_H = Δp/(ρω²D²), C_P = P/(ρω³D⁵) are φπ/8, ψ/8, λπ/64: a factor of 2 or 8 is the likeliest slip. Derived.
  it("at its flow and power are those of the other school by factors π/8, 1/8, π/64", () => {
    const reading = { flow: 2.5583559775, pressure: 735.75, shaftPower: 2292.186614 };
    const { phi, psi, lambda } = coefficientsOf(reading, state);
    const omega = (2 * Math.PI * 720) / 60;
    expect((phi * Math.PI) / 8).toBeCloseToRelative(2.5583559775 / (omega * 0.89 ** 3), 1e-12);
    expect(psi / 8).toBeCloseToRelative(735.75 / (1.2 * omega ** 2 * 0.89 ** 2), 1e-12);
    expect(((lambda ?? Number.NaN) * Math.PI) / 64).toBeCloseToRelative(
      2292.186614 / (1.2 * omega ** 3 * 0.89 ** 5),
      1e-12,
    );
  });

  // Arasu, same example: Euler pressure coefficient 1.326 at c_r2 = 9.15 m/s, β₂ = 39°. Found. Four printed digits, the book's π is 3.1415.
  it("by Euler's equation without slip has the book's ψ of 1.326", () => {
    const u = tipSpeed(0.89, radPerSecond(720));
    expect(eulerCoefficient(1, 9.15 / u, 39)).toBeCloseToRelative(1.326, 0.001);
  });
});

describe("a centrifugal stage known by its speeds", () => {
  // Yahya, Turbines, Compressors and Fans, Example 15.1 = Arasu, Example 3.13 (p. 114): 0.18 and 0.2 m, 1450 rpm; c₁ 21, w₁ 20, c₂ 25, w₂ 17 m/s; 0.5 kg/s of 1.25 kg/m³; η 0.78.
  // 211.7 Pa, reaction 0.457, 108.6 W. Found in two public textbook companions. Printed digits: 5e-4, of the reaction 2e-3.
  const state = (diameter: number) => ({ diameter, speed: radPerSecond(1450), density: 1.25 });
  const [inner, outer] = [0.18, 0.2].map((diameter) => tipSpeed(diameter, radPerSecond(1450)));

  /** Euler's ρ·u·c_u at one diameter, as the pressure of ψ = 2c_u/u; the swirl c_u of a triangle of speeds by the cosine law. */
  function work(diameter: number, absolute: number, relative: number): number {
    const { speed, density } = state(diameter);
    const u = tipSpeed(diameter, speed);
    const swirl = (absolute ** 2 + u ** 2 - relative ** 2) / (2 * u);
    return readingOf({ phi: 0, psi: (2 * swirl) / u, lambda: null }, { diameter, speed, density }).pressure;
  }
  const pressure = work(0.2, 25, 17) - work(0.18, 21, 20);

  it("by Euler's equation at both diameters raises the pressure by the book's 211.7 Pa, 45.7 % of it in the rotor", () => {
    expect(pressure).toBeCloseToRelative(211.7, 5e-4);
    const inRotor = 0.5 * 1.25 * (20 ** 2 - 17 ** 2 + outer ** 2 - inner ** 2);
    expect(inRotor / pressure).toBeCloseToRelative(0.457, 2e-3);
  });

  it("at the book's 108.6 W has its efficiency of 0.78", () => {
    const reading = { flow: 0.5 / 1.25, pressure, shaftPower: 108.6 };
    expect(coefficientsOf(reading, state(0.2)).efficiency ?? Number.NaN).toBeCloseToRelative(0.78, 5e-4);
  });
});

describe("Euler work of an idealised blower", () => {
  // Çengel & Cimbala, Example 14-5: 1750 rpm, r₂ 80 mm, b₂ 23 mm, 0.13 m³/s, flow at 40° from the radius. Inputs found; 17.0 mm of water and 21.6 W from memory. Three digits: 0.4 %.
  it("at 0.13 m³/s is the textbook's 17.0 mm of water and 21.6 W", () => {
    const u = tipSpeed(0.16, radPerSecond(1750));
    const radial = 0.13 / (2 * Math.PI * 0.08 * 0.023);
    const swirl = radial * Math.tan((40 * Math.PI) / 180);
    const bladeAngle = (Math.atan2(radial, u - swirl) * 180) / Math.PI;
    const pressure = 0.5 * 1.2 * u ** 2 * eulerCoefficient(1, radial / u, bladeAngle);
    expect((pressure / (998 * 9.81)) * 1000).toBeCloseToRelative(17.0, 0.004);
    expect(pressure * 0.13).toBeCloseToRelative(21.6, 0.004);
  });
});
