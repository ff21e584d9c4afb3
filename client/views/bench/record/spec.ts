import type { NamedCollection } from "../../../../shared/model/collections.ts";
import type { Rotor } from "../../../../shared/model/parts/rotor.ts";
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

export type FieldSpec = Named &
  (
    | { readonly type: "quantity"; readonly dimension: DimensionName; readonly required: boolean }
    | {
        readonly type: "part";
        readonly collection: NamedCollection;
        readonly required: boolean;
        /** of the rotors, those of one kind alone */
        readonly rotors?: Rotor["kind"];
        /** of the instruments, those that measure this */
        readonly measures?: DimensionName;
        /** chosen in the place of what the test itself describes under the same path: what that is called */
        readonly otherwise?: string;
      }
    | { readonly type: "choice"; readonly options: readonly (readonly [value: string, label: string])[] }
    | { readonly type: "number" | "text" | "note" | "date" | "reason" }
  );

/** One reading of a row. */
export interface ColumnSpec {
  readonly key: string;
  readonly label: string;
  readonly dimension: DimensionName | null;
  /** required: must be given; optional: may be left out; nullable: left empty, the record says null; check: yes or no */
  readonly need: "required" | "optional" | "nullable" | "check";
  /** optional, but on the screen from the start: it or another like it is needed */
  readonly offered?: boolean;
  /** a circumstance, not a reading: its last value is filled in for the next row */
  readonly carried?: boolean;
  readonly hint?: string;
  /** what a header of a file may call it besides its key and its label: lower case, no spaces */
  readonly names?: readonly string[];
  /** meant where none is typed, in a first test; the quantity's first unless given */
  readonly unit?: string;
  /** what may be chosen, where it is no quantity */
  readonly options?: readonly (readonly [value: string, label: string])[];
  /** its name where nothing else tells what it is, in a list of what a file's column can be */
  readonly inList?: string;
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
  /** whether a field above the rows is asked at all, given what stands in the others; always unless given */
  readonly applies?: (key: string, fields: FieldTexts) => boolean;
  /** rows may tell how many holes of a bleed plate were open */
  readonly plate: boolean;
}
