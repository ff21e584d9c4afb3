import { minimise } from "../../numeric/minimise.ts";
import type { Checked } from "./data.ts";
import { flowLaw, forceOf, type GapLaw, type Grip, gripOf, suctionLaws } from "./forces.ts";
import { type Integral, integrate, roughIntegral } from "./integral.ts";
import {
  type LeakMisfit,
  leakLikelihood,
  leakMisfit,
  logNormalDensity,
  pullLikelihood,
} from "./likelihood.ts";

/** Prior sd of ln(scatter): a scatter half or twice the stated one is no surprise. Judgement. */
export const SCATTER_DOUBT = Math.LN2;
/** Relative sd that no pull or flow reading falls below [-]. Judgement. */
const LEAST_SCATTER = 1e-3;
/** Prior standard deviations beyond the prior's mean up to which forces are tabulated and the grid begins [-]. */
export const REACH = 6;

/** Friction and scatter of pulls at the peak. */
export interface Peak {
  readonly gap: number;
  readonly friction: number;
  readonly scatter: number;
  readonly log: number;
}

/** What a gap leaves open: friction's mean and variance given the gap, and where its peak lies. */
export interface GivenGap {
  readonly friction: number;
  readonly variance: number;
  /** ln μ and ln s where both are looked for, ln s alone, or nothing */
  readonly mode: readonly number[];
}

/**
 * Density of gap, friction and scatter, given all tests of a build.
 *
 *     p(h)·p(μ)·p(ln s)·Π L_pull(h, μ, s) · ∫ p(ln s_Q)·Π L_leak(h, s_Q) d ln s_Q
 */
export class Posterior {
  readonly tellsFriction: boolean;
  private readonly grips: readonly Grip[];
  private readonly suctions: readonly GapLaw[];
  private readonly flows: readonly GapLaw[];
  private readonly ofGaps = new Map<number, number>();

  constructor(readonly request: Checked) {
    const { gap } = request.prior;
    this.grips = request.pulls.map(gripOf);
    this.suctions = suctionLaws(request.pulls, gap.mean + REACH * gap.sd);
    this.flows = request.leaks.map(flowLaw);
    this.tellsFriction = this.grips.some((grip) => grip.perFriction > 0);
  }

  /** @returns predicted force of each pull [N] at a gap [m] and friction [-] */
  forces(gap: number, friction: number): number[] {
    return this.grips.map((grip, i) => forceOf(grip, this.suctions[i](gap), friction));
  }

  /** @returns predicted flow of each leak reading [m³/s] at a gap [m] */
  leakFlows(gap: number): number[] {
    return this.flows.map((flow) => flow(gap));
  }

  /** Logarithm of the density of a gap, all else integrated over, and what is known of friction there. */
  atGap(gap: number, near: readonly number[] | null): { readonly log: number; readonly known: GivenGap } {
    const belief = this.request.prior.friction;
    const known = { friction: belief.mean, variance: belief.sd ** 2, mode: near ?? this.start() };
    const integral = this.over(gap, known.mode, integrate);
    if (!("places" in integral)) return { log: integral.log, known };
    return {
      log: integral.log,
      known: this.tellsFriction ? frictionOf(integral) : { ...known, mode: integral.mode },
    };
  }

  /** Places over which {@link atGap} summed, with their shares, in search from a peak near; none where there is no density. */
  placesAt(gap: number, near: readonly number[]): Integral["places"] {
    const integral = this.over(gap, near, integrate);
    return "places" in integral ? integral.places : [];
  }

  /** Log-likelihood of each pull [-] at a gap [m], as a function of the place there. */
  pullsAt(gap: number): (x: readonly number[]) => number[] {
    const { pulls, prior } = this.request;
    const suctions = this.suctions.map((suction) => suction(gap));
    return (x) => {
      const friction = this.tellsFriction ? Math.exp(x[0]) : prior.friction.mean;
      const scatter = scatterOf(x[x.length - 1]);
      return pulls.map(({ held, letGo }, i) =>
        pullLikelihood(held, letGo, forceOf(this.grips[i], suctions[i], friction), scatter),
      );
    };
  }

  /** As {@link atGap} to a few tenths, and the place of the peak there. */
  roughlyAtGap(
    gap: number,
    near: readonly number[] | null,
  ): { readonly log: number; readonly mode: readonly number[] } {
    return this.over(gap, near ?? this.start(), roughIntegral);
  }

  /** All but the gap integrated over in one way or another; the start as the peak where there is nothing to integrate. */
  private over<T extends { readonly log: number; readonly mode: readonly number[] }>(
    gap: number,
    start: readonly number[],
    integral: (f: (x: readonly number[]) => number, start: readonly number[], widest: readonly number[]) => T,
  ): T | { readonly log: number; readonly mode: readonly number[] } {
    const leak = this.ofGapAlone(gap);
    if (start.length === 0 || leak === Number.NEGATIVE_INFINITY) return { log: leak, mode: start };
    const suctions = this.suctions.map((suction) => suction(gap));
    const density = (x: readonly number[]) =>
      this.givenSuctions(suctions, x) + (this.tellsFriction ? x[0] : 0);
    if (density(start) === Number.NEGATIVE_INFINITY) return { log: Number.NEGATIVE_INFINITY, mode: start };
    const found = integral(density, start, this.widest());
    return { ...found, log: leak + found.log };
  }

  /** The most likely gap, friction and scatter together, in search from a place near it. */
  peak(gap: number, mode: readonly number[], gapStep: number): Peak {
    const friction = this.tellsFriction ? [Math.exp(mode[0])] : [];
    const start = [gap, ...friction, ...mode.slice(-1)];
    const steps = [gapStep, ...friction.map((mu) => mu / 50), ...mode.slice(-1).map(() => 1 / 10)];
    const { x, value } = minimise((at) => -this.joint(at), start, { steps, tolerance: 1e-7 });
    const scatter = mode.length > 0 ? scatterOf(x[x.length - 1]) : this.request.scatter;
    return {
      gap: x[0],
      friction: this.tellsFriction ? x[1] : this.request.prior.friction.mean,
      scatter,
      log: -value,
    };
  }

  private joint([gap, ...rest]: readonly number[]): number {
    if (!(gap >= 0) || (this.tellsFriction && !(rest[0] > 0))) return Number.NEGATIVE_INFINITY;
    if (rest.length === 0) return this.ofGapAlone(gap);
    const suctions = this.suctions.map((suction) => suction(gap));
    const logs = this.tellsFriction ? [Math.log(rest[0]), rest[1]] : rest;
    return this.ofGapAlone(gap) + this.givenSuctions(suctions, logs);
  }

  /** Prior of the gap and all leak readings, their scatter integrated over; asked twice of most gaps. */
  private ofGapAlone(gap: number): number {
    const known = this.ofGaps.get(gap) ?? this.ofGap(gap);
    this.ofGaps.set(gap, known);
    return known;
  }

  private ofGap(gap: number): number {
    const { prior, leaks, leakScatter, meterUncertainty } = this.request;
    const ofPrior = logNormalDensity(gap, prior.gap.mean, prior.gap.sd);
    if (leaks.length === 0) return ofPrior;
    const flows = this.leakFlows(gap);
    if (!flows.every((flow) => flow > 0)) return Number.NEGATIVE_INFINITY;
    const measured = leaks.map(({ flow }) => flow);
    const misfit = leakMisfit(measured, flows);
    const density = ([log]: readonly number[]) =>
      leakLikelihood(misfit, scatterOf(log), meterUncertainty) + scatterPrior(log, leakScatter);
    const starts = [leakScatter, ...seenScatters(misfit)].map((scatter) => [Math.log(scatter)]);
    const start = starts.reduce((best, each) => (density(each) > density(best) ? each : best));
    return ofPrior + integrate(density, start, [SCATTER_DOUBT]).log;
  }

  /** Pulls at known suctions, with the priors of friction (in μ) and scatter (in ln s). */
  private givenSuctions(suctions: readonly number[], x: readonly number[]): number {
    const { prior, pulls, scatter } = this.request;
    const friction = this.tellsFriction ? Math.exp(x[0]) : prior.friction.mean;
    const logScatter = x[x.length - 1];
    const s = scatterOf(logScatter);
    let sum = scatterPrior(logScatter, scatter);
    if (this.tellsFriction) sum += logNormalDensity(friction, prior.friction.mean, prior.friction.sd);
    for (let i = 0; i < pulls.length; i += 1)
      sum += pullLikelihood(pulls[i].held, pulls[i].letGo, forceOf(this.grips[i], suctions[i], friction), s);
    return sum;
  }

  private start(): readonly number[] {
    const { prior, pulls, scatter } = this.request;
    if (pulls.length === 0) return [];
    const { mean, sd } = prior.friction;
    return this.tellsFriction ? [Math.log(Math.max(mean, sd)), Math.log(scatter)] : [Math.log(scatter)];
  }

  private widest(): readonly number[] {
    const { mean, sd } = this.request.prior.friction;
    return this.tellsFriction ? [sd / Math.max(mean, sd), SCATTER_DOUBT] : [SCATTER_DOUBT];
  }
}

/** Scatters that the readings themselves show: about their own mean, and about the prediction. */
function seenScatters({ count, mean, squares }: LeakMisfit): number[] {
  return [squares / count, squares / count + mean ** 2].map((square) => Math.sqrt(square) + LEAST_SCATTER);
}

/** Readings that agree better than any load or flow can be read don't make it vanish. */
function scatterOf(log: number): number {
  return Math.hypot(Math.exp(log), LEAST_SCATTER);
}

function scatterPrior(log: number, stated: number): number {
  return logNormalDensity(log, Math.log(stated), SCATTER_DOUBT);
}

function frictionOf({ places, mode }: Integral): GivenGap {
  const mean = places.reduce((sum, { x, share }) => sum + share * Math.exp(x[0]), 0);
  const variance = places.reduce((sum, { x, share }) => sum + share * (Math.exp(x[0]) - mean) ** 2, 0);
  return { friction: mean, variance, mode };
}
