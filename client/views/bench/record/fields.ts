import type { NamedCollection } from "../../../../shared/model/collections.ts";
import type { Rotor } from "../../../../shared/model/parts/rotor.ts";
import type { DimensionName } from "../../../../shared/units/dimensions.ts";
import { NAMES } from "./headerNames.ts";
import type { ColumnSpec, FieldSpec } from "./spec.ts";

/** A field that names one of the book's parts. */
export const part = (
  key: string,
  label: string,
  collection: NamedCollection,
  required = true,
  hint?: string,
): FieldSpec => ({ type: "part", key, label, collection, required, hint });

/** A field that names a rotor of one kind. */
export const rotorPart = (label: string, rotors: Rotor["kind"]): FieldSpec => ({
  type: "part",
  key: "rotor",
  label,
  collection: "rotors",
  required: true,
  rotors,
});

/** A field for a number with its unit. */
export const asked = (
  key: string,
  label: string,
  dimension: DimensionName,
  required = true,
  hint?: string,
): FieldSpec => ({ type: "quantity", key, label, dimension, required, hint });

/** How the flow of a row is known. */
export const FLOW_FROM: FieldSpec = {
  type: "choice",
  key: "flowFrom",
  label: "Flow from",
  options: [
    ["bleed-plate", "a bleed plate"],
    ["known-flow", "a flow meter"],
  ],
};

/** The flow of a row, where a meter reads it. */
export const flowColumn: ColumnSpec = {
  key: "flow",
  label: "Flow",
  dimension: "flow",
  need: "required",
  names: NAMES.flow,
  flowFrom: "known-flow",
};
