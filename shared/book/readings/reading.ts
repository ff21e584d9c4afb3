import type { AirAsRead, Instrument } from "../../model/tests/common.ts";
import { type Air, airFrom, DEFAULT_WEATHER } from "../../physics/air.ts";
import type { DimensionName } from "../../units/dimensions.ts";
import { type TypedQuantity, toSI } from "../../units/quantity.ts";

/** A row of a test in SI, with its place in the test and why it is left out, where it is: set aside, or it contradicts itself. */
export type Reading<T> = T & { readonly row: number; readonly setAside: string | null };

/** @returns a quantity that may be left out [SI of the dimension] */
export const maybe = (typed: TypedQuantity | undefined, name: DimensionName): number | undefined =>
  typed && toSI(typed, name);

/** @returns the air of a test's day [kg/m³, Pa·s, m/s, Pa]; 20 °C, 101 325 Pa, 50 % where none was read */
export function airOfDay(read: AirAsRead | undefined): Air {
  if (!read) return airFrom(DEFAULT_WEATHER);
  return airFrom({
    temperature: toSI(read.temperature, "temperature"),
    pressure: toSI(read.pressure, "pressure"),
    humidity: toSI(read.humidity, "fraction"),
  });
}

/** @returns standard uncertainty of one reading [SI of the dimension]: percent and fixed part added as squares; 0 where none is stated */
export function instrumentUncertainty(
  instrument: Instrument | undefined,
  reading: number,
  name: DimensionName,
): number {
  if (!instrument) return 0;
  const relative = ((instrument.percent ?? 0) / 100) * reading;
  return Math.hypot(relative, maybe(instrument.absolute, name) ?? 0);
}

/** @returns the rows that take part in a fit */
export function inUse<T extends { readonly setAside: string | null }>(readings: readonly T[]): T[] {
  return readings.filter((reading) => reading.setAside === null);
}
