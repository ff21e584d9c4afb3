import { type DimensionName, dimension } from "./dimensions.ts";
import { conversionOf } from "./readUnit.ts";

/** A quantity as a person typed it: the number and the unit, nothing converted. */
export interface TypedQuantity {
  readonly value: number;
  readonly unit: string;
}

/** So much of what was read stands in a message [characters]. */
const QUOTED = 60;

/** @returns a text as a message quotes it */
export function shortened(text: string): string {
  const characters = [...text];
  return characters.length > QUOTED ? `${characters.slice(0, QUOTED).join("")}…` : text;
}

/** What was typed is no such quantity; the message names what was read, what is allowed and an example. */
export class UnitError extends Error {
  readonly code = "unit";
  constructor(
    readonly read: string,
    readonly allowed: string,
    readonly example: string,
    reason: string,
  ) {
    super(`${reason} Read "${shortened(read)}"; allowed: ${allowed}, for example "${example}".`);
    this.name = "UnitError";
  }
}

function allowedUnits(name: DimensionName): string {
  return dimension(name)
    .shown.map((unit) => unit.label)
    .join(", ");
}

/** @returns why a quantity can't be read, with what is allowed and an example */
export function refuse(read: string, name: DimensionName, reason: string): UnitError {
  return new UnitError(read, allowedUnits(name), dimension(name).example, reason);
}

function spelled({ value, unit }: TypedQuantity): string {
  return `${value} ${unit}`;
}

/** "thermalResistance" as a reader says it. */
function inWords(name: DimensionName): string {
  return name === "kv"
    ? "a speed constant"
    : name.replace(/[A-Z]/g, (capital) => ` ${capital.toLowerCase()}`);
}

/** A unit begins with neither a number nor a sign of multiplication: "110×90 mm" are two numbers. */
const SECOND_NUMBER = /^(?:[×✕*·⋅∙•]|x\s*[\d.,])|^[+-]?[\d.,½¼¾]|[a-z"'°]\s+[+-]?\d/iu;

/** @returns what is wrong with a unit of a quantity, in words */
export function unitProblem(unit: string, name: DimensionName): string {
  if (SECOND_NUMBER.test(unit.trim())) return "Two numbers stand in it; one is asked for.";
  return `"${shortened(unit)}" is no unit of ${inWords(name)}.`;
}

/**
 * SI value of a typed quantity.
 *
 * @param quantity - the number and the unit as typed
 * @param name - which quantity it must be
 * @param read - what to call it in a message, the quantity itself unless given
 * @returns the value in the dimension's SI unit (rpm/V for kv)
 * @throws {UnitError} on an unknown unit or one of another quantity
 *
 * Valid for the units that the table shows and for all that {@link conversionOf} reads.
 */
export function toSI(quantity: TypedQuantity, name: DimensionName, read = spelled(quantity)): number {
  const { value, unit } = quantity;
  if (!Number.isFinite(value)) throw refuse(read, name, "The number is too large or none.");
  const conversion = conversionOf(name, unit);
  if (!conversion) throw refuse(read, name, unitProblem(unit, name));
  return value * conversion.factor + conversion.offset;
}
