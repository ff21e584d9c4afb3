import { covarianceRoot } from "../numeric/cholesky.ts";
import { OutOfRangeError } from "../numeric/errors.ts";
import { normalCdf } from "../numeric/normal.ts";
import { normalQuantile } from "../numeric/normalQuantile.ts";
import { cutNormal } from "./cutNormal.ts";
import { type Place, requirePlace } from "./numberAt.ts";
import { limitsOf } from "./physicalLimits.ts";
import type { Uncertain } from "./uncertain.ts";

/** Numbers of an input that are uncertain together: jointly normal. */
export interface Correlated {
  readonly paths: readonly string[];
  /** in the order of the paths [product of the two units] */
  readonly covariance: readonly (readonly number[])[];
}

interface Member extends Place {
  readonly limits: readonly [number, number];
  readonly sd: number;
}

/** The largest range of the one standard normal number that keeps every member within its limits. */
function commonRange(members: readonly Member[], column: Float64Array): [number, number] {
  let [low, high] = [Number.NEGATIVE_INFINITY, Number.POSITIVE_INFINITY];
  members.forEach(({ value, limits }, i) => {
    if (column[i] === 0) return;
    const ends = limits.map((limit) => (limit - value) / column[i]);
    low = Math.max(low, Math.min(...ends));
    high = Math.min(high, Math.max(...ends));
  });
  return [low, high];
}

/** All of them follow one normal number: that one is cut where the first of them would pass a limit. */
function commonFactor(members: readonly Member[], column: Float64Array) {
  const at = cutNormal(0, 1, commonRange(members, column));
  return (uniforms: Float64Array, from: number, normals: Float64Array): void => {
    const z = at(uniforms[from]);
    normals[0] = z;
    members.forEach(({ holder, key, value }, i) => {
      holder[key] = value + column[i] * z;
    });
  };
}

/** Each cut on its own: its share below, as a plain normal, is its share below in the cut one. */
function jointly(members: readonly Member[], columns: readonly Float64Array[]) {
  const cuts = members.map(({ value, sd, limits }) => {
    const far =
      sd === 0 || (normalCdf((limits[0] - value) / sd) === 0 && normalCdf((limits[1] - value) / sd) === 1);
    return far ? null : cutNormal(value, sd, limits);
  });
  return (uniforms: Float64Array, from: number, normals: Float64Array): void => {
    for (let k = 0; k < columns.length; k += 1) normals[k] = normalQuantile(uniforms[from + k]);
    for (let i = 0; i < members.length; i += 1) {
      const { holder, key, value, sd, limits } = members[i];
      let offset = 0;
      for (let k = 0; k < columns.length; k += 1) offset += columns[k][i] * normals[k];
      const cut = cuts[i];
      const x = cut ? cut(inside(normalCdf(offset / sd))) : value + offset;
      holder[key] = Math.min(limits[1], Math.max(limits[0], x));
    }
  };
}

/** A share of exactly 0 or 1 has no quantile. */
const inside = (share: number): number => Math.min(1 - Number.EPSILON, Math.max(Number.MIN_VALUE, share));

function membersOf(copy: object, { paths, covariance }: Correlated, name: string): Member[] {
  if (paths.length === 0 || covariance.length !== paths.length)
    throw new OutOfRangeError(
      `${name}.covariance`,
      covariance.length,
      `a row for each of the ${paths.length} paths`,
    );
  return paths.map((path, i) => ({
    ...requirePlace(copy, path, `${name}.paths.${i}`),
    limits: limitsOf(path),
    sd: Math.sqrt(covariance[i][i]),
  }));
}

/**
 * Makes the writer of a group of numbers that are uncertain together.
 *
 *     x = m + L·z, C = L·Lᵀ;  near a limit xᵢ = F̂ᵢ⁻¹[Φ((xᵢ − mᵢ)/uᵢ)], F̂ᵢ of the normal distribution cut there
 *
 * @param copy - the input's own copy, into which samples are written [SI]
 * @param group - paths and covariance [unit of each number, squared]
 * @param name - of the group, for a refusal [-]
 * @returns the writer; it takes one uniform number for each independent direction of the group [-]
 * @throws {OutOfRangeError} on a path at which there is no number, a matrix that is no covariance of that size
 *
 * Valid for means within their limits; far from them exactly jointly normal. Where all follow one normal number, that one is cut instead. Source: docs/method/uncertainty.md
 */
export function correlatedInput(copy: object, group: Correlated, name: string): Uncertain {
  const members = membersOf(copy, group, name);
  const columns = covarianceRoot(`${name}.covariance`, group.covariance);
  const write = columns.length === 1 ? commonFactor(members, columns[0]) : jointly(members, columns);
  return { paths: group.paths, dimensions: columns.length, write };
}
