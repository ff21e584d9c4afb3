import { OutOfRangeError, requireNonNegative } from "../numeric/errors.ts";
import { type Correlated, correlatedInput } from "./correlated.ts";
import { cutNormal } from "./cutNormal.ts";
import { requirePlace } from "./numberAt.ts";
import { limitsOf } from "./physicalLimits.ts";
import type { Uncertain } from "./uncertain.ts";

function single(copy: object, path: string, sd: number): Uncertain {
  const { holder, key, value } = requirePlace(copy, path, `uncertainty.${path}`);
  requireNonNegative(`uncertainty.${path}`, sd);
  const at = cutNormal(value, sd, limitsOf(path));
  const write: Uncertain["write"] = (uniforms, from, independent) => {
    const x = at(uniforms[from]);
    holder[key] = x;
    independent[0] = x;
  };
  return { paths: [path], dimensions: 1, write };
}

/** A number has one uncertainty: by itself or in one group. */
function checkOnce(paths: readonly string[], groups: readonly Correlated[]): void {
  const taken = new Set(paths);
  groups.forEach((group, g) => {
    group.paths.forEach((path, i) => {
      if (taken.has(path))
        throw new OutOfRangeError(
          `correlated.${g}.paths.${i}`,
          Number.NaN,
          `each path once, ${path} stands elsewhere`,
        );
      taken.add(path);
    });
  });
}

/**
 * Finds the numbers of an input that carry an uncertainty.
 *
 *     each normal, cut at what is possible; groups jointly so
 *
 * @param copy - the input's own copy, into which samples are written [SI]
 * @param uncertainty - standard uncertainty by path [unit of each number]
 * @param correlated - groups that are uncertain together [unit of each number, squared]
 * @returns writers, in the order of the paths, then of the groups [unit of each number]
 * @throws {OutOfRangeError} on a path at which there is no number or that stands twice, a negative uncertainty, a matrix that is no covariance
 *
 * Valid for plain objects and lists. Source: docs/method/uncertainty.md
 */
export function uncertainInputs(
  copy: object,
  uncertainty: Readonly<Record<string, number>>,
  correlated: readonly Correlated[] = [],
): Uncertain[] {
  checkOnce(Object.keys(uncertainty), correlated);
  return [
    ...Object.entries(uncertainty).map(([path, sd]) => single(copy, path, sd)),
    ...correlated.map((group, g) => correlatedInput(copy, group, `correlated.${g}`)),
  ];
}
