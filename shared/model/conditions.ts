import { z } from "zod";
import { fraction, nonNegative, within } from "./scalar.ts";

/** The air that a prediction is made for. */
export const weather = z.strictObject({
  temperature: within("K", 253.15, 333.15).default(293.15),
  pressure: within("Pa", 30e3, 120e3).default(101325),
  humidity: fraction().default(0.5),
});

/** Between pack and motor, and what else the pack feeds. */
export const supply = z.strictObject({
  duty: within("fraction of the pack's voltage", 0, 1).default(1),
  driverResistance: nonNegative("Ω", 100).default(0),
  auxCurrent: nonNegative("A, other loads on the pack", 1e3).default(0),
});
