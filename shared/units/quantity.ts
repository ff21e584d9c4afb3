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

/**
 * The one message of a number that is refused.
 *
 * @param read - as typed; empty where nothing was
 * @param allowed - limits or units, in words
 * @param example - as one would type it
 * @param reason - a sentence on what is wrong with it, where that isn't plain from what is allowed
 */
export function refusalText(read: string, allowed: string, example: string, reason = ""): string {
  const said = read === "" ? "Nothing was typed" : `${reason && `${reason} `}Read "${shortened(read)}"`;
  return `${said}; allowed: ${allowed}, for example "${example}".`;
}

/** What was typed is no such quantity; the message names what was read, what is allowed and an example. */
export class UnitError extends Error {
  readonly code = "unit";
  constructor(
    readonly read: string,
    readonly allowed: string,
    readonly example: string,
    readonly reason: string,
    /** what is wrong: the unit, or the number before it */
    readonly about: "number" | "unit",
  ) {
    super(refusalText(read, allowed, example, reason));
    this.name = "UnitError";
  }
}

function allowedUnits(name: DimensionName): string {
  return dimension(name)
    .shown.map((unit) => unit.label)
    .join(", ");
}

/** @returns why a quantity can't be read, with what is allowed and an example */
export function refuse(
  read: string,
  name: DimensionName,
  reason: string,
  about: UnitError["about"] = "number",
): UnitError {
  return new UnitError(read, allowedUnits(name), dimension(name).example, reason, about);
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

export const TWO_NUMBERS = "Two numbers stand in it; one is asked for.";

/** A unit begins with neither a number nor a sign of multiplication: "110×90 mm" are two numbers. */
const SECOND_NUMBER = /^(?:[×✕*·⋅∙•]|x\s*[\d.,])|^[+-]?[\d.,½¼¾]|[a-z"'°]\s+[+-]?\d/iu;

/** @returns why a text is no unit of a quantity */
export function refuseUnit(read: string, unit: string, name: DimensionName): UnitError {
  if (SECOND_NUMBER.test(unit.trim())) return refuse(read, name, TWO_NUMBERS);
  return refuse(read, name, `"${shortened(unit)}" is no unit of ${inWords(name)}.`, "unit");
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
  if (!conversion) throw refuseUnit(read, unit, name);
  return value * conversion.factor + conversion.offset;
}
