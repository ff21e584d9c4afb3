import { OutOfRangeError, requireNonNegative, requirePositive } from "../numeric/errors.ts";
import { type Correlated, correlatedInput } from "./correlated.ts";
import { cutNormal } from "./cutNormal.ts";
import { type JointPosterior, jointInput } from "./joint.ts";
import { requirePlace } from "./numberAt.ts";
import { limitsOf } from "./physicalLimits.ts";
import { type Follower, followingInput, putBack, type SharedCause, sharedInput } from "./shared.ts";
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

/** Log-normal about the number as its median. */
function logNormal(copy: object, path: string, sd: number): Uncertain {
  const { holder, key, value } = requirePlace(copy, path, `logNormal.${path}`);
  requirePositive(`logNormal.${path}`, value);
  const at = cutNormal(0, requireNonNegative(`logNormal.${path}`, sd), EVERYWHERE);
  const write: Uncertain["write"] = (uniforms, from, independent) => {
    const log = at(uniforms[from]);
    holder[key] = value * Math.exp(log);
    independent[0] = log;
  };
  return { paths: [path], dimensions: 1, write };
}

const EVERYWHERE = [Number.NEGATIVE_INFINITY, Number.POSITIVE_INFINITY] as const;

/** Every number of an input that is uncertain, in one way or another. */
export interface Uncertainties {
  /** normal: standard uncertainty by path ("skirt.gap"), in the number's own unit */
  readonly uncertainty: Readonly<Record<string, number>>;
  /** log-normal: standard uncertainty of the logarithm by path */
  readonly logNormal?: Readonly<Record<string, number>>;
  /** groups that are uncertain together, independent of each other and of the rest */
  readonly correlated?: readonly Correlated[];
  /** gap, pull factor and friction as tests tell them together */
  readonly joint?: JointPosterior | null;
  /** causes that move several numbers beside whatever else makes them uncertain */
  readonly shared?: readonly SharedCause[];
  /** numbers that go with others */
  readonly followers?: readonly Follower[];
}

/** @returns whether anything at all is uncertain */
export function isUncertain({ uncertainty, logNormal, correlated, joint, shared }: Uncertainties): boolean {
  const named = Object.keys({ ...uncertainty, ...logNormal }).length;
  return named + (correlated?.length ?? 0) + (shared?.length ?? 0) > 0 || !!joint;
}

/** A number has one uncertainty of its own: by itself or in one group. */
function checkOnce(paths: readonly string[], groups: readonly Correlated[]): void {
  const taken = new Set<string>();
  const take = (path: string, name: string) => {
    if (taken.has(path))
      throw new OutOfRangeError(name, Number.NaN, `each path once, ${path} stands elsewhere`);
    taken.add(path);
  };
  for (const path of paths) take(path, path);
  groups.forEach((group, g) => {
    group.paths.forEach((path, i) => {
      take(path, `correlated.${g}.paths.${i}`);
    });
  });
}

/**
 * Finds the numbers of an input that carry an uncertainty.
 *
 *     each normal or log-normal, cut at what is possible; groups jointly so; then what shared causes add, then what follows
 *
 * @param copy - the input's own copy, into which samples are written [SI]
 * @param asked - standard uncertainties by path, groups, posterior, shared causes, followers [unit of each number]
 * @returns writers, in that order [unit of each number]
 * @throws {OutOfRangeError} on a path at which there is no number or that stands twice, a negative uncertainty, a matrix that is no covariance
 *
 * Valid for plain objects and lists. Source: docs/method/uncertainty.md
 */
export function uncertainInputs(copy: object, asked: Uncertainties): Uncertain[] {
  const {
    uncertainty,
    logNormal: logs = {},
    correlated = [],
    joint = null,
    shared = [],
    followers = [],
  } = asked;
  const together = joint ? [jointInput(copy, joint, "joint")] : [];
  const singles = [
    ...Object.keys(uncertainty),
    ...Object.keys(logs),
    ...together.flatMap(({ paths }) => paths),
  ];
  checkOnce(singles, correlated);
  const own = [
    ...Object.entries(uncertainty).map(([path, sd]) => single(copy, path, sd)),
    ...Object.entries(logs).map(([path, sd]) => logNormal(copy, path, sd)),
    ...correlated.map((group, g) => correlatedInput(copy, group, `correlated.${g}`)),
    ...together,
  ];
  const causes = shared.map((cause, i) => sharedInput(copy, cause, `shared.${i}`));
  const followed = followers.map((follower, i) => followingInput(copy, follower, `followers.${i}`));
  const written = new Set(own.flatMap(({ paths }) => paths));
  const moved = [...shared.flatMap(({ effects }) => effects), ...followers].map(({ path }) => path);
  const bare = [...new Set(moved)].filter((path) => !written.has(path));
  return [...(bare.length > 0 ? [putBack(copy, bare)] : []), ...own, ...causes, ...followed];
}
