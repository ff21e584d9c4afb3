import { type DimensionName, dimension, shownUnit } from "../../../../shared/units/dimensions.ts";
import { fromUnit, inUnit } from "../../../../shared/units/format.ts";
import { parseNumber } from "../../../../shared/units/number.ts";

/** A number that is typed, with or without its unit. */
export interface NumberSpec {
  readonly label: string;
  /** null: a bare number */
  readonly dimension: DimensionName | null;
  /** meant where none is typed; the dimension's first otherwise */
  readonly unit?: string;
  /** what may follow a bare number: "×" */
  readonly suffix?: string;
  /** what the model takes, both inclusive, SI */
  readonly limits: readonly [number, number];
  /** as one would type it */
  readonly example: string;
}

export type Reading = { readonly value: number } | { readonly problem: string };

/** Digits that a number taken back from SI is shown with. */
const DIGITS = 10;
const SLACK = 1e-9;

/** @returns label of the unit that is meant where none is typed */
export function unitOf({ dimension: name, unit, suffix = "" }: NumberSpec): string {
  return name ? shownUnit(name, unit).label : suffix;
}

/** The number without its unit, and that unit; the longest unit that fits. */
function split(spec: NumberSpec, text: string): { readonly number: string; readonly unit: string } {
  const known = spec.dimension ? dimension(spec.dimension).shown.map(({ label }) => label) : [];
  const labels = [...known, spec.suffix ?? ""].filter(Boolean).sort((a, b) => b.length - a.length);
  const unit = labels.find((label) => text.endsWith(label));
  return unit ? { number: text.slice(0, -unit.length), unit } : { number: text, unit: unitOf(spec) };
}

/** @returns a value as a field of that kind shows it, without its unit */
export function numberText(spec: NumberSpec, si: number): string {
  const shown = spec.dimension ? inUnit(si, spec.dimension, spec.unit) : si;
  return String(Number(shown.toPrecision(DIGITS)));
}

function allowedText(spec: NumberSpec): string {
  const [low, high] = spec.limits.map((limit) => numberText(spec, limit));
  const unit = unitOf(spec);
  return `allowed: ${low} to ${high}${unit && `\u2009${unit}`}, for example “${spec.example}”.`;
}

/**
 * Reads what was typed.
 *
 * @param spec - what it stands for
 * @param text - a number, a unit of its kind may follow it
 * @returns the SI value, or a message that names what was read, what is allowed and an example; null where nothing was typed
 */
export function readNumber(spec: NumberSpec, text: string): Reading | null {
  const trimmed = text.trim();
  if (trimmed === "") return null;
  const { number, unit } = split(spec, trimmed);
  const read = parseNumber(number);
  if (read === null) return { problem: `Read “${trimmed}”, which is no number here; ${allowedText(spec)}` };
  const value = spec.dimension ? fromUnit(read, spec.dimension, unit) : read;
  const [low, high] = spec.limits;
  const slack = SLACK * Math.max(Math.abs(low), Math.abs(high));
  if (!(value >= low - slack && value <= high + slack))
    return { problem: `Read “${trimmed}”; ${allowedText(spec)}` };
  return { value: Math.min(high, Math.max(low, value)) };
}
