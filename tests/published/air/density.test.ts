import { describe, expect, it } from "vitest";
import { moistAirDensity, soundSpeed } from "#shared/physics/air.ts";
import { CIPM_2007, STANDARD_AIR_DENSITY } from "#shared/physics/constants.ts";

const kelvin = (celsius: number) => celsius + 273.15;

describe("moist air density, published states of air", () => {
  // S. V. Gupta, Mass Metrology (Springer), appendix table p. 205; quoted in the tests of a public mass-metrology package. Found. Printed to 1e-5 kg/m³.
  it("at 10 °C, 730 mmHg, 40 % gives the table's 1.19569 kg/m³", () => {
    const density = moistAirDensity({
      temperature: kelvin(10),
      pressure: 97_325.342_812_950_01,
      humidity: 0.4,
    });
    expect(density).toBeCloseToRelative(1.19569, 2e-5);
  });

  // Same table. Found. 40 °C lies outside 15–27 °C, and the table uses the equation of 1981/91, whose argon fraction alone changes ρ by 6.4e-5: hence 1e-4.
  it("at 40 °C, 760 mmHg, 40 % gives the table's 1.11497 kg/m³ to the change of the equation since", () => {
    const density = moistAirDensity({
      temperature: kelvin(40),
      pressure: 101_325.014_435_400_01,
      humidity: 0.4,
    });
    expect(density).toBeCloseToRelative(1.11497, 1e-4);
  });

  // Guide to a public mass-metrology package: 0.001199314 g/cm³ at its default conditions. Found. Seven printed digits.
  it("at 20 °C, 1013.25 hPa, 50 % gives 1.199314 kg/m³", () => {
    const density = moistAirDensity({ temperature: kelvin(20), pressure: 101_325, humidity: 0.5 });
    expect(density).toBeCloseToRelative(1.199314, 5e-7);
  });

  // NIST IR 6969, SOP 2, Appendix B, Example 1 (Jones 1978). Found. A different equation of state: agrees to 5e-5, hence 1e-4.
  it("at 22.3 °C, 748.1 mmHg, 37 % gives the 1.17194 kg/m³ of the older formula", () => {
    const pressure = 748.1 * 133.322_387_415;
    const density = moistAirDensity({ temperature: kelvin(22.3), pressure, humidity: 0.37 });
    expect(density).toBeCloseToRelative(1.17194, 1e-4);
  });

  // GB/T 10178-2006 (equivalent to ISO 5802:2001), note to the definition of standard air. Found. Printed to two digits; the state is exact to 1e-3.
  it("at 16 °C, 100 kPa, 65 % gives the 1.2 kg/m³ of standard air", () => {
    const density = moistAirDensity({ temperature: kelvin(16), pressure: 100_000, humidity: 0.65 });
    expect(density).toBeCloseToRelative(1.2, 1e-3);
    expect(STANDARD_AIR_DENSITY).toBe(1.2);
  });
});

describe("dry air against the U.S. Standard Atmosphere 1976", () => {
  // Table "Atmosphere to 86 km by 2 km", five digits, as quoted in the tests of a public fluid library. Found.
  const rows = [
    { altitude: 0, temperature: 288.15, pressure: 101_320, density: 1.225, sound: 340.29 },
    { altitude: 2000, temperature: 275.15, pressure: 79_501, density: 1.0066, sound: 332.53 },
    { altitude: 4000, temperature: 262.17, pressure: 61_660, density: 0.81935, sound: 324.59 },
  ];

  // The table's air is an ideal gas of 28.9644 g/mol; ours has Z ≈ 0.9996 and 28.96546 g/mol: together 5e-4 at most, hence 6e-4.
  it.each(rows)("at $altitude m has the table's density to the compressibility factor", (row) => {
    const density = moistAirDensity({ temperature: row.temperature, pressure: row.pressure, humidity: 0 });
    expect(density).toBeCloseToRelative(row.density, 6e-4);
    expect(density).toBeGreaterThan(row.density);
  });

  // Five digits of the sound's speed, and of the temperature that it is read at (half of 0.01 K in 262 K, by the square root 1e-5): 3e-5.
  it.each(rows)("at $altitude m has the table's speed of sound", ({ temperature, sound }) => {
    expect(soundSpeed(temperature)).toBeCloseToRelative(sound, 3e-5);
  });
});

describe("CIPM-2007 constants", () => {
  // Picard, Davis, Gläser, Fujii, Metrologia 45 (2008) 149–155. Found: identical in three independent implementations. Exact.
  it("in the equation's own set are those printed", () => {
    expect(CIPM_2007).toEqual({
      gasConstant: 8.314472,
      waterMolarMass: 0.01801528,
      dryAirMolarMass: 0.02896546,
      saturation: { a: 1.2378847e-5, b: -0.019121316, c: 33.93711047, d: -6343.1645 },
      enhancement: { alpha: 1.00062, beta: 3.14e-8, gamma: 5.6e-7 },
      compressibility: {
        a0: 1.58123e-6,
        a1: -2.9331e-8,
        a2: 1.1043e-10,
        b0: 5.707e-6,
        b1: -2.051e-8,
        c0: 0.00019898,
        c1: -2.376e-6,
        d: 1.83e-11,
        e: -7.65e-9,
      },
    });
  });
});
