import { type LimitTree, limitsAt, PARTS } from "../../../shared/model/limits.ts";
import { shownUnit } from "../../../shared/units/dimensions.ts";
import { inUnit } from "../../../shared/units/format.ts";
import type { NumberSpec } from "../../../shared/units/readNumber.ts";
import type { BareSpec, FormSpec, QuantitySpec } from "./spec.ts";

/** Fields that take a number. */
export type NumericSpec = QuantitySpec | BareSpec;

const UNCERTAINTY = "uncertainty.";
const AT_LEAST_NONE = { min: 0 } as const;

/** @returns where the standard uncertainty of a field lies */
export const uncertaintyPath = (key: string): string => UNCERTAINTY + key;

/** @returns what a field of a form takes, at a path with the places of lists in it */
export function numberAt(form: FormSpec, spec: NumericSpec, path: string): NumberSpec {
  const tree = PARTS[form.collection] as LimitTree;
  const limits = path.startsWith(UNCERTAINTY) ? AT_LEAST_NONE : limitsAt(tree, path);
  if (spec.kind === "number") return { dimension: null, limits, example: spec.example };
  const { dimension, unit, example } = spec;
  return { dimension, unit, limits, example };
}

/** Digits in which a stored SI value comes back as it was typed. */
const DIGITS = 12;

/** @returns a stored number as it would be typed, with its unit */
export function typedNumber(si: number, spec: NumericSpec): string {
  if (spec.kind === "number") return String(si);
  const { label } = shownUnit(spec.dimension, spec.unit);
  return `${Number(inUnit(si, spec.dimension, label).toPrecision(DIGITS))} ${label}`;
}
