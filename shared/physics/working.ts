/** One number of a working: its symbol, what it is, its SI value and unit. */
export interface WorkingValue {
  readonly symbol: string;
  readonly meaning: string;
  readonly value: number;
  /** SI unit; "" for a pure number */
  readonly unit: string;
}

/** How a figure came about: equation, the numbers put into it, the result, the source. */
export interface Working {
  readonly title: string;
  readonly equation: string;
  readonly values: readonly WorkingValue[];
  readonly result: WorkingValue;
  readonly source: string;
  /** what is taken for granted, a sentence each */
  readonly assumptions: readonly string[];
}

export type Description = readonly [symbol: string, meaning: string, unit: string];

/** A relation that can be asked for its working: the function that computes it, and what its inputs are called. */
export interface Relation<K extends string> {
  readonly title: string;
  readonly equation: string;
  readonly inputs: Readonly<Record<K, Description>>;
  readonly output: readonly [symbol: string, unit: string];
  readonly source: string;
  readonly assumptions?: readonly string[];
  /** the function that the prediction itself calls: there is no second copy of a formula */
  readonly evaluate: (inputs: Readonly<Record<K, number>>) => number;
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
  const values = (Object.entries(relation.inputs) as [K, Description][]).map(
    ([key, [symbol, meaning, unit]]) => ({ symbol, meaning, unit, value: inputs[key] }),
  );
  const [symbol, unit] = relation.output;
  const result = { symbol, meaning: relation.title, unit, value: relation.evaluate(inputs) };
  const { title, equation, source, assumptions = [] } = relation;
  return { title, equation, values, result, source, assumptions };
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

/** Numbers that differ by less are one number, rounded on two ways [-]. */
const SAME = 1e-9;

const isSame = (one: number, other: number) => Math.abs(one - other) <= SAME * Math.abs(other);

/** "Q₂" of several flows is a flow like any Q. */
const plain = (symbol: string) => symbol.replace(/[₀-₉]+$/, "");

type Named = Pick<WorkingValue, "symbol" | "value">;

const names = (one: Named, other: Named) =>
  plain(one.symbol) === plain(other.symbol) && isSame(one.value, other.value);

/** @returns the working that a number is the result of; null where none of them is */
export function workingBehind(value: WorkingValue, among: readonly Working[]): Working | null {
  return among.find(({ result }) => names(result, value)) ?? null;
}

/** @returns what a number comes from that no working gives; null where that isn't known */
export function originBehind(value: WorkingValue, among: readonly Origin[]): Origin | null {
  return among.find((origin) => names(origin, value)) ?? null;
}
