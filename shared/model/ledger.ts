import { z } from "zod";
import { namedOnce } from "./api/namedOnce.ts";
import { BUILD } from "./limits.ts";
import { name, nonNegative, positive } from "./scalar.ts";

/** What a vehicle's masses belong to, in the order in which they are shown. */
export const MASS_GROUPS = [
  "drive",
  "suction",
  "electronics",
  "structure",
  "cover",
  "paint and filler",
  "wiring",
  "pack",
] as const;

export type MassGroup = (typeof MASS_GROUPS)[number];

const MOST_LINES = 200;

const MOST_ALTERNATIVES = 12;
const { alternatives: other } = BUILD.ledger;

/** What a line may be exchanged for. */
const alternative = z.strictObject({
  name: name(),
  mass: nonNegative("kg, of one piece", other.mass),
  uncertainty: nonNegative("kg, standard, of one piece's mass", other.uncertainty).optional(),
  price: nonNegative("any currency, of one piece", other.price).default(0),
  leadTime: nonNegative("days until it is there", other.leadTime).default(0),
});

export type LineAlternative = z.output<typeof alternative>;

/** Something on board that is no part of the book: wheels, a housing, screws, paint. */
const ledgerLine = z.strictObject({
  name: name(),
  group: z.enum(MASS_GROUPS),
  quantity: positive("pieces", BUILD.ledger.quantity).default(1),
  mass: nonNegative("kg, of one piece", BUILD.ledger.mass),
  uncertainty: nonNegative("kg, standard, of one piece's mass", BUILD.ledger.uncertainty).optional(),
  basis: z.enum(["weighed", "estimated"]).default("estimated"),
  alternatives: z.array(alternative).max(MOST_ALTERNATIVES).default([]).superRefine(namedOnce),
});

/** The lines of a build's masses, beside its motor, rotor, pack and skirt, which are lines by themselves. */
export const ledger = z.array(ledgerLine).max(MOST_LINES).superRefine(namedOnce);

export type LedgerLine = z.output<typeof ledgerLine>;
