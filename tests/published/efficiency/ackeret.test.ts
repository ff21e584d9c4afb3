import { describe, expect, it } from "vitest";
import { ackeretEfficiency, rotorReynolds } from "#shared/physics/fanlaws/size.ts";

describe("efficiency at another Reynolds number", () => {
  // Ackeret (1948), in Mühlemann, Schweizerische Bauzeitung 66: (1 − η)/(1 − η_m) = ½[1 + (Re_m/Re)^0.2]. Formula from memory, no published example was found. Closed form.
  it.each([
    [0.8, 10, 0.7415106808],
    [0.8, 0.1, 0.8369042656],
    [0.6, 0.5, 0.6258898873],
    [0.5, 0.2, 0.5688050841],
    [0.7, 1, 0.7],
  ])("from %s with Re_m/Re = %s is %s", (efficiency, ratio, expected) => {
    expect(ackeretEfficiency(efficiency, ratio * 50_000, 50_000)).toBeCloseToRelative(expected, 1e-9);
  });
});

describe("Reynolds number of a rotor", () => {
  // Douglas et al., problem of chapter 9 (attribution from memory): a quarter-scale fan at three times the speed needs 533 kPa for 100 kPa. Found in a public copy. Three printed digits.
  it("at 533 kPa in quarter scale and 4200 rpm is that of the full size at 100 kPa and 1400 rpm", () => {
    const density = (pressure: number) => pressure / (287.05 * 293.15);
    const reynolds = (diameter: number, rpm: number, pressure: number) =>
      rotorReynolds((Math.PI * diameter * rpm) / 60, diameter, density(pressure), 1.8e-5);
    expect(reynolds(1.83 * 0.25, 4200, 533e3)).toBeCloseToRelative(reynolds(1.83, 1400, 100e3), 0.001);
  });
});
