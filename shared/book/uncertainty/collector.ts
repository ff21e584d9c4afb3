import type { Correlated } from "../../decide/correlated.ts";
import type { JointPosterior } from "../../decide/joint.ts";
import { placeAt } from "../../decide/numberAt.ts";
import type { Follower, SharedCause } from "../../decide/shared.ts";
import type { Uncertainties } from "../../decide/uncertainInput.ts";
import type { JointTable } from "../../fit/calibration.ts";
import type { TestKind } from "../../model/tests/index.ts";

/** Where an uncertainty comes from, and which kind of bench test would shrink it. */
export interface UncertaintySource {
  readonly from: "stated" | "fit" | "calibration" | "tests" | "estimate" | "default";
  /** in trade words: "curve tests of Swept nine" */
  readonly what: string;
  /** null where no bench test tells it */
  readonly test: TestKind | null;
}

/** All that is uncertain in a build's numbers, as {@link uncertaintyOf} takes it, with where each comes from. */
export interface BuildUncertainty extends Required<Uncertainties> {
  /** by path, of those in groups too; of shared causes by name */
  readonly sources: Readonly<Record<string, UncertaintySource>>;
}

/** Gathers uncertainties of the numbers that an input has; a number whose uncertainty is already known keeps it. */
export class Collector {
  private readonly uncertainty: Record<string, number> = {};
  private readonly logNormal: Record<string, number> = {};
  private readonly causes: SharedCause[] = [];
  private readonly followers: Follower[] = [];
  private joint: JointPosterior | null = null;
  private readonly groups: Correlated[] = [];
  private readonly sources: Record<string, UncertaintySource> = {};
  private readonly input: object;

  private readonly stated: ReadonlySet<string>;

  constructor(input: object, stated: readonly string[] = []) {
    this.input = input;
    this.stated = new Set(stated);
  }

  private isFree(path: string): boolean {
    return placeAt(this.input, path) !== null && !Object.hasOwn(this.sources, path);
  }

  /** A number by itself; without an uncertainty above 0 it counts as certain. */
  add(path: string, sd: number | null | undefined, source: UncertaintySource): void {
    if (!(sd !== null && sd !== undefined && sd > 0) || !this.isFree(path)) return;
    this.uncertainty[path] = sd;
    this.sources[path] = source;
  }

  /** A number that is right within a factor: log-normal about it. */
  addFactor(path: string, sd: number, source: UncertaintySource): void {
    if (!(sd > 0) || !this.isFree(path)) return;
    this.logNormal[path] = sd;
    this.sources[path] = source;
  }

  /** A posterior of gap, pull factor and friction; those whose uncertainty is known otherwise are left out of it. */
  addJoint(table: JointTable, asked: JointPosterior["paths"], source: UncertaintySource): void {
    const free = (path: string | null) => (path !== null && this.isFree(path) ? path : null);
    const paths = {
      gap: free(asked.gap),
      pullFactor: free(asked.pullFactor),
      friction: free(asked.friction),
    };
    const drawn = Object.values(paths).filter((path) => path !== null);
    if (drawn.length === 0) return;
    this.joint = { table, paths };
    for (const path of drawn) this.sources[path] = source;
  }

  /** Whether the build itself states what a number is uncertain by: nothing adds to that. */
  private isStated(path: string): boolean {
    return this.stated.has(path);
  }

  /** One cause that moves several numbers, beside whatever else makes each uncertain. */
  addCause({ name, effects }: SharedCause, source: UncertaintySource): void {
    const moved = effects.filter(({ path }) => placeAt(this.input, path) !== null && !this.isStated(path));
    if (moved.length === 0) return;
    this.causes.push({ name, effects: moved });
    this.sources[name] = source;
  }

  /** A number that goes with others, as far as they are uncertain. */
  addFollower(path: string, by: Readonly<Record<string, number>>): void {
    const leaders = Object.entries(by).filter(([of, d]) => d !== 0 && placeAt(this.input, of) !== null);
    if (placeAt(this.input, path) === null || this.isStated(path) || leaders.length === 0) return;
    this.followers.push({ path, by: Object.fromEntries(leaders) });
  }

  /** Paths of all numbers that something makes uncertain by now. */
  paths(): string[] {
    const moved = this.causes.flatMap(({ effects }) => effects.map(({ path }) => path));
    return [...new Set([...Object.keys(this.sources), ...moved])].filter(
      (path) => placeAt(this.input, path) !== null,
    );
  }

  /** Numbers that are uncertain together; those whose uncertainty is known otherwise are left out of it. */
  addGroup(
    paths: readonly string[],
    covariance: readonly (readonly number[])[],
    source: UncertaintySource,
  ): void {
    const kept = paths.flatMap((path, i) => (this.isFree(path) && (covariance[i]?.[i] ?? 0) > 0 ? [i] : []));
    if (kept.length === 0) return;
    this.groups.push({
      paths: kept.map((i) => paths[i]),
      covariance: kept.map((i) => kept.map((j) => covariance[i][j])),
    });
    for (const i of kept) this.sources[paths[i]] = source;
  }

  result(): BuildUncertainty {
    const { uncertainty, logNormal, joint, sources } = this;
    const { groups: correlated, causes: shared, followers } = this;
    return { uncertainty, logNormal, correlated, joint, shared, followers, sources };
  }
}
