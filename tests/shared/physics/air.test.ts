import fc from "fast-check";
import { describe, expect, it } from "vitest";
import {
  airFrom,
  airNotes,
  airViscosity,
  DEFAULT_WEATHER,
  moistAirDensity,
  soundSpeed,
} from "#shared/physics/air.ts";
import { expectOutOfRange } from "#tests/support/outOfRange.ts";

const weather = (celsius: number, pressure = 101_325, humidity = 0.5) => ({
  temperature: 273.15 + celsius,
  pressure,
  humidity,
});

describe("moistAirDensity, limit laws", () => {
  const state = fc.record({
    temperature: fc.double({ min: 254, max: 332, noNaN: true }),
    pressure: fc.double({ min: 50_000, max: 120_000, noNaN: true }),
    humidity: fc.double({ min: 0, max: 1, noNaN: true }),
  });

  // Molar mass over R: 0.02896546/8.314472; Z departs from 1 by less than 1e-3 in this range (CIPM-2007, tabulated).
  it("in dry air is that of an ideal gas within 1e-3", () => {
    fc.assert(
      fc.property(state, ({ temperature, pressure }) => {
        const ideal = (pressure * 0.02896546) / (8.314472 * temperature);
        expect(moistAirDensity({ temperature, pressure, humidity: 0 })).toBeCloseToRelative(ideal, 1.5e-3);
      }),
    );
  });

  it("falls as the air gets moister, at any temperature and pressure", () => {
    fc.assert(
      fc.property(state, (air) => {
        const wet = moistAirDensity({ ...air, humidity: Math.min(1, air.humidity + 0.1) });
        expect(wet).toBeLessThanOrEqual(moistAirDensity(air));
      }),
    );
  });

  it("rises with pressure and falls with temperature", () => {
    expect(moistAirDensity(weather(20, 102_000))).toBeGreaterThan(moistAirDensity(weather(20)));
    expect(moistAirDensity(weather(21))).toBeLessThan(moistAirDensity(weather(20)));
  });
});

describe("air at the ends of its range", () => {
  it.each([-20, 60])("at %s °C is still taken", (celsius) => {
    expect(moistAirDensity(weather(celsius))).toBeGreaterThan(0.9);
  });

  it.each([-20.1, 60.1, Number.NaN])("at %s °C is refused by its temperature", (celsius) => {
    expectOutOfRange(() => moistAirDensity(weather(celsius)), "air.temperature");
    expectOutOfRange(() => airFrom(weather(celsius)), "air.temperature");
    expectOutOfRange(() => airNotes(weather(celsius)), "air.temperature");
  });

  it.each([0, -1, Number.NaN, Number.POSITIVE_INFINITY])(
    "at %s Pa is refused by its pressure",
    (pressure) => {
      expectOutOfRange(() => moistAirDensity(weather(20, pressure)), "air.pressure");
    },
  );

  it("below the pressure of its own vapour is refused by its pressure", () => {
    expectOutOfRange(() => moistAirDensity(weather(50, 5000, 1)), "air.pressure");
  });

  it.each([-0.01, 1.01, Number.NaN])("at a humidity of %s is refused by it", (humidity) => {
    expectOutOfRange(() => moistAirDensity(weather(20, 101_325, humidity)), "air.humidity");
  });

  it.each([0, -1, Number.NaN])("at %s K has neither viscosity nor sound", (temperature) => {
    expectOutOfRange(() => airViscosity(temperature), "air.temperature");
    expectOutOfRange(() => soundSpeed(temperature), "air.temperature");
  });
});

describe("airFrom", () => {
  it("at the default weather joins density, viscosity, sound and pressure", () => {
    const air = airFrom(DEFAULT_WEATHER);
    expect(air).toEqual({
      density: moistAirDensity(DEFAULT_WEATHER),
      viscosity: airViscosity(293.15),
      soundSpeed: soundSpeed(293.15),
      pressure: 101_325,
    });
    expect(DEFAULT_WEATHER).toEqual({ temperature: 293.15, pressure: 101_325, humidity: 0.5 });
  });
});

describe("airNotes", () => {
  const codes = (...args: Parameters<typeof weather>) => airNotes(weather(...args)).map(({ code }) => code);

  it.each([
    [20, 101_325, []],
    [15, 60_000, []],
    [27, 110_000, []],
    [14.9, 101_325, ["air-temperature-outside-range"]],
    [27.1, 101_325, ["air-temperature-outside-range"]],
    [-0.1, 101_325, ["air-temperature-far-out"]],
    [50.1, 101_325, ["air-temperature-far-out"]],
    [20, 59_900, ["air-pressure-outside-range"]],
    [20, 110_100, ["air-pressure-outside-range"]],
    [40, 50_000, ["air-temperature-outside-range", "air-pressure-outside-range"]],
  ])("at %s °C and %s Pa are %s", (celsius, pressure, expected) => {
    expect(codes(celsius, pressure)).toEqual(expected);
  });
});
