import type { Rotor } from "../../../../shared/model/parts/rotor.ts";
import type { CollectionName } from "../../../../shared/model/record.ts";
import type { TestKind } from "../../../../shared/model/tests/index.ts";
import type { DimensionName } from "../../../../shared/units/dimensions.ts";

/** A test as the form keeps it: every field's text by its path in the record ("air.temperature" → "18 °C"). */
export type FieldTexts = Readonly<Record<string, string>>;

interface Named {
  /** path in the record's data */
  readonly key: string;
  readonly label: string;
  readonly hint?: string;
}

export type PartCollection = Exclude<CollectionName, "tests" | "builds">;

export type FieldSpec = Named &
  (
    | { readonly type: "quantity"; readonly dimension: DimensionName; readonly required: boolean }
    | {
        readonly type: "part";
        readonly collection: PartCollection;
        readonly required: boolean;
        /** of the rotors, those of one kind alone */
        readonly rotors?: Rotor["kind"];
      }
    | { readonly type: "choice"; readonly options: readonly (readonly [value: string, label: string])[] }
    | { readonly type: "number" | "text" | "note" | "date" }
  );

/** One reading of a row. */
export interface ColumnSpec {
  readonly key: string;
  readonly label: string;
  readonly dimension: DimensionName | null;
  /** required: must be given; optional: may be left out; nullable: left empty, the record says null; check: yes or no */
  readonly need: "required" | "optional" | "nullable" | "check";
  /** a circumstance, not a reading: its last value is filled in for the next row */
  readonly carried?: boolean;
  readonly hint?: string;
  /** what an empty cell means, where it means something */
  readonly fallback?: string;
  /** "bleed-plate" or "known-flow": only where the flow is taken so */
  readonly flowFrom?: string;
}

export interface InstrumentSpec {
  readonly key: string;
  readonly label: string;
  readonly dimension: DimensionName;
}

/** What a kind of test asks for. Forms, CSV and corrections read this one table. */
export interface KindSpec {
  readonly kind: TestKind;
  /** "Pull test" */
  readonly name: string;
  /** what one row is: "pull" */
  readonly row: string;
  readonly fields: readonly FieldSpec[];
  readonly columns: readonly ColumnSpec[];
  readonly instruments: readonly InstrumentSpec[];
  /** rows may tell how many holes of a bleed plate were open */
  readonly plate: boolean;
}

const part = (
  key: string,
  label: string,
  collection: PartCollection,
  required = true,
  hint?: string,
): FieldSpec => ({ type: "part", key, label, collection, required, hint });

const rotorPart = (label: string, rotors: Rotor["kind"]): FieldSpec => ({
  type: "part",
  key: "rotor",
  label,
  collection: "rotors",
  required: true,
  rotors,
});

const asked = (
  key: string,
  label: string,
  dimension: DimensionName,
  required = true,
  hint?: string,
): FieldSpec => ({ type: "quantity", key, label, dimension, required, hint });

const FLOW_FROM: FieldSpec = {
  type: "choice",
  key: "flowFrom",
  label: "Flow from",
  options: [
    ["bleed-plate", "a bleed plate"],
    ["known-flow", "a flow meter"],
  ],
};

const flowColumn: ColumnSpec = {
  key: "flow",
  label: "Flow",
  dimension: "flow",
  need: "required",
  flowFrom: "known-flow",
};

const curve: KindSpec = {
  kind: "curve",
  name: "Curve test",
  row: "point",
  plate: true,
  fields: [
    rotorPart("Rotor", "ducted"),
    asked("diameter", "Rotor diameter", "length"),
    part("motor", "Motor that turned it", "motors", false, "gives the shaft power from its current"),
    FLOW_FROM,
  ],
  columns: [
    { key: "speed", label: "Speed", dimension: "speed", need: "required", carried: true },
    { key: "pressure", label: "Pressure", dimension: "pressure", need: "required" },
    flowColumn,
    { key: "voltage", label: "Voltage", dimension: "voltage", need: "optional" },
    { key: "current", label: "Current", dimension: "current", need: "optional" },
    { key: "torque", label: "Torque", dimension: "torque", need: "optional" },
    { key: "density", label: "Air density", dimension: "density", need: "optional", carried: true },
  ],
  instruments: [
    { key: "pressure", label: "Pressure", dimension: "pressure" },
    { key: "flow", label: "Flow", dimension: "flow" },
    { key: "speed", label: "Speed", dimension: "speed" },
    { key: "current", label: "Current", dimension: "current" },
  ],
};

const pull: KindSpec = {
  kind: "pull",
  name: "Pull test",
  row: "pull",
  plate: false,
  fields: [
    part("rotor", "Rotor", "rotors"),
    asked("diameter", "Rotor diameter", "length"),
    part("motor", "Motor", "motors"),
    part("pack", "Pack", "packs"),
    part("skirt", "Skirt", "skirts"),
    part("surface", "Surface", "surfaces"),
    {
      type: "choice",
      key: "direction",
      label: "Pulled",
      options: [
        ["straight-off", "straight off the surface"],
        ["along", "along the surface"],
        ["ceiling", "hung from the ceiling"],
      ],
    },
    asked("rigMass", "Rig mass", "mass", true, "what hangs on the cup besides the load"),
    asked("duty", "Duty", "fraction"),
    asked("charge", "State of charge", "fraction", false, "where no voltage is read"),
  ],
  columns: [
    { key: "held", label: "Held", dimension: "load", need: "required", hint: "0 if it let go at once" },
    {
      key: "letGo",
      label: "Let go",
      dimension: "load",
      need: "nullable",
      hint: "empty if you stopped before",
    },
    { key: "voltage", label: "Voltage", dimension: "voltage", need: "optional" },
    {
      key: "gap",
      label: "Shim",
      dimension: "length",
      need: "optional",
      carried: true,
      hint: "in the place of the set gap",
    },
  ],
  instruments: [
    { key: "load", label: "Load", dimension: "load" },
    { key: "voltage", label: "Voltage", dimension: "voltage" },
  ],
};

const motor: KindSpec = {
  kind: "motor",
  name: "Motor test",
  row: "run",
  plate: false,
  fields: [
    part("motor", "Motor", "motors"),
    asked("resistance", "Resistance", "resistance", false, "ohmmeter, leads taken off"),
  ],
  columns: [
    { key: "voltage", label: "Voltage", dimension: "voltage", need: "required" },
    { key: "current", label: "Current", dimension: "current", need: "required" },
    { key: "speed", label: "Speed", dimension: "speed", need: "required", hint: "0 = blocked" },
    { key: "noLoad", label: "No load", dimension: null, need: "check" },
    {
      key: "throttle",
      label: "Throttle",
      dimension: "fraction",
      need: "optional",
      carried: true,
      fallback: "100 %",
    },
  ],
  instruments: [
    { key: "voltage", label: "Voltage", dimension: "voltage" },
    { key: "current", label: "Current", dimension: "current" },
    { key: "speed", label: "Speed", dimension: "speed" },
  ],
};

const leak: KindSpec = {
  kind: "leak",
  name: "Leak test",
  row: "point",
  plate: true,
  fields: [
    part("skirt", "Skirt", "skirts"),
    part("surface", "Surface", "surfaces"),
    asked("gap", "Shim", "length", false, "in the place of the skirt's set gap"),
    FLOW_FROM,
  ],
  columns: [
    { key: "pressure", label: "Cavity pressure", dimension: "pressure", need: "required" },
    flowColumn,
    {
      key: "platePressure",
      label: "Drop over the plate",
      dimension: "pressure",
      need: "required",
      flowFrom: "bleed-plate",
    },
  ],
  instruments: [
    { key: "pressure", label: "Pressure", dimension: "pressure" },
    { key: "flow", label: "Flow", dimension: "flow" },
  ],
};

const friction: KindSpec = {
  kind: "friction",
  name: "Friction test",
  row: "slide",
  plate: false,
  fields: [
    part("surface", "Surface", "surfaces"),
    {
      type: "choice",
      key: "contact",
      label: "What slid",
      options: [
        ["wheels", "the vehicle on its wheels"],
        ["skirt", "a piece of skirt"],
      ],
    },
    part("skirt", "Skirt", "skirts", false, "where it was a skirt that slid"),
  ],
  columns: [
    { key: "held", label: "Held", dimension: "angle", need: "nullable", hint: "steepest tilt that held" },
    { key: "slid", label: "Slid", dimension: "angle", need: "nullable", hint: "empty if you stopped before" },
  ],
  instruments: [{ key: "angle", label: "Angle", dimension: "angle" }],
};

const thrust: KindSpec = {
  kind: "thrust",
  name: "Thrust test",
  row: "reading",
  plate: false,
  fields: [
    rotorPart("Propeller", "propeller"),
    asked("diameter", "Propeller diameter", "length"),
    part("motor", "Motor that turned it", "motors", false, "gives the shaft power from its current"),
  ],
  columns: [
    { key: "speed", label: "Speed", dimension: "speed", need: "required" },
    { key: "thrust", label: "Thrust", dimension: "load", need: "required", hint: "towards the surface" },
    { key: "current", label: "Current", dimension: "current", need: "optional", hint: "at full throttle" },
    { key: "torque", label: "Torque", dimension: "torque", need: "optional" },
    { key: "voltage", label: "Voltage", dimension: "voltage", need: "optional" },
    {
      key: "throttle",
      label: "Throttle",
      dimension: "fraction",
      need: "optional",
      carried: true,
      fallback: "100 %",
    },
  ],
  instruments: [
    { key: "thrust", label: "Thrust", dimension: "load" },
    { key: "speed", label: "Speed", dimension: "speed" },
    { key: "torque", label: "Torque", dimension: "torque" },
    { key: "current", label: "Current", dimension: "current" },
  ],
};

const discharge: KindSpec = {
  kind: "discharge",
  name: "Discharge test",
  row: "reading",
  plate: false,
  fields: [
    part("pack", "Pack", "packs"),
    {
      type: "choice",
      key: "across",
      label: "Voltage of",
      options: [
        ["pack", "the whole pack"],
        ["plug", "one cell of it, at the balance plug"],
        ["cell", "a single cell by itself"],
      ],
    },
    {
      type: "choice",
      key: "end",
      label: "Drawn from full",
      options: [
        ["empty", "down to the cell's minimum"],
        ["stopped", "and stopped before"],
      ],
    },
  ],
  columns: [
    {
      key: "charge",
      label: "Drawn so far",
      dimension: "charge",
      need: "optional",
      hint: "or the time, in every row",
    },
    { key: "time", label: "Time", dimension: "time", need: "optional", hint: "where no charge is counted" },
    { key: "voltage", label: "Voltage", dimension: "voltage", need: "required" },
    { key: "current", label: "Current", dimension: "current", need: "required", hint: "0 at rest" },
  ],
  instruments: [
    { key: "voltage", label: "Voltage", dimension: "voltage" },
    { key: "current", label: "Current", dimension: "current" },
  ],
};

export const KINDS: Readonly<Record<TestKind, KindSpec>> = {
  curve,
  pull,
  motor,
  leak,
  friction,
  thrust,
  discharge,
};

/** The kinds in the order in which the screen offers them. */
export const KIND_ORDER: readonly TestKind[] = [
  "pull",
  "curve",
  "leak",
  "motor",
  "friction",
  "discharge",
  "thrust",
];

/** As many rows a test can have, pull and friction tests a fifth of it. */
export const MOST_ROWS = 5000;

/** Asked of every kind. */
export const HEAD_FIELDS: readonly FieldSpec[] = [
  { type: "date", key: "date", label: "Date" },
  { type: "text", key: "title", label: "Title", hint: "how you will find it again" },
];

export const NOTE_FIELD: FieldSpec = { type: "note", key: "note", label: "Note" };

export const AIR_FIELDS: readonly FieldSpec[] = [
  asked("air.temperature", "Temperature", "temperature", false),
  asked("air.pressure", "Air pressure", "pressure", false),
  asked("air.humidity", "Humidity", "fraction", false),
];

/** The accuracy of a kind's instruments: a part of the reading, a fixed amount, or both. */
export function instrumentFields(spec: KindSpec): FieldSpec[] {
  return spec.instruments.flatMap(({ key, label, dimension }): FieldSpec[] => [
    { type: "number", key: `instruments.${key}.percent`, label: `${label}, % of reading` },
    asked(`instruments.${key}.absolute`, `${label}, fixed`, dimension, false),
  ]);
}

/** @returns every field above the rows, in the record's order */
export function fieldsOf(spec: KindSpec): FieldSpec[] {
  return [...HEAD_FIELDS, ...spec.fields, ...AIR_FIELDS, ...instrumentFields(spec), NOTE_FIELD];
}

/** @returns the columns that a row has, given how the flow was taken */
export function columnsOf(spec: KindSpec, fields: FieldTexts): readonly ColumnSpec[] {
  return spec.columns.filter(({ flowFrom }) => flowFrom === undefined || flowFrom === fields.flowFrom);
}

/** @returns true where rows count the open holes of a bleed plate */
export function hasPlate(spec: KindSpec, fields: FieldTexts): boolean {
  return spec.plate && fields.flowFrom === "bleed-plate";
}
