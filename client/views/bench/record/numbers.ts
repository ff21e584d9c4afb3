import { TEST, TESTS } from "../../../../shared/model/limits.ts";
import { type LimitTree, limitsAt } from "../../../../shared/model/limitTree.ts";
import type { TestKind } from "../../../../shared/model/tests/index.ts";
import { asRead, type Spelling } from "../../../../shared/units/decimalMark.ts";
import { type DimensionName, dimension } from "../../../../shared/units/dimensions.ts";
import type { Limits } from "../../../../shared/units/limits.ts";
import type { TypedQuantity } from "../../../../shared/units/quantity.ts";
import type { NumberSpec } from "../../../../shared/units/readNumber.ts";
import type { DraftHole } from "./draft.ts";
import type { ColumnSpec, FieldSpec } from "./spec.ts";

/** The instruments' limits are the same for each of them. */
const OF_INSTRUMENT = /^instruments\.\w+\./;

function limitsOf(kind: TestKind, path: string): Limits | undefined {
  const common = limitsAt(TEST as LimitTree, path.replace(OF_INSTRUMENT, "instruments."));
  return common ?? limitsAt(TESTS[kind] as LimitTree, path);
}

/** @returns what a field above the rows takes; null where it is no number */
export function fieldNumber(kind: TestKind, field: FieldSpec): NumberSpec | null {
  const limits = limitsOf(kind, field.key);
  if (field.type === "quantity") return { dimension: field.dimension, limits };
  return field.type === "number" ? { dimension: null, limits, example: "2" } : null;
}

/** @returns what a column's cells take, in the unit that its header means; null where they are no numbers */
export function cellNumber(
  kind: TestKind,
  { key, dimension: name }: ColumnSpec,
  unit: string | undefined,
): NumberSpec | null {
  return name === null ? null : { dimension: name, unit, limits: limitsOf(kind, `rows.${key}`) };
}

export type HoleNumber = Exclude<keyof DraftHole, "key" | "edge">;

const { holes: HOLES } = TEST.plate;

/** What a kind of hole in a bleed plate says of itself. */
export const HOLE_NUMBERS: Readonly<Record<HoleNumber, NumberSpec>> = {
  count: { dimension: null, limits: HOLES.count, example: "8" },
  diameter: { dimension: "length", limits: HOLES.diameter, example: "3 mm" },
  thickness: { dimension: "length", limits: HOLES.thickness, example: "2 mm" },
  dischargeCoefficient: { dimension: null, limits: HOLES.dischargeCoefficient, example: "0.61" },
};

/** @returns how many holes of a kind may be open: as many as the plate has of them, where that is known */
export function openNumber(made: number | null): NumberSpec {
  return { dimension: null, limits: { ...TEST.open, max: made ?? TEST.open.max }, example: "2" };
}

/** One speed for all points of a curve. */
export const COMMON_SPEED: NumberSpec = { dimension: "speed", limits: TESTS.curve.rows.speed };

/**
 * A stored quantity as text that reads back as the same number and unit.
 *
 * @param spell - with the reader's decimal mark unless given
 */
export function quantityText({ value, unit }: TypedQuantity, spell: Spelling = asRead): string {
  return `${spell(String(value))} ${unit}`.trim();
}

/** @returns the units to choose from, the present one among them even where it is none of the usual */
export function unitLabels(name: DimensionName, present: string): string[] {
  const labels = dimension(name).shown.map((unit) => unit.label);
  return labels.includes(present) ? labels : [present, ...labels];
}
