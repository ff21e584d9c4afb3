import { OutOfRangeError, requirePositive } from "../numeric/errors.ts";
import { formatQuantity } from "../units/format.ts";
import {
  CELSIUS_ZERO,
  CIPM_2007,
  DRY_AIR_GAS_CONSTANT,
  HEAT_CAPACITY_RATIO,
  STANDARD_PRESSURE,
  SUTHERLAND,
} from "./constants.ts";
import type { Note } from "./note.ts";

/** What a gap or a rotor needs to know of the air. */
export interface Fluid {
  /** [kg/m³] */
  readonly density: number;
  /** dynamic [Pa·s] */
  readonly viscosity: number;
}

export interface Air extends Fluid {
  /** [m/s] */
  readonly soundSpeed: number;
  /** ambient, absolute [Pa] */
  readonly pressure: number;
}

export interface Weather {
  /** [K] */
  readonly temperature: number;
  /** absolute, where the air is: no sea-level value [Pa] */
  readonly pressure: number;
  /** relative humidity 0…1 [-] */
  readonly humidity: number;
}

export const DEFAULT_WEATHER: Weather = {
  temperature: CELSIUS_ZERO + 20,
  pressure: STANDARD_PRESSURE,
  humidity: 0.5,
};

/** The range that the authors of CIPM-2007 state. */
const STATED = { coldest: 15, hottest: 27, lowest: 60_000, highest: 110_000 } as const;
/** Inside it the equation is still kept to about 1e-4 (by comparison with tables, from memory); beyond it the note says more. */
const FAIR = { coldest: 0, hottest: 50 } as const;
/** Beyond it there is no answer. */
const REFUSED = { coldest: -20, hottest: 60 } as const;

/**
 * Density of moist air.
 *
 *     ρ = p·M_a/(Z·R·T)·[1 − x_v(1 − M_v/M_a)],  x_v = h·f·p_sv/p
 *
 * @param weather - temperature [K], pressure [Pa], relative humidity [-]
 * @returns density [kg/m³]
 * @throws {OutOfRangeError} beyond −20…60 °C, on a pressure that is not above that of the vapour, on a humidity beyond 0…1
 *
 * Valid for 15–27 °C and 60–110 kPa by its authors (2e-5 relative); 0–50 °C within about 1e-4; 400 ppm carbon dioxide.
 * Source: CIPM-2007: Picard, Davis, Gläser, Fujii, Metrologia 45 (2008) 149–155
 */
export function moistAirDensity(weather: Weather): number {
  const { temperature, pressure, humidity } = checkWeather(weather);
  const celsius = temperature - CELSIUS_ZERO;
  const { waterMolarMass, dryAirMolarMass, gasConstant } = CIPM_2007;
  const vapour =
    (humidity * enhancementFactor(celsius, pressure) * saturationPressure(temperature)) / pressure;
  if (!(vapour < 1))
    throw new OutOfRangeError("air.pressure", pressure, "above the pressure of the air's own vapour");
  const z = compressibilityFactor(celsius, pressure, vapour);
  const dry = (pressure * dryAirMolarMass) / (z * gasConstant * temperature);
  return dry * (1 - vapour * (1 - waterMolarMass / dryAirMolarMass));
}

function saturationPressure(temperature: number): number {
  const { a, b, c, d } = CIPM_2007.saturation;
  return Math.exp(a * temperature ** 2 + b * temperature + c + d / temperature);
}

function enhancementFactor(celsius: number, pressure: number): number {
  const { alpha, beta, gamma } = CIPM_2007.enhancement;
  return alpha + beta * pressure + gamma * celsius ** 2;
}

function compressibilityFactor(celsius: number, pressure: number, vapour: number): number {
  const { a0, a1, a2, b0, b1, c0, c1, d, e } = CIPM_2007.compressibility;
  const ratio = pressure / (celsius + CELSIUS_ZERO);
  const dry = a0 + a1 * celsius + a2 * celsius ** 2;
  const mixed = (b0 + b1 * celsius) * vapour + (c0 + c1 * celsius) * vapour ** 2;
  return 1 - ratio * (dry + mixed) + ratio ** 2 * (d + e * vapour ** 2);
}

/**
 * Dynamic viscosity of air.
 *
 *     μ = μ₀ (T/T₀)^1.5 (T₀ + S)/(T + S)
 *
 * @param temperature - of the air [K], > 0
 * @returns viscosity [Pa·s]
 * @throws {OutOfRangeError} on a temperature that is not finite and above 0
 *
 * Valid for 170–1900 K within 2 %; 0.3–0.7 % under reference data at 0–100 °C. Humidity is left out.
 * Source: Sutherland's law; White, Viscous Fluid Flow; U.S. Standard Atmosphere 1976
 */
export function airViscosity(temperature: number): number {
  requirePositive("air.temperature", temperature);
  const { viscosity, temperature: reference, constant } = SUTHERLAND;
  return viscosity * (temperature / reference) ** 1.5 * ((reference + constant) / (temperature + constant));
}

/**
 * Speed of sound in dry air.
 *
 *     a = √(κ·R·T)
 *
 * @param temperature - of the air [K], > 0
 * @returns speed of sound [m/s]
 * @throws {OutOfRangeError} on a temperature that is not finite and above 0
 *
 * Valid for an ideal gas; moist air at 20 °C is up to 0.3 % faster. Source: ISO 2533
 */
export function soundSpeed(temperature: number): number {
  requirePositive("air.temperature", temperature);
  return Math.sqrt(HEAT_CAPACITY_RATIO * DRY_AIR_GAS_CONSTANT * temperature);
}

/**
 * All that the other relations need to know of the air, from the weather.
 *
 *     ρ by CIPM-2007, μ by Sutherland, a = √(κ·R·T)
 *
 * @param weather - temperature [K], pressure [Pa], relative humidity [-]
 * @returns density [kg/m³], viscosity [Pa·s], speed of sound [m/s], pressure [Pa]
 * @throws {OutOfRangeError} as {@link moistAirDensity}
 *
 * Valid as its three parts. Source: docs/method/air.md
 */
export function airFrom(weather: Weather): Air {
  return {
    density: moistAirDensity(weather),
    viscosity: airViscosity(weather.temperature),
    soundSpeed: soundSpeed(weather.temperature),
    pressure: weather.pressure,
  };
}

/**
 * What to know about a density outside the range of its source.
 *
 *     a note outside 15–27 °C or 60–110 kPa, a stronger one outside 0–50 °C
 *
 * @param weather - temperature [K], pressure [Pa], relative humidity [-]
 * @returns the notes, none inside the stated range [-]
 * @throws {OutOfRangeError} as {@link moistAirDensity}
 *
 * Valid for any weather that has a density. Source: range as stated by the authors of CIPM-2007
 */
export function airNotes(weather: Weather): Note[] {
  const { temperature, pressure } = checkWeather(weather);
  const celsius = temperature - CELSIUS_ZERO;
  const warm = (kelvin: number) => formatQuantity(kelvin, "temperature", { decimals: 1 });
  const pressed = (pascal: number) => formatQuantity(pascal, "airPressure", { decimals: 0 });
  const notes: Note[] = [];
  if (celsius < FAIR.coldest || celsius > FAIR.hottest)
    notes.push({
      code: "air-temperature-far-out",
      message: `${warm(temperature)} lies far outside the ${warm(CELSIUS_ZERO + STATED.coldest)} to ${warm(CELSIUS_ZERO + STATED.hottest)} of the density equation; the density may be off by a few parts in a thousand.`,
    });
  else if (celsius < STATED.coldest || celsius > STATED.hottest)
    notes.push({
      code: "air-temperature-outside-range",
      message: `${warm(temperature)} lies outside the ${warm(CELSIUS_ZERO + STATED.coldest)} to ${warm(CELSIUS_ZERO + STATED.hottest)} of the density equation; the density is good to about 0.01 %.`,
    });
  if (pressure < STATED.lowest || pressure > STATED.highest)
    notes.push({
      code: "air-pressure-outside-range",
      message: `${pressed(pressure)} lies outside the ${pressed(STATED.lowest)} to ${pressed(STATED.highest)} of the density equation.`,
    });
  return notes;
}

function checkWeather(weather: Weather): Weather {
  const celsius = weather.temperature - CELSIUS_ZERO;
  if (!(celsius >= REFUSED.coldest - ROUNDING && celsius <= REFUSED.hottest + ROUNDING))
    throw new OutOfRangeError("air.temperature", weather.temperature, "253.15 to 333.15 K (−20…60 °C)");
  requirePositive("air.pressure", weather.pressure);
  if (!(weather.humidity >= 0 && weather.humidity <= 1))
    throw new OutOfRangeError("air.humidity", weather.humidity, "0 to 1");
  return weather;
}

/** 60 °C and −20 °C themselves are taken, however their kelvins round [K]. */
const ROUNDING = 1e-9;
