import { z } from "zod";
import { LONGEST_REASON } from "./baseLimits.ts";

/** Greater than these are never meant. */
const NONSENSE = 1e12;

/** A limit by its number, or as limits.ts has it. */
type Greatest = number | { readonly max: number };
type Range = { readonly min: number; readonly max: number };
const greatest = (limits: Greatest): number => (typeof limits === "number" ? limits : limits.max);

/**
 * The numbers of the model. Each names its SI unit in the schema's description, so that the API's documentation
 * and its messages come from the same place. JSON knows no NaN or infinity; zod refuses both.
 */
export const positive = (unit: string, limits: Greatest = NONSENSE) =>
  z
    .number()
    .gt(0)
    .max(greatest(limits))
    .describe(unit === "" ? "no unit, > 0" : `${unit}, > 0`);

export const nonNegative = (unit: string, limits: Greatest = NONSENSE) =>
  z
    .number()
    .min(0)
    .max(greatest(limits))
    .describe(unit === "" ? "no unit, ≥ 0" : `${unit}, ≥ 0`);

export const within = (unit: string, ...ends: readonly [Range] | readonly [min: number, max: number]) => {
  const { min, max } = ends.length === 1 ? ends[0] : { min: ends[0], max: ends[1] };
  return z
    .number()
    .min(min)
    .max(max)
    .describe(`${unit === "" ? "no unit" : unit}, ${min} to ${max}`);
};

/** A count between two limits. */
export const count = ({ min, max }: Range) => z.int().min(min).max(max);

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

/** Why something is out of use; absent while it is in use. */
export const reason = (of: string) =>
  z.string().trim().min(1, "say why").max(LONGEST_REASON).optional().describe(`reason for ${of}`);

/** Of a test: it stays in the book, and no figure is based on it. */
export const struckOut = () => reason("striking the whole test out: no figure is based on it");

/** Of a part or a build: what uses it keeps it, nothing new is offered it. */
export const retired = () => reason("retiring it: what uses it keeps it, nothing new is offered it");

export const note = () => z.string().max(4000).default("").describe("free text");
