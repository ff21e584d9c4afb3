import type { ChooseRequest } from "../../../../shared/model/api/choose.ts";
import { SEARCH } from "../../../../shared/model/limits.ts";
import type { Limits } from "../../../../shared/units/limits.ts";
import type { NumberSpec } from "../../../../shared/units/readNumber.ts";

export const RANGE_ENDS = ["from", "to", "step"] as const;
export type RangeEnd = (typeof RANGE_ENDS)[number];

/** A number of the form: what it is called, and what it takes. */
export interface NumberField extends NumberSpec {
  readonly label: string;
}

const length = (label: string, limits: Limits, example: string): NumberField => ({
  label,
  dimension: "length",
  limits,
  example,
});

const { diameters, gaps, wants } = SEARCH;

/** The three numbers of a range of rotor diameters, and of a range of gaps. */
export const RANGES: Readonly<Record<"rotors" | "skirts", Readonly<Record<RangeEnd, NumberField>>>> = {
  rotors: {
    from: length("Diameter from", diameters.from, "36 mm"),
    to: length("Diameter to", diameters.to, "50 mm"),
    step: length("Step of the diameter", diameters.step, "1 mm"),
  },
  skirts: {
    from: length("Gap from", gaps.from, "0.3 mm"),
    to: length("Gap to", gaps.to, "0.9 mm"),
    step: length("Step of the gap", gaps.step, "0.05 mm"),
  },
};

export type NumberWant = Exclude<keyof ChooseRequest["wants"], "attitudes" | "ratings" | "closes">;

/** A limit that is a number, and how it is typed. */
export interface WantField extends NumberField {
  readonly want: NumberWant;
  readonly hint?: string;
}

export const TARGET: WantField = {
  want: "targetMargin",
  label: "Margin at least",
  dimension: null,
  suffix: "×",
  limits: wants.targetMargin,
  example: "1.5",
};

/** Limits that may be left open. */
export const WANT_FIELDS: readonly WantField[] = [
  {
    want: "leastCrossing",
    label: "Margin over the surface's joints at least",
    hint: "on the same attitudes; the joints stand on the surface's page",
    dimension: null,
    suffix: "×",
    limits: wants.leastCrossing,
    example: "1",
  },
  {
    want: "leastTime",
    label: "Minutes at least",
    dimension: "duration",
    limits: wants.leastTime,
    example: "4 min",
    hint: "from the build's charge to its end",
  },
  {
    want: "leastKeptTime",
    label: "Minutes that a controller keeps that margin, at least",
    dimension: "duration",
    limits: wants.leastKeptTime,
    example: "6 min",
    hint: "on the hardest of these attitudes, up to full throttle; 0 to rank by them alone",
  },
  {
    want: "leastChance",
    label: "Chance of holding at least",
    dimension: "fraction",
    limits: wants.leastChance,
    example: "95 %",
    hint: "judged for the shortlist",
  },
  {
    want: "mostWinding",
    label: "Winding at most",
    dimension: "temperature",
    limits: wants.mostWinding,
    example: "110 °C",
  },
  {
    want: "leastRotorFactor",
    label: "Burst speed over speed at least",
    hint: "2 keeps the safe speed; a rotor without a material is then out; an open propeller isn't judged by it",
    dimension: null,
    suffix: "×",
    limits: wants.leastRotorFactor,
    example: "2",
  },
  {
    want: "mostHeight",
    label: "Total height at most",
    dimension: "length",
    limits: wants.mostHeight,
    example: "40 mm",
    hint: "motor, rotor, pack and skirt, as far as their heights are known",
  },
  {
    want: "mostPrice",
    label: "Price at most",
    dimension: null,
    limits: wants.mostPrice,
    example: "40",
    hint: "in your own money; a combination is out where a part states no price",
  },
];

export const DUTY: NumberField = {
  label: "Throttle, %",
  dimension: "fraction",
  limits: SEARCH.duties,
  example: "100, 80",
};

export const PART_LISTS = ["motors", "rotors", "packs", "skirts"] as const;
export type PartList = (typeof PART_LISTS)[number];

/** Stands among the ticked skirts where propellers are tried without one. */
export const NO_SKIRT = "";
