import { DIMENSION_NAMES, type DimensionName, dimension, type ShownUnit } from "./dimensions.ts";

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

/** Short forms that mean something else outside their quantity ("18 C" is a temperature, not a charge). */
const SYNONYMS: Partial<Record<DimensionName, Readonly<Record<string, string>>>> = {
  temperature: { C: "°C", F: "°F" },
  fraction: { "": "1" },
};

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

const SHOWN = DIMENSION_NAMES.map(dimension);
const LABELS: ReadonlySet<string> = new Set(SHOWN.flatMap(({ shown }) => shown.map(({ label }) => label)));

/** @returns whether somewhere in a record a quantity stands in a unit beyond the table, which needs parse.ts to be read */
export function hasFreeUnit(record: unknown): boolean {
  if (typeof record !== "object" || record === null) return false;
  const { unit, value } = record as { readonly unit?: unknown; readonly value?: unknown };
  if (typeof unit === "string" && typeof value === "number") return !LABELS.has(unit.trim());
  return Object.values(record).some(hasFreeUnit);
}

function fromTable(value: number, unit: ShownUnit): number {
  return value * unit.factor + (unit.offset ?? 0);
}

/** Reads a unit that the table of dimensions does not show; throws as {@link toSI}. */
export type FreeUnits = (quantity: TypedQuantity, name: DimensionName, read: string) => number;

let freeUnits: FreeUnits | null = null;

/** Takes the reader of units beyond the table: parse.ts brings it, so that a page which needs the table alone loads no more. */
export function takeFreeUnits(reader: FreeUnits): void {
  freeUnits = reader;
}

/** The table's own units of a quantity, then those of another in the same SI unit: a pressure in MPa. */
function shownAs(unit: string, name: DimensionName): ShownUnit | undefined {
  const label = SYNONYMS[name]?.[unit.trim()] ?? unit.trim();
  const { si, shown } = dimension(name);
  const labelled = (candidate: ShownUnit) => candidate.label === label;
  const found = shown.find(labelled);
  if (found || !LABELS.has(label)) return found;
  return SHOWN.find((other) => other.si === si && other.shown.some(labelled))?.shown.find(labelled);
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
 * Valid for the units that the table shows and, once parse.ts is loaded, for those that it knows.
 */
export function toSI(quantity: TypedQuantity, name: DimensionName, read = spelled(quantity)): number {
  const { value, unit } = quantity;
  if (!Number.isFinite(value)) throw refuse(read, name, "The number is too large or none.");
  const shown = shownAs(unit, name);
  if (shown) return fromTable(value, shown);
  if (name === "fraction") throw refuse(read, name, `"${shortened(unit)}" is no unit of a fraction.`);
  if (!freeUnits) throw new Error(`The unit "${shortened(unit)}" needs shared/units/parse.ts loaded.`);
  return freeUnits(quantity, name, read);
}
