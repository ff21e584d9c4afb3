import type { Correlated } from "../../decide/correlated.ts";
import type { JointPosterior } from "../../decide/joint.ts";
import { placeAt } from "../../decide/numberAt.ts";
import type { Uncertainties } from "../../decide/uncertainInput.ts";
import type { JointTable } from "../../fit/calibration.ts";
import type { TestKind } from "../../model/tests/index.ts";

/** Where a doubt comes from, and which kind of bench test would shrink it. */
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

/** Gathers doubts of the numbers that an input has; a number whose doubt is already known keeps it. */
export class Collector {
  private readonly uncertainty: Record<string, number> = {};
  private readonly logNormal: Record<string, number> = {};
  private joint: JointPosterior | null = null;
  private readonly groups: Correlated[] = [];
  private readonly sources: Record<string, UncertaintySource> = {};
  private readonly input: object;

  constructor(input: object) {
    this.input = input;
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

  /** A posterior of gap, pull factor and friction; those whose doubt is known otherwise are left out of it. */
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

  /** Numbers that are uncertain together; those whose doubt is known otherwise are left out of it. */
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
    return { uncertainty, logNormal, correlated: this.groups, joint, shared: [], followers: [], sources };
  }
}
