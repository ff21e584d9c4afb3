import { OutOfRangeError } from "../numeric/errors.ts";

type Node = Record<string, unknown>;

/** A number of an input, with the place that it stands in. */
export interface Place {
  readonly holder: Record<string, unknown>;
  readonly key: string;
  readonly value: number;
}

const isNode = (value: unknown): value is Node => typeof value === "object" && value !== null;

/**
 * Finds the number that a path leads to.
 *
 *     "rotor.psi.0": key by key, places in a list by their number
 *
 * @param input - plain objects and lists [-]
 * @param path - from the top of the input [-]
 * @returns the number and where it stands [unit of the number]; null where there is none
 *
 * Valid for plain objects and lists. Source: definition
 */
export function placeAt(input: object, path: string): Place | null {
  const keys = path.split(".");
  const key = keys[keys.length - 1];
  let holder: unknown = input;
  for (const step of keys.slice(0, -1)) holder = isNode(holder) ? holder[step] : undefined;
  if (!isNode(holder) || key === "length" || !Object.hasOwn(holder, key)) return null;
  const value = holder[key];
  return typeof value === "number" ? { holder, key, value } : null;
}

/**
 * Finds the number that a path leads to, which must be there.
 *
 *     as {@link placeAt}
 *
 * @param input - plain objects and lists [-]
 * @param path - from the top of the input [-]
 * @param name - of the path, for a refusal [-]
 * @returns the number and where it stands [unit of the number]
 * @throws {OutOfRangeError} where the path leads to no number, named as given
 *
 * Valid for plain objects and lists. Source: definition
 */
export function requirePlace(input: object, path: string, name: string): Place {
  const place = placeAt(input, path);
  if (!place) throw new OutOfRangeError(name, Number.NaN, `the path of a number of the input, not ${path}`);
  return place;
}
