import { z } from "zod";
import { namedOnce } from "./api/namedOnce.ts";
import { BUILD } from "./limits.ts";
import { made } from "./made.ts";
import { MASS_GROUPS } from "./massGroups.ts";
import { anyNumber, name, nonNegative, positive } from "./scalar.ts";

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

/** Where something stands on the vehicle. */
export const place = z.strictObject({
  fromRear: anyNumber("m, from the rear axle line forwards", BUILD.ledger.place.fromRear.max),
  height: nonNegative("m, over the surface", BUILD.ledger.place.height),
});

export type Place = z.output<typeof place>;

interface Line {
  readonly name: string;
  readonly mass?: number;
  readonly made?: unknown;
  readonly alternatives: readonly { readonly name: string }[];
}

/** A line weighs something, and is not exchanged for itself. */
function checkLine({ name: own, mass, made: drawing, alternatives }: Line, context: z.RefinementCtx): void {
  const refuse = (path: (string | number)[], message: string) =>
    context.addIssue({ code: "custom", path, message });
  if (mass === undefined && drawing === undefined)
    refuse(["mass"], "Missing; allowed: kg of one piece, for example 0.0135, or how it is made.");
  alternatives.forEach((each, i) => {
    const message = `Read ${JSON.stringify(own)}, the line itself; allowed: something else than what is on board.`;
    if (each.name === own) refuse(["alternatives", i, "name"], message);
  });
}

/** @returns whether one line's alternatives lead to another line by name, straight or over further lines */
function leads(
  from: string,
  to: string,
  lines: ReadonlyMap<string, Line>,
  seen = new Set<string>(),
): boolean {
  if (from === to) return true;
  if (seen.has(from)) return false;
  seen.add(from);
  return (lines.get(from)?.alternatives ?? []).some((each) => leads(each.name, to, lines, seen));
}

/** What a line may be exchanged for isn't a line that may itself be exchanged for the first. */
function checkCircles(all: readonly Line[], context: z.RefinementCtx): void {
  const lines = new Map(all.map((line) => [line.name, line]));
  all.forEach(({ name: own, alternatives }, i) => {
    alternatives.forEach((each, j) => {
      if (each.name === own || !lines.has(each.name) || !leads(each.name, own, lines)) return;
      const message = `Read ${JSON.stringify(each.name)}, a line that may itself be exchanged for ${JSON.stringify(own)}; allowed: no circle of alternatives.`;
      context.addIssue({ code: "custom", path: [i, "alternatives", j, "name"], message });
    });
  });
}

/** Something on board that is no part of the book: wheels, a housing, screws, paint. */
const ledgerLine = z
  .strictObject({
    name: name(),
    group: z.enum(MASS_GROUPS),
    quantity: positive("pieces", BUILD.ledger.quantity).default(1),
    mass: nonNegative(
      "kg, of one piece; from how it is made where it isn't given",
      BUILD.ledger.mass,
    ).optional(),
    uncertainty: nonNegative("kg, standard, of one piece's mass", BUILD.ledger.uncertainty).optional(),
    basis: z.enum(["weighed", "estimated"]).default("estimated"),
    made: made.optional().describe("its drawing, from which it weighs what no mass says"),
    place: place.optional().describe("where it stands, for the centre of gravity"),
    alternatives: z.array(alternative).max(MOST_ALTERNATIVES).default([]).superRefine(namedOnce),
  })
  .superRefine(checkLine);

/** The lines of a build's masses, beside its motor, rotor, pack and skirt, which are lines by themselves. */
export const ledger = z.array(ledgerLine).max(MOST_LINES).superRefine(namedOnce).superRefine(checkCircles);

export type LedgerLine = z.output<typeof ledgerLine>;
