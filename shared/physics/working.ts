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
}

export type Description = readonly [symbol: string, meaning: string, unit: string];

/** A relation that can be asked for its working: the function that computes it, and what its inputs are called. */
export interface Relation<K extends string> {
  readonly title: string;
  readonly equation: string;
  readonly inputs: Readonly<Record<K, Description>>;
  readonly output: readonly [symbol: string, unit: string];
  readonly source: string;
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
  return { title: relation.title, equation: relation.equation, values, result, source: relation.source };
}
