import { z } from "zod";
import { BUILD } from "./limits.ts";
import { fraction, nonNegative, within } from "./scalar.ts";

/** The air that a prediction is made for. */
export const weather = z.strictObject({
  temperature: within("K", BUILD.air.temperature).default(293.15),
  pressure: within("Pa", BUILD.air.pressure).default(101325),
  humidity: fraction().default(0.5),
});

/** Between pack and motor, and what else the pack feeds. */
export const supply = z.strictObject({
  duty: within("fraction of the pack's voltage", BUILD.supply.duty).default(1),
  driverResistance: nonNegative("Ω", BUILD.supply.driverResistance).default(0),
  auxCurrent: nonNegative("A, other loads on the pack", BUILD.supply.auxCurrent).default(0),
});
