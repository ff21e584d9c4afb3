import { z } from "zod";

/**
 * The numbers of the model. Each names its SI unit in the schema's description, so that the API's documentation
 * and its messages come from the same place. JSON knows no NaN or infinity; zod refuses both.
 */
export const positive = (unit: string, max = 1e12) =>
  z
    .number()
    .gt(0)
    .max(max)
    .describe(unit === "" ? "no unit, > 0" : `${unit}, > 0`);

export const nonNegative = (unit: string, max = 1e12) =>
  z
    .number()
    .min(0)
    .max(max)
    .describe(unit === "" ? "no unit, ≥ 0" : `${unit}, ≥ 0`);

export const within = (unit: string, min: number, max: number) =>
  z
    .number()
    .min(min)
    .max(max)
    .describe(`${unit === "" ? "no unit" : unit}, ${min} to ${max}`);

export const anyNumber = (unit: string, limit = 1e12) =>
  z
    .number()
    .min(-limit)
    .max(limit)
    .describe(unit === "" ? "no unit" : unit);

export const fraction = () => within("fraction", 0, 1);

export const identifier = () =>
  z
    .string()
    .regex(/^[a-z0-9][a-z0-9-]{0,63}$/, "an identifier: lower-case letters, digits and hyphens, at most 64")
    .describe("identifier of a stored record");

export const name = () => z.string().trim().min(1, "a name is needed").max(120).describe("name, as shown");

export const note = () => z.string().max(4000).default("").describe("free text");

/** Standard uncertainties of a part's own numbers, in their SI units, by field name. */
export const uncertainties = () =>
  z
    .record(z.string().max(64), z.number().min(0).max(1e12))
    .default({})
    .describe("standard uncertainty by field name, in the field's unit");

/** Names of fields whose value is a guess or a maker's figure, not a measurement; shown with a mark everywhere. */
export const estimatedFields = () =>
  z.array(z.string().max(64)).max(40).default([]).describe("fields whose value is estimated");
