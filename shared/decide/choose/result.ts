import type { Column } from "./columns.ts";
import type { RotorBasis } from "./problem.ts";

/** The limits, in the order in which a combination's first broken one is named. */
export const LIMITS = [
  "point",
  "parked",
  "driving",
  "crossing",
  "windingTemperature",
  "rotorFactor",
  "motorCurrent",
  "motorVoltage",
  "cellCurrent",
  "height",
  "clearance",
  "price",
  "time",
  "keptTime",
] as const;
export type Limit = (typeof LIMITS)[number];

/** A broken limit: what the combination has, what is allowed; null: there is no number, the motor does not turn. */
export interface Broken {
  readonly limit: Limit;
  readonly value: number | null;
  readonly allowed: number | null;
}

/** Place of a combination in the lists of parts to try. */
export interface Places {
  /** pressed on by an open propeller: `rotor` is its place among the propellers, `skirt` that among the stands */
  readonly open: boolean;
  readonly motor: number;
  readonly rotor: number;
  /** in the rotor's own sizes */
  readonly size: number;
  readonly pack: number;
  readonly duty: number;
  readonly skirt: number;
  /** in the skirt's own gaps */
  readonly gap: number;
}

/** How far a combination rests on measurement. */
export interface Trust {
  readonly basis: RotorBasis;
  /** not of a tested size */
  readonly scaled: boolean;
  /** diameter over the nearest tested one [-]; null: none was tested */
  readonly sizeRatio: number | null;
  /** tip speed over the nearest tested one, 1 within the tests [-]; null: not known */
  readonly speedRatio: number | null;
  /** φ outside the fitted range */
  readonly extrapolated: boolean;
  readonly coldWinding: boolean;
}

/** One combination in full, for a row, a plot's point or a comparison. */
export interface Combination {
  readonly index: number;
  readonly places: Places;
  readonly parts: {
    readonly motor: string;
    readonly rotor: string;
    readonly pack: string;
    /** null: a propeller without one */
    readonly skirt: string | null;
  };
  /** [m] */
  readonly diameter: number;
  /** [m]; null: a propeller, whatever the gap */
  readonly gap: number | null;
  readonly duty: number;
  /** SI; null: not finite (no suction needed, not known, not computed) */
  readonly values: Readonly<Record<Column, number | null>>;
  readonly trust: Trust;
  /** every limit it breaks, the first one first; none: it meets them all */
  readonly broken: readonly Broken[];
}

export interface Objective {
  readonly column: Column;
  readonly want: "most" | "least";
}

/** The smallest change of one limit, all others kept, that lets a combination in. */
export interface Relaxation {
  readonly limit: Limit;
  readonly from: number;
  readonly to: number;
  readonly index: number;
}
