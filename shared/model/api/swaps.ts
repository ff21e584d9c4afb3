import { z } from "zod";
import { count, nonNegative, positive } from "../scalar.ts";
import { namedOnce } from "./namedOnce.ts";

const MOST_LINES = 200;
const MOST_ALTERNATIVES = 40;
const MOST_SOLUTIONS = 20;
/** [kg] */
const HEAVIEST = 1e4;
const MOST_PIECES = 1e6;
/** [days] */
const LATEST = 36_500;

const label = z.string().max(120).optional().describe("name, as shown");
const mass = nonNegative("kg, of one piece", HEAVIEST);
const uncertainty = nonNegative("kg, standard, of one piece's mass; 0 unless given", HEAVIEST).optional();

const alternative = z.strictObject({
  name: label,
  mass,
  price: nonNegative("any currency, of one piece"),
  leadTime: nonNegative("days until it is there", LATEST),
  uncertainty,
});

/** Body of POST /swaps: the lines of a vehicle's masses, what each may be exchanged for, and what they may weigh together. */
export const swapsRequest = z.strictObject({
  lines: z
    .array(
      z.strictObject({
        name: label,
        quantity: positive("pieces", MOST_PIECES).default(1),
        mass,
        uncertainty,
        alternatives: z.array(alternative).max(MOST_ALTERNATIVES),
      }),
    )
    .min(1)
    .max(MOST_LINES)
    .superRefine(namedOnce),
  allowed: nonNegative("kg, of all lines together"),
  by: z.enum(["price", "leadTime", "count"]),
  solutions: count({ min: 1, max: MOST_SOLUTIONS }).default(3).describe("how many sets, best first"),
});

const swapSet = z.strictObject({
  choices: z
    .array(z.int().min(0).nullable())
    .describe("for each line the place of the alternative taken; null: stays as it is"),
  mass: z.number().describe("kg, of all lines"),
  uncertainty: z.number().describe("kg, standard, of that mass"),
  price: z.number().describe("of all that is bought"),
  leadTime: z.number().describe("days, of what comes last"),
  count: z.int().describe("lines swapped"),
  chance: z.number().min(0).max(1).describe("that the mass is no more than allowed"),
});

export const swapsResponse = z.strictObject({
  reachable: z.boolean().describe("whether any set is light enough"),
  solutions: z
    .array(swapSet)
    .describe("best first; of equal price the lighter, of equal lead time or count the cheaper"),
  lightest: swapSet.describe("the lightest set of all, of those the cheapest"),
});
