import type { DimensionName } from "../units/dimensions.ts";

/** One number of a working: its symbol, what it is, its SI value and unit. */
export interface WorkingValue {
  readonly symbol: string;
  readonly meaning: string;
  readonly value: number;
  /** SI unit; "" for a pure number */
  readonly unit: string;
  /** what it is of, where its SI unit doesn't say it: a pascal is of suction, of air or of a strength */
  readonly quantity?: DimensionName;
}

/** How a figure came about: equation, the numbers put into it, the result, the source. */
export interface Working {
  readonly title: string;
  readonly equation: string;
  readonly values: readonly WorkingValue[];
  readonly result: WorkingValue;
  /** other end of a result that is a range [SI] */
  readonly upTo?: number;
  readonly source: string;
  /** what is taken for granted, a sentence each */
  readonly assumptions: readonly string[];
}

export type Description = readonly [symbol: string, meaning: string, unit: string, quantity?: DimensionName];

/** What a working says of its figure besides the numbers. */
export interface Told {
  readonly title: string;
  readonly equation: string;
  readonly output: readonly [symbol: string, unit: string, quantity?: DimensionName];
  readonly source: string;
  readonly assumptions?: readonly string[];
}

/** A relation that can be asked for its working: the function that computes it, and what its inputs are called. */
export interface Relation<K extends string> extends Told {
  readonly inputs: Readonly<Record<K, Description>>;
  /** the function that the prediction itself calls: there is no second copy of a formula */
  readonly evaluate: (inputs: Readonly<Record<K, number>>) => number;
}

/** A number put into a working, with what it is. */
export type Row = readonly [description: Description, value: number];

/**
 * The working of a figure that a function has worked out from numbers that are not the same ones for every case.
 *
 *     result = value
 *
 * @param told - what the figure is called, its equation and source
 * @param rows - the numbers put in, SI [-]
 * @param value - what that function returned, of a range its lower end [SI]
 * @param upTo - upper end of a range [SI]
 * @returns equation, inserted values, result and source [SI]
 *
 * Valid as the function. Source: named in `told`
 */
export function workedOut(told: Told, rows: readonly Row[], value: number, upTo?: number): Working {
  const { title, equation, source, assumptions = [] } = told;
  const values = rows.map(([[symbol, meaning, unit, quantity], put]) => ({
    symbol,
    meaning,
    unit,
    value: put,
    quantity,
  }));
  const [symbol, unit, quantity] = told.output;
  const result = { symbol, meaning: title, unit, value, quantity };
  const working = { title, equation, values, result, source, assumptions };
  return upTo === undefined ? working : { ...working, upTo };
}

/**
 * The working of a relation at given numbers.
 *
 *     result = evaluate(inputs)
 *
 * @param relation - what computes it and how its inputs are called
 * @param inputs - the numbers put in, SI, by name [-]
 * @returns equation, inserted values, result and source [SI]
 * @throws whatever the relation's own function throws
 *
 * Valid as the relation. Source: named in the relation
 */
export function explain<K extends string>(
  relation: Relation<K>,
  inputs: Readonly<Record<NoInfer<K>, number>>,
): Working {
  const rows = (Object.entries(relation.inputs) as [K, Description][]).map(
    ([key, description]): Row => [description, inputs[key]],
  );
  return workedOut(relation, rows, relation.evaluate(inputs));
}

/** What a number that no equation gives comes from: tests, a part's record, the build. */
export interface Origin {
  readonly symbol: string;
  /** SI: of two numbers with one symbol it tells which is meant */
  readonly value: number;
  /** one sentence */
  readonly what: string;
  readonly tests: readonly string[];
}

/** Everything that the working of a figure may lead down to. */
export interface Board {
  readonly workings: readonly Working[];
  readonly origins: readonly Origin[];
}

/** Numbers that differ by less are one number, rounded on two ways [-]. */
const SAME = 1e-9;

const isSame = (one: number, other: number) => Math.abs(one - other) <= SAME * Math.abs(other);

/** "Q₂" of several flows is a flow like any Q. */
const plain = (symbol: string) => symbol.replace(/[₀-₉]+$/, "");

type Named = Pick<WorkingValue, "symbol" | "value">;

/** The one that has a number's very symbol, else one whose symbol differs below only: two lines may weigh the same. */
function namedLike<T>(value: Named, among: readonly T[], of: (each: T) => Named): T | null {
  const same = among.filter((each) => isSame(of(each).value, value.value));
  return (
    same.find((each) => of(each).symbol === value.symbol) ??
    same.find((each) => plain(of(each).symbol) === plain(value.symbol)) ??
    null
  );
}

/** @returns the working that a number is the result of; null where none of them is */
export function workingBehind(value: WorkingValue, among: readonly Working[]): Working | null {
  return namedLike(value, among, ({ result }) => result);
}

/** @returns what a number comes from that no working gives; null where that isn't known */
export function originBehind(value: WorkingValue, among: readonly Origin[]): Origin | null {
  return namedLike(value, among, (origin) => origin);
}

const ZERO_BELOW = "₀".charCodeAt(0);

/** @returns "₁₂" of 12 */
export const subscript = (n: number): string =>
  [...String(n)].map((digit) => String.fromCharCode(ZERO_BELOW + Number(digit))).join("");
