import type { CollectionName } from "../../../shared/model/collections.ts";
import type { DimensionName } from "../../../shared/units/dimensions.ts";

export type PartCollection = Exclude<CollectionName, "tests">;

interface Common {
  /** where the value lies in the record: "cell.capacity" */
  readonly path: string;
  readonly label: string;
  readonly required?: boolean;
  readonly hint?: string;
}

export interface TextSpec extends Common {
  readonly kind: "text" | "note";
}

export interface QuantitySpec extends Common {
  readonly kind: "quantity";
  readonly dimension: DimensionName;
  /** what stands for it where nothing is typed, SI */
  readonly unless?: number;
  /** key under "uncertainty" of its standard uncertainty, which gets a field beside it */
  readonly doubt?: string;
  /** in the empty field, in the place of the quantity's usual example */
  readonly example?: string;
}

/** A number without a unit. */
export interface BareSpec extends Common {
  readonly kind: "number";
  readonly doubt?: string;
  readonly example?: string;
}

/** A quantity that is stored as it is typed, of whatever a choice of the same form says. */
export interface MeasuredSpec extends Common {
  readonly kind: "measured";
  /** the choice whose values are quantities */
  readonly by: string;
}

/** Two sides and a radius in one field, stored as typed; figures of the same form follow from it. */
export interface RectangleSpec extends Common {
  readonly kind: "rectangle";
  /** paths of the lengths and areas that follow */
  readonly gives: { readonly perimeter: string; readonly area: string };
}

export interface ChoiceSpec extends Common {
  readonly kind: "choice";
  readonly options: readonly (readonly [value: string, label: string])[];
}

export interface ReferenceSpec extends Common {
  readonly kind: "reference";
  readonly collection: PartCollection;
}

export type SingleSpec =
  | TextSpec
  | QuantitySpec
  | BareSpec
  | MeasuredSpec
  | RectangleSpec
  | ChoiceSpec
  | ReferenceSpec;

/** Several rows of the same few fields; `tuple` rows are stored as arrays in the columns' order. */
export interface ListSpec extends Common {
  readonly kind: "list";
  readonly columns: readonly (QuantitySpec | BareSpec | TextSpec | ChoiceSpec)[];
  readonly tuple?: boolean;
  readonly add: string;
}

/** Which of the form's numbers are guesses or makers' figures: stored as a list of their paths. */
export interface MarksSpec extends Common {
  readonly kind: "marks";
}

export type FieldSpec = SingleSpec | ListSpec | MarksSpec;

export interface Section {
  readonly title: string;
  readonly fields: readonly FieldSpec[];
  /** closed until it is asked for */
  readonly folded?: boolean;
}

/** The form of one collection. */
export interface FormSpec {
  readonly collection: PartCollection;
  /** "rotor": in "Add a rotor" */
  readonly one: string;
  readonly many: string;
  /** what it is, and which test or drawing tells its figures: said where there is none yet */
  readonly fills: string;
  readonly sections: readonly Section[];
}

const common = { required: true } as const;

export const nameField: TextSpec = { kind: "text", path: "name", label: "Name", ...common };
export const noteField: TextSpec = { kind: "note", path: "note", label: "Note" };

export const marksField: MarksSpec = {
  kind: "marks",
  path: "estimated",
  label: "Estimated, not measured; these carry a mark everywhere",
};

/** @returns a quantity's field */
export function quantity(
  path: string,
  label: string,
  dimension: DimensionName,
  more: Partial<Omit<QuantitySpec, "kind" | "path" | "label" | "dimension">> = {},
): QuantitySpec {
  return { kind: "quantity", path, label, dimension, ...more };
}

/** @returns a bare number's field */
export function number(
  path: string,
  label: string,
  more: Partial<Omit<BareSpec, "kind" | "path" | "label">> = {},
): BareSpec {
  return { kind: "number", path, label, ...more };
}
