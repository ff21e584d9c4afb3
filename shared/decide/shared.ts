import { OutOfRangeError, requireFinite } from "../numeric/errors.ts";
import { normalQuantile } from "../numeric/normalQuantile.ts";
import { type Place, placeAt, requirePlace } from "./numberAt.ts";
import { limitsOf } from "./physicalLimits.ts";
import type { Uncertain } from "./uncertain.ts";

/** What one standard uncertainty of a cause does to a number. */
export interface Effect {
  readonly path: string;
  /** added to the number [unit of the number], or to its logarithm [-] */
  readonly by: number;
  readonly onLogarithm?: boolean;
}

/** One cause that moves several numbers at once: the gain of an instrument that took many readings. */
export interface SharedCause {
  /** under which its share of the variance is given; no path of a number */
  readonly name: string;
  readonly effects: readonly Effect[];
}

/** A number whose logarithm follows others: what pulls tell of κ depends on the curve that their prediction took. */
export interface Follower {
  readonly path: string;
  /** change of its logarithm by that of each number [1/unit of the number] */
  readonly by: Readonly<Record<string, number>>;
}

interface Moved extends Place {
  readonly limits: readonly [number, number];
}

const movedAt = (copy: object, path: string, name: string): Moved => ({
  ...requirePlace(copy, path, name),
  limits: limitsOf(path),
});

const within = ([least, most]: readonly [number, number], x: number) => Math.min(most, Math.max(least, x));

/**
 * Puts numbers back to where they stood, ahead of what moves them from there.
 *
 *     x = m
 *
 * @param copy - the input's own copy [SI]
 * @param paths - of numbers that nothing else writes [-]
 * @returns a writer that takes no number [-]
 * @throws {OutOfRangeError} where a path leads to no number
 *
 * Valid for any number. Source: definition
 */
export function putBack(copy: object, paths: readonly string[]): Uncertain {
  const places = paths.map((path) => requirePlace(copy, path, path));
  const write = () => {
    for (const { holder, key, value } of places) holder[key] = value;
  };
  return { paths: [], dimensions: 0, write };
}

/**
 * Makes the writer of one cause that moves several numbers, from where they have been written.
 *
 *     xᵢ + bᵢ·z, or xᵢ·exp(bᵢ·z),  cut at what is possible;  z standard normal
 *
 * @param copy - the input's own copy, into which samples are written [SI]
 * @param cause - name and effects [unit of each number, or of its logarithm]
 * @param name - of the cause, for a refusal [-]
 * @returns the writer; it takes one uniform number [-]
 * @throws {OutOfRangeError} on a path at which there is no number, an effect that is not finite
 *
 * Valid for effects in proportion to their cause. Source: JCGM 100:2008 (GUM), 5.2 and F.1.2.3, common systematic effects
 */
export function sharedInput(copy: object, { name: own, effects }: SharedCause, name: string): Uncertain {
  if (placeAt(copy, own))
    throw new OutOfRangeError(`${name}.name`, Number.NaN, "a name that is no path of a number");
  const moved = effects.map(({ path, by, onLogarithm = false }, i) => {
    requireFinite(`${name}.effects.${i}.by`, by);
    return { place: movedAt(copy, path, `${name}.effects.${i}.path`), by, onLogarithm };
  });
  const write: Uncertain["write"] = (uniforms, from, independent) => {
    const z = normalQuantile(uniforms[from]);
    independent[0] = z;
    for (const { place, by, onLogarithm } of moved) {
      const { holder, key, limits } = place;
      const x = holder[key] as number;
      holder[key] = within(limits, onLogarithm ? x * Math.exp(by * z) : x + by * z);
    }
  };
  return { paths: [own], dimensions: 1, write };
}

/**
 * Makes the writer of a number that follows others, after all of them.
 *
 *     x·exp Σ dⱼ(yⱼ − mⱼ);  where yⱼ can't be negative, dⱼmⱼ·2(yⱼ − mⱼ)/(yⱼ + mⱼ) ≈ dⱼmⱼ·ln(yⱼ/mⱼ) in its place
 *
 * @param copy - the input's own copy, into which samples are written [SI]
 * @param follower - path and derivatives of its logarithm [1/unit of each number]
 * @param name - of the follower, for a refusal [-]
 * @returns a writer that takes no number [-]
 * @throws {OutOfRangeError} on a path at which there is no number, a derivative that is not finite
 *
 * Valid as far as the logarithm follows in proportion to the number, or to the logarithm of one that can't be negative. Source: docs/method/uncertainty.md
 */
export function followingInput(copy: object, { path, by }: Follower, name: string): Uncertain {
  const { holder, key, limits } = movedAt(copy, path, `${name}.path`);
  const leaders = Object.entries(by).map(([of, d]) => ({
    ...requirePlace(copy, of, `${name}.by.${of}`),
    d: requireFinite(`${name}.by.${of}`, d),
    byRatio: limitsOf(of)[0] >= 0,
  }));
  const write = () => {
    let sum = 0;
    for (const { holder: from, key: at, value, d, byRatio } of leaders) {
      const now = from[at] as number;
      // 2(y − m)/(y + m) is ln(y/m) to the third order, and stays finite at 0
      const width = byRatio && value > 0 ? (now + value) / (2 * value) : 1;
      sum += (d * (now - value)) / width;
    }
    holder[key] = within(limits, (holder[key] as number) * Math.exp(sum));
  };
  return { paths: [], dimensions: 0, write };
}
