import { PARTS } from "../../../shared/model/limits.ts";
import { type LimitTree, limitsAt } from "../../../shared/model/limitTree.ts";
import { asRead, type Spelling } from "../../../shared/units/decimalMark.ts";
import type { DimensionName } from "../../../shared/units/dimensions.ts";
import type { TypedQuantity } from "../../../shared/units/quantity.ts";
import type { NumberSpec } from "../../../shared/units/readNumber.ts";
import { pointText } from "../../../shared/units/shown.ts";
import type { BareSpec, FormSpec, MeasuredSpec, QuantitySpec } from "./spec.ts";

/** Fields that take a number. */
export type NumericSpec = QuantitySpec | BareSpec | MeasuredSpec;

const UNCERTAINTY = "uncertainty.";
const AT_LEAST_NONE = { min: 0 } as const;

/** @returns where the standard uncertainty of a field lies */
export const uncertaintyPath = (key: string): string => UNCERTAINTY + key;

/** @returns the text in another field of the form */
type TextAt = (path: string) => string | undefined;

/** @returns what a field of a form takes, at a path with the places of lists in it */
export function numberAt(form: FormSpec, spec: NumericSpec, path: string, textAt: TextAt): NumberSpec {
  const tree = PARTS[form.collection] as LimitTree;
  const limits = path.startsWith(UNCERTAINTY) ? AT_LEAST_NONE : limitsAt(tree, path);
  if (spec.kind === "number") return { dimension: null, limits, example: spec.example };
  // The choice's options are names of quantities.
  if (spec.kind === "measured") return { dimension: textAt(spec.by) as DimensionName, limits };
  const { dimension, example } = spec;
  return { dimension, limits, example };
}

/** @returns a stored quantity as it was typed */
export const asTyped = ({ value, unit }: TypedQuantity, spell: Spelling): string =>
  `${spell(String(value))} ${unit}`;

/** @returns a stored number as it would be typed, with its unit */
export function typedNumber(si: number, spec: QuantitySpec | BareSpec, spell: Spelling = asRead): string {
  return spell(spec.kind === "number" ? String(si) : pointText(si, spec.dimension));
}
