import {
  type DrawnRotor,
  type NeedNumbers,
  type NeedParts,
  PART_KEYS,
  type PartKey,
  type TypedNeed,
} from "../../../../shared/book/size/need/typedNeed.ts";
import { ROTOR } from "../../../../shared/model/limits.ts";
import { type Limits, withinLimits } from "../../../../shared/units/limits.ts";
import { parseNumber } from "../../../../shared/units/number.ts";
import { NEED_FIELDS } from "./fields.ts";

const DIGITS = 6;
const short = (value: number): string => String(Number(value.toPrecision(DIGITS)));

/** In the address, a need's own numbers and parts begin so. */
const PREFIX = "need-";
const EDGES = ["square", "thin", "rounded"] as const;

function numberFrom(text: string | null, limits: Limits): number | null {
  const value = text === null ? null : parseNumber(text);
  return value === null ? null : withinLimits(value, limits);
}

/** @returns a need with everything as it stands until it is typed, and parts of the book where some are named */
export function usualNeed(parts: NeedParts): TypedNeed {
  const numbers = Object.fromEntries(NEED_FIELDS.map(({ key, usual }) => [key, usual]));
  return { numbers: numbers as unknown as NeedNumbers, parts, edge: "square" };
}

/** @returns the need that an address carries; null where it carries none. What can't be is the usual */
export function needFrom(query: URLSearchParams): TypedNeed | null {
  if (query.get("need") === null) return null;
  const numbers = Object.fromEntries(
    NEED_FIELDS.map(({ key, spec, usual }) => [
      key,
      numberFrom(query.get(`${PREFIX}${key}`), spec.limits ?? {}) ?? usual,
    ]),
  );
  const parts = Object.fromEntries(PART_KEYS.map((key) => [key, query.get(`${PREFIX}${key}`)]));
  const edge = EDGES.find((each) => each === query.get(`${PREFIX}edge`)) ?? "square";
  return {
    numbers: numbers as unknown as NeedNumbers,
    parts: parts as unknown as Record<PartKey, string | null>,
    edge,
  };
}

/** @returns the entries by which an address carries a need */
export function needEntries(need: TypedNeed | null): [string, string | null][] {
  if (!need) return [];
  const numbers = NEED_FIELDS.filter(({ key, usual }) => need.numbers[key] !== usual);
  return [
    ["need", "typed"],
    ...numbers.map(({ key }): [string, string] => [`${PREFIX}${key}`, short(need.numbers[key])]),
    ...PART_KEYS.map((key): [string, string | null] => [`${PREFIX}${key}`, need.parts[key]]),
    [`${PREFIX}edge`, need.edge === "square" ? null : need.edge],
  ];
}

const { geometry } = ROTOR;
const DRAWN: readonly (readonly [keyof DrawnRotor, Limits])[] = [
  ["blades", geometry.bladeCount],
  ["exitAngle", geometry.bladeExitAngle],
  ["inletRatio", geometry.inletRatio],
  ["widthRatio", geometry.widthRatio],
];

/** As many drawings as an address carries. */
export const MOST_DRAWN = 6;

/** @returns the drawn rotors of an address: "7x35x0.5x0.12,5x60x0.5x0.1"; what can't be is left out */
export function drawnFrom(text: string | null): DrawnRotor[] {
  if (text === null || text === "") return [];
  return text
    .split(",")
    .slice(0, MOST_DRAWN)
    .flatMap((each) => {
      const typed = each.split("x");
      const read = DRAWN.map(([key, limits], i) => [key, numberFrom(typed[i] ?? null, limits)] as const);
      if (read.some(([, value]) => value === null)) return [];
      return [Object.fromEntries(read) as unknown as DrawnRotor];
    });
}

/** @returns what an address says of drawn rotors; null where there are none */
export function drawnText(drawn: readonly DrawnRotor[]): string | null {
  if (drawn.length === 0) return null;
  return drawn.map((each) => DRAWN.map(([key]) => short(each[key])).join("x")).join(",");
}
