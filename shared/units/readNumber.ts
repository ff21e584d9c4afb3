import { asRead } from "./decimalMark.ts";
import { type DimensionName, dimension } from "./dimensions.ts";
import { type Limits, limitsInWords, type Shown, withinLimits } from "./limits.ts";
import { headOf } from "./number.ts";
import { parseQuantity } from "./parse.ts";
import { refusalText, type TypedQuantity, toSI, UnitError } from "./quantity.ts";
import { unitOf } from "./showing.ts";
import { typedText } from "./shown.ts";

/** A number that is typed: what it stands for, what it may be. */
export interface NumberSpec extends Shown {
  /** null: a bare number */
  readonly dimension: DimensionName | null;
  /** meant where none is typed; the quantity's first otherwise */
  readonly unit?: string;
  /** what the model takes, SI */
  readonly limits?: Limits;
  /** as one would type it; the quantity's own unless given */
  readonly example?: string;
}

export interface ReadNumber {
  /** SI, on its limit where only rounding put it beyond; a bare number as it is */
  readonly value: number;
  /** as typed, a bare number without a unit */
  readonly typed: TypedQuantity;
}

/** What one field's text says, or what is wrong with it. */
export type Reading<T> = T | { readonly message: string };

export const isGood = <T extends object>(reading: Reading<T>): reading is T => !("message" in reading);

/** Digits of an example that is said in another unit than it was thought of in. */
const EXAMPLE_DIGITS = 2;

/** @returns an example of what may be typed, in the unit that the book shows */
export function exampleOf({ dimension: name, unit, example }: NumberSpec): string {
  if (!name) return asRead(example ?? "2");
  const [first] = dimension(name).shown;
  const said = example ?? dimension(name).example;
  if (unit !== undefined || unitOf(name) === first.label) return asRead(said);
  return typedText(toSI(parseQuantity(said, name, first.label), name), name, EXAMPLE_DIGITS);
}

/** @returns what is wrong with a field, with what was read, what is allowed and an example; what may be typed stands in for limits where there are none */
function refused(
  spec: NumberSpec,
  read: string,
  unit: string | undefined,
  reason: string,
): { message: string } {
  const { dimension: name, limits = {} } = spec;
  const words = limitsInWords(limits, unit === undefined ? spec : { ...spec, unit });
  const allowed =
    words ||
    (name
      ? dimension(name)
          .shown.map(({ label }) => label)
          .join(", ")
      : "a number");
  return { message: refusalText(read, allowed, exampleOf(spec), reason) };
}

/** @returns the message of a number that a form can't do without, where nothing was typed */
export function needed(label: string, spec: NumberSpec): { readonly message: string } {
  return { message: `${label} is needed, for example "${exampleOf(spec)}".` };
}

const THOUSAND = 1000;

function bareNumber(text: string, suffix: string): number | null {
  const head = headOf(text);
  const behind = head?.rest.trim();
  if (!head || head.value === null) return null;
  const value = /^k$/i.test(behind ?? "") ? head.value * THOUSAND : head.value;
  const isBare = behind === "" || behind === suffix || value !== head.value;
  return isBare && Number.isFinite(value) ? value : null;
}

function typedIn(spec: NumberSpec, text: string): Reading<TypedQuantity> {
  const { dimension: name, unit, suffix = "" } = spec;
  if (name === null) {
    const value = bareNumber(text, suffix);
    return value === null ? refused(spec, text, undefined, "That is no number here.") : { value, unit: "" };
  }
  try {
    return parseQuantity(text, name, unit);
  } catch (error) {
    if (!(error instanceof UnitError)) throw error;
    // a wrong unit is answered with the units, a wrong number with what it may be
    return error.about === "unit"
      ? { message: refusalText(error.read, error.allowed, exampleOf(spec), error.reason) }
      : refused(spec, text, undefined, error.reason);
  }
}

/**
 * Reads what was typed into a field: the one reader of all forms.
 *
 * @param spec - what it stands for, the unit meant, what is allowed
 * @param text - "38", "0,4 psi", "1 1/2 in", "28k"; an empty one is refused as well
 * @returns the number in SI and as typed, or one message that names what was read, what is allowed and an example
 */
export function readNumber(spec: NumberSpec, text: string): Reading<ReadNumber> {
  const trimmed = text.trim();
  if (trimmed === "") return refused(spec, "", undefined, "");
  const typed = typedIn(spec, trimmed);
  if (!isGood(typed)) return typed;
  const si = spec.dimension ? toSI(typed, spec.dimension, trimmed) : typed.value;
  const value = withinLimits(si, spec.limits ?? {});
  return value === null ? refused(spec, trimmed, typed.unit, "") : { value, typed };
}
