import type { Checked } from "./data.ts";
import type { Integral } from "./integral.ts";
import { logNormalDensity } from "./likelihood.ts";

/** Prior sd of ln(scatter): a scatter half or twice the stated one is no surprise. Judgement. */
export const SCATTER_DOUBT = Math.LN2;
/** Relative sd that no pull or flow reading falls below [-]. Judgement. */
export const LEAST_SCATTER = 1e-3;

/** What decides a pull's force and its scatter, beside the gap. */
export interface Place {
  readonly friction: number;
  /** null: as each rig says */
  readonly factor: number | null;
  readonly scatter: number;
}

/** Mean and variance of something at one gap. */
export interface Moment {
  readonly mean: number;
  readonly variance: number;
}

/** What a gap leaves open. */
export interface GivenGap {
  readonly friction: Moment;
  /** of ln κ; variance 0 where it isn't looked for */
  readonly logFactor: Moment;
  /** of friction and ln κ */
  readonly covariance: number;
  /** where the peak lies, as {@link Unknowns} places them */
  readonly mode: readonly number[];
}

/** @returns the scatter by its logarithm [-]; readings that agree better than any load or flow can be read don't make it vanish */
export function scatterOf(log: number): number {
  return Math.hypot(Math.exp(log), LEAST_SCATTER);
}

/** @returns logarithm of the prior density of a scatter, in ln s [-] */
export function scatterPrior(log: number, stated: number): number {
  return logNormalDensity(log, Math.log(stated), SCATTER_DOUBT);
}

/** The unknowns of pulls beside the gap, as a list of logarithms: friction where it is told, pull factor where it is looked for, scatter. */
export class Unknowns {
  readonly friction: boolean;
  readonly factor: boolean;
  private readonly request: Checked;

  constructor(request: Checked, friction: boolean) {
    this.request = request;
    this.friction = friction;
    this.factor = !!request.prior.pullFactor;
  }

  /** Empty without pulls: nothing then depends on any of them. */
  start(): readonly number[] {
    const { prior, pulls, scatter } = this.request;
    if (pulls.length === 0) return [];
    const { mean, sd } = prior.friction;
    return this.listed(
      Math.log(Math.max(mean, sd)),
      Math.log(prior.pullFactor?.median ?? 1),
      Math.log(scatter),
    );
  }

  /** Standard deviations where the density does not curve down. */
  widest(): readonly number[] {
    const { friction, pullFactor } = this.request.prior;
    return this.listed(
      friction.sd / Math.max(friction.mean, friction.sd),
      pullFactor?.sd ?? 1,
      SCATTER_DOUBT,
    );
  }

  private listed(friction: number, factor: number, scatter: number): number[] {
    return [...(this.friction ? [friction] : []), ...(this.factor ? [factor] : []), scatter];
  }

  private logFactor(x: readonly number[]): number {
    return this.factor ? x[x.length - 2] : 0;
  }

  /** @returns what a list of logarithms stands for; an empty one for the priors' middles */
  at(x: readonly number[]): Place {
    const { prior, scatter } = this.request;
    const median = prior.pullFactor?.median ?? 1;
    return {
      friction: this.friction && x.length > 0 ? Math.exp(x[0]) : prior.friction.mean,
      factor: this.factor ? (x.length > 0 ? Math.exp(this.logFactor(x)) : median) : null,
      scatter: x.length > 0 ? scatterOf(x[x.length - 1]) : scatter,
    };
  }

  /** Logarithm of the priors' density: of friction in μ, of pull factor and scatter in their logarithms. */
  prior(x: readonly number[]): number {
    const { prior, scatter } = this.request;
    let sum = scatterPrior(x[x.length - 1], scatter);
    if (this.friction) sum += logNormalDensity(Math.exp(x[0]), prior.friction.mean, prior.friction.sd);
    if (prior.pullFactor)
      sum += logNormalDensity(this.logFactor(x), Math.log(prior.pullFactor.median), prior.pullFactor.sd);
    return sum;
  }

  /** Before any pull. */
  unknown(mode: readonly number[]): GivenGap {
    const { friction, pullFactor } = this.request.prior;
    return {
      friction: { mean: friction.mean, variance: friction.sd ** 2 },
      logFactor: { mean: Math.log(pullFactor?.median ?? 1), variance: (pullFactor?.sd ?? 0) ** 2 },
      covariance: 0,
      mode,
    };
  }

  /** After summing over places: what isn't told keeps its prior. */
  given({ places, mode }: Integral): GivenGap {
    const before = this.unknown(mode);
    const mean = (of: (x: readonly number[]) => number) =>
      places.reduce((sum, { x, share }) => sum + share * of(x), 0);
    const moment = (of: (x: readonly number[]) => number): Moment => {
      const middle = mean(of);
      return { mean: middle, variance: mean((x) => (of(x) - middle) ** 2) };
    };
    const friction = this.friction ? moment((x) => Math.exp(x[0])) : before.friction;
    const logFactor = this.factor ? moment((x) => this.logFactor(x)) : before.logFactor;
    const both = (x: readonly number[]) =>
      (Math.exp(x[0]) - friction.mean) * (this.logFactor(x) - logFactor.mean);
    return { friction, logFactor, covariance: this.friction && this.factor ? mean(both) : 0, mode };
  }
}
