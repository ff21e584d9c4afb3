import { OutOfRangeError, requireNonNegative } from "../numeric/errors.ts";
import { normalCdf } from "../numeric/normal.ts";
import { normalQuantile } from "../numeric/normalQuantile.ts";
import { limitsOf } from "./physicalLimits.ts";

/** A number of an input that is known only so well. */
export interface Uncertain {
  /** from the top of the input: "skirt.gap", "rotor.psi.0" */
  readonly path: string;
  /** writes the value at a uniform number into the copy that the samples share */
  readonly write: (uniform: number) => number;
}

type Node = Record<string, unknown>;

const isNode = (value: unknown): value is Node => typeof value === "object" && value !== null;

function holderOf(input: object, path: string): { readonly holder: Node; readonly key: string } {
  const keys = path.split(".");
  const last = keys.length - 1;
  let holder: unknown = input;
  for (const key of keys.slice(0, last)) holder = isNode(holder) ? holder[key] : undefined;
  return { holder: isNode(holder) ? holder : {}, key: keys[last] };
}

/**
 * Value of a normal distribution that is cut at its limits, by the share below it.
 *
 *     x = m + u·Φ⁻¹[Φ(a) + p·(Φ(b) − Φ(a))],  a and b the limits less m, over u
 *
 * @param mean - of the uncut distribution, within the limits [any unit]
 * @param sd - of the uncut distribution, ≥ 0 [same unit]
 * @param limits - least and greatest value, infinite where there is none [same unit]
 * @returns function from a share p, above 0 and below 1 [-], to the value [same unit]
 * @throws {OutOfRangeError} on a negative standard deviation
 *
 * Valid for a mean within the limits; exactly the mean at sd 0. Source: inverse of the truncated normal distribution
 */
export function cutNormal(
  mean: number,
  sd: number,
  limits: readonly [number, number],
): (share: number) => number {
  requireNonNegative("uncertainty", sd);
  if (sd === 0) return () => mean;
  const [low, high] = limits.map((limit) => (limit - mean) / sd);
  const below = normalCdf(low);
  const width = normalCdf(high) - below;
  return (share) => {
    const z = below === 0 && width === 1 ? normalQuantile(share) : normalQuantile(below + share * width);
    return Math.min(limits[1], Math.max(limits[0], mean + sd * z));
  };
}

/**
 * Finds the numbers of an input that carry an uncertainty.
 *
 *     each normal, cut at what is possible
 *
 * @param copy - the input's own copy, into which samples are written [SI]
 * @param uncertainty - standard uncertainty by path [unit of each number]
 * @returns writers, in the order of the paths [unit of each number]
 * @throws {OutOfRangeError} on a path at which there is no number, a negative uncertainty
 *
 * Valid for plain objects and lists. Source: docs/method/uncertainty.md
 */
export function uncertainInputs(copy: object, uncertainty: Readonly<Record<string, number>>): Uncertain[] {
  return Object.entries(uncertainty).map(([path, sd]) => {
    const { holder, key } = holderOf(copy, path);
    const mean = Object.hasOwn(holder, key) ? holder[key] : undefined;
    if (typeof mean !== "number" || key === "length")
      throw new OutOfRangeError(`uncertainty.${path}`, sd, "the path of a number of the input");
    requireNonNegative(`uncertainty.${path}`, sd);
    const at = cutNormal(mean, sd, limitsOf(path));
    const write = (uniform: number): number => {
      const value = at(uniform);
      holder[key] = value;
      return value;
    };
    return { path, write };
  });
}
