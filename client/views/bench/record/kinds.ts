import type { TestKind } from "../../../../shared/model/tests/index.ts";
import { asked } from "./fields.ts";
import { curve } from "./kinds/curve.ts";
import { discharge } from "./kinds/discharge.ts";
import { friction } from "./kinds/friction.ts";
import { leak } from "./kinds/leak.ts";
import { motor } from "./kinds/motor.ts";
import { pull } from "./kinds/pull.ts";
import { rideHeight } from "./kinds/rideHeight.ts";
import { runLog } from "./kinds/runLog.ts";
import { thrust } from "./kinds/thrust.ts";
import { weighIn } from "./kinds/weighIn.ts";
import type { ColumnSpec, FieldSpec, FieldTexts, KindSpec } from "./spec.ts";

/** Every kind of bench test, and what it asks for. A new kind is one more file in kinds/ and one more line here. */
export const KINDS: Readonly<Record<TestKind, KindSpec>> = {
  curve,
  pull,
  motor,
  leak,
  friction,
  thrust,
  discharge,
  "ride-height": rideHeight,
  "weigh-in": weighIn,
  "run-log": runLog,
};

/** The kinds in the order in which the screen offers them. */
export const KIND_ORDER: readonly TestKind[] = [
  "pull",
  "curve",
  "leak",
  "motor",
  "friction",
  "discharge",
  "ride-height",
  "weigh-in",
  "run-log",
  "thrust",
];

const MOST_ROWS = 5000;
/** A pull, a slide or a height is read by hand. */
const MOST_ROWS_BY_HAND = 1000;
const BY_HAND: readonly TestKind[] = ["pull", "friction", "ride-height", "weigh-in", "run-log"];

/** @returns whether each row is read by hand and counts for itself; else the rows may be a dense log, of which a part says as much */
export const isByHand = (kind: TestKind): boolean => BY_HAND.includes(kind);

/** @returns how many rows a test of a kind can have */
export function mostRows(kind: TestKind): number {
  return isByHand(kind) ? MOST_ROWS_BY_HAND : MOST_ROWS;
}

/** Asked of every kind. */
export const HEAD_FIELDS: readonly FieldSpec[] = [
  { type: "date", key: "date", label: "Date" },
  { type: "text", key: "title", label: "Title", hint: "how you will find it again" },
];

export const NOTE_FIELD: FieldSpec = { type: "note", key: "note", label: "Note" };

/** Why the whole test is struck out; left out while it counts. */
export const STRUCK_OUT_FIELD: FieldSpec = { type: "reason", key: "struckOut", label: "Struck out because" };

export const AIR_FIELDS: readonly FieldSpec[] = [
  asked("air.temperature", "Temperature", "temperature", false),
  asked("air.pressure", "Air pressure", "pressure", false),
  asked("air.humidity", "Humidity", "fraction", false),
];

/** The bleed plate, where one of the book is meant. */
const PLATE_FIELD: FieldSpec = {
  type: "part",
  key: "plate",
  label: "Plate",
  collection: "plates",
  required: false,
  otherwise: "described here",
};

/** The instruments of a kind: one of the book, or its accuracy as a part of the reading, a fixed amount, or both. */
export function instrumentFields(spec: KindSpec): FieldSpec[] {
  return spec.instruments.flatMap(({ key, label, dimension }): FieldSpec[] => [
    {
      type: "part",
      key: `instruments.${key}`,
      label: `${label}, read by`,
      collection: "instruments",
      required: false,
      measures: dimension,
      otherwise: "stated here",
    },
    {
      type: "number",
      key: `instruments.${key}.percent`,
      label: `${label}, % of reading`,
      hint: "the same in all its readings",
    },
    asked(`instruments.${key}.absolute`, `${label}, fixed`, dimension, false, "another in each reading"),
  ]);
}

/** @returns every field above the rows, in the record's order */
export function fieldsOf(spec: KindSpec): FieldSpec[] {
  const plate = spec.plate ? [PLATE_FIELD] : [];
  return [
    ...HEAD_FIELDS,
    ...spec.fields,
    ...plate,
    ...AIR_FIELDS,
    ...instrumentFields(spec),
    NOTE_FIELD,
    STRUCK_OUT_FIELD,
  ];
}

/** @returns the paths at which a part of the book is chosen in the place of what the test itself could describe */
export function namedPaths(spec: KindSpec, fields: FieldTexts): string[] {
  return fieldsOf(spec).flatMap((field) =>
    field.type === "part" && field.otherwise && fields[field.key] ? [field.key] : [],
  );
}

/** @returns whether a path lies under one at which a part of the book is chosen */
export const isUnderNamed = (path: string, named: readonly string[]): boolean =>
  named.some((name) => path.startsWith(`${name}.`));

/** @returns the columns that a row has, given how the flow was taken */
export function columnsOf(spec: KindSpec, fields: FieldTexts): readonly ColumnSpec[] {
  return spec.columns.filter(({ flowFrom }) => flowFrom === undefined || flowFrom === fields.flowFrom);
}

/** @returns true where rows count the open holes of a bleed plate */
export function hasPlate(spec: KindSpec, fields: FieldTexts): boolean {
  return spec.plate && fields.flowFrom === "bleed-plate";
}
