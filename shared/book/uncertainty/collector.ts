import type { Correlated } from "../../decide/correlated.ts";
import { placeAt } from "../../decide/numberAt.ts";
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
export interface BuildUncertainty {
  /** standard uncertainty by path [unit of each number] */
  readonly uncertainty: Readonly<Record<string, number>>;
  readonly correlated: readonly Correlated[];
  /** by path, of those in groups too */
  readonly sources: Readonly<Record<string, UncertaintySource>>;
}

/** Gathers doubts of the numbers that an input has; a number whose doubt is already known keeps it. */
export class Collector {
  private readonly uncertainty: Record<string, number> = {};
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
    return { uncertainty: this.uncertainty, correlated: this.groups, sources: this.sources };
  }
}
