import { describe, expect, it } from "vitest";
import { coldRise } from "#shared/physics/cells/cold.ts";
import { expectOutOfRange } from "#tests/support/outOfRange.ts";

describe("coldRise", () => {
  it("goes through both stated points, and is 1 from 20 °C up", () => {
    expect(coldRise(2.5, 273.15)).toBeCloseToRelative(2.5, 1e-12);
    expect(coldRise(2.5, 293.15)).toBe(1);
    expect(coldRise(2.5, 310)).toBe(1);
  });

  it("of half the way is the root, of half as far beyond the power 3/2: ln R lies on a line", () => {
    expect(coldRise(4, 283.15)).toBeCloseToRelative(2, 1e-12);
    expect(coldRise(4, 263.15)).toBeCloseToRelative(8, 1e-12);
  });

  it("with a factor of 1 is 1 at any cold", () => {
    expect(coldRise(1, 253.15)).toBe(1);
  });

  it("refuses a factor below 1 and a temperature that can't be", () => {
    expectOutOfRange(() => coldRise(0.9, 280), "pack.cell.coldFactor");
    expectOutOfRange(() => coldRise(Number.NaN, 280), "pack.cell.coldFactor");
    expectOutOfRange(() => coldRise(2, 0), "temperature");
  });
});
