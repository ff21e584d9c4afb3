import { describe, expect, it } from "vitest";
import { stationPressure } from "#shared/physics/stationPressure.ts";
import { expectOutOfRange } from "#tests/support/outOfRange.ts";

const INCH_OF_MERCURY = 3386.389;

describe("stationPressure, published pairs", () => {
  // Smithsonian Meteorological Tables, 6th ed., p. 269, as two worked values in the tests of a public package of meteorology. Found. That formula puts
  // the altimeter 10 ft above the ground, 0.3 hPa, and takes 288 K in the place of 288.15 K, which is 0.03 hPa here: hence less 0.3, to 0.05 hPa.
  it.each([
    [29.8 * INCH_OF_MERCURY, 500, 950.96498],
    [101_300, 500, 954.639265],
  ])("of %s Pa at sea level, at %s m: the table's %s hPa at the altimeter", (seaLevel, altitude, hPa) => {
    expect(Math.abs(stationPressure(seaLevel, altitude) / 100 - (hPa - 0.3))).toBeLessThan(0.05);
  });

  it("at sea level is the pressure itself", () => {
    expect(stationPressure(99_000, 0)).toBeCloseToRelative(99_000, 1e-14);
  });

  // Hydrostatics of the day's own column: dp/dh = −g·p/(R·T) with T = 288.15 K at the ground, by small steps.
  it("just above the sea falls by the weight of the air between", () => {
    const fall = 101_325 - stationPressure(101_325, 1);
    expect(fall).toBeCloseToRelative((9.80665 * 101_325) / (287.05287 * 288.15), 1e-4);
  });

  it("refuses an altitude where nobody stands, and no pressure", () => {
    expectOutOfRange(() => stationPressure(101_325, 9000), "altitude");
    expectOutOfRange(() => stationPressure(0, 100), "seaLevel");
  });
});
