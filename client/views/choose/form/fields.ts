import type { ChooseRequest } from "../../../../shared/model/api/choose.ts";
import type { NumberSpec } from "./numbers.ts";

/** Limits are those of the model. */
const LEAST_ROTOR = 2e-3;
const LEAST_STEP = 1e-6;
const LONGEST = 2;
const WIDEST_GAP = 0.1;

export const RANGE_ENDS = ["from", "to", "step"] as const;
export type RangeEnd = (typeof RANGE_ENDS)[number];

const length = (label: string, limits: readonly [number, number], example: string): NumberSpec => ({
  label,
  dimension: "length",
  limits,
  example,
});

/** The three numbers of a range of rotor diameters, and of a range of gaps. */
export const RANGES: Readonly<Record<"rotors" | "skirts", Readonly<Record<RangeEnd, NumberSpec>>>> = {
  rotors: {
    from: length("Diameter from", [LEAST_ROTOR, LONGEST], "36 mm"),
    to: length("Diameter to", [LEAST_ROTOR, LONGEST], "50 mm"),
    step: length("Step of the diameter", [LEAST_STEP, LONGEST], "1 mm"),
  },
  skirts: {
    from: length("Gap from", [0, WIDEST_GAP], "0.3 mm"),
    to: length("Gap to", [0, WIDEST_GAP], "0.9 mm"),
    step: length("Step of the gap", [LEAST_STEP, WIDEST_GAP], "0.05 mm"),
  },
};

export type NumberWant = Exclude<keyof ChooseRequest["wants"], "attitudes" | "ratings">;

/** A limit that is a number, and how it is typed. */
export interface WantField extends NumberSpec {
  readonly want: NumberWant;
  readonly hint?: string;
}

/** A week [s]; a charge is gone long before. */
const MOST_TIME = 10_000 * 60;
const MOST_PRICE = 1e12;
const LEAST_ABOVE_ZERO = 1e-3;

export const TARGET: WantField = {
  want: "targetMargin",
  label: "Margin at least, ×",
  dimension: null,
  suffix: "×",
  limits: [1, 20],
  example: "1.5",
};

/** Limits that may be left open. */
export const WANT_FIELDS: readonly WantField[] = [
  {
    want: "leastTime",
    label: "Minutes at least",
    dimension: "time",
    unit: "min",
    limits: [0, MOST_TIME],
    example: "4 min",
    hint: "from the build's charge to its end",
  },
  {
    want: "leastChance",
    label: "P(hold) at least, %",
    dimension: "fraction",
    limits: [0, 1],
    example: "95 %",
    hint: "judged for the shortlist",
  },
  {
    want: "mostWinding",
    label: "Winding at most, °C",
    dimension: "temperature",
    limits: [253.15, 693.15],
    example: "110 °C",
  },
  {
    want: "leastRotorFactor",
    label: "Burst speed over speed at least, ×",
    dimension: null,
    suffix: "×",
    limits: [LEAST_ABOVE_ZERO, 100],
    example: "2",
  },
  {
    want: "mostHeight",
    label: "Stack at most, mm",
    dimension: "length",
    limits: [LEAST_ABOVE_ZERO, LONGEST],
    example: "40 mm",
    hint: "motor, rotor, pack and skirt, as far as their heights are known",
  },
  {
    want: "mostPrice",
    label: "Price at most",
    dimension: null,
    limits: [0, MOST_PRICE],
    example: "40",
    hint: "in your own money; a set is out where a part states no price",
  },
];

export const DUTY: NumberSpec = {
  label: "Throttle, %",
  dimension: "fraction",
  limits: [0.01, 1],
  example: "100, 80",
};

export const PART_LISTS = ["motors", "rotors", "packs", "skirts"] as const;
export type PartList = (typeof PART_LISTS)[number];
