import { minimise } from "../../numeric/minimise.ts";
import type { Checked } from "./data.ts";
import { flowLaw, forceOf, type GapLaw, type Grip, gripOf, type SuctionLaw, suctionLaws } from "./forces.ts";
import { type Integral, integrate, roughIntegral } from "./integral.ts";
import {
  type LeakMisfit,
  leakLikelihood,
  leakMisfit,
  logNormalDensity,
  pullLikelihood,
} from "./likelihood.ts";
import {
  type GivenGap,
  LEAST_SCATTER,
  type Place,
  SCATTER_DOUBT,
  scatterOf,
  scatterPrior,
  Unknowns,
} from "./unknowns.ts";

/** Prior standard deviations beyond the prior's mean up to which forces are tabulated and the grid begins [-]. */
export const REACH = 6;

/** The most likely gap, with friction, pull factor and scatter of the pulls there. */
export interface Peak extends Place {
  readonly gap: number;
  readonly log: number;
}

/** Suction of a rig at one gap: whole at a pull factor of 1, and the cavity's part of it [N]. */
interface Suction {
  readonly whole: number;
  readonly cavity: number;
}

type Integrator<T> = (
  f: (x: readonly number[]) => number,
  start: readonly number[],
  widest: readonly number[],
) => T;

/**
 * Density of gap, friction, pull factor and scatter, given all tests of a build.
 *
 *     p(h)·p(μ)·p(ln κ)·p(ln s)·Π L_pull(h, μ, κ, s) · ∫ p(ln s_Q)·Π L_leak(h, s_Q) d ln s_Q
 */
export class Posterior {
  readonly tellsFriction: boolean;
  readonly unknowns: Unknowns;
  private readonly grips: readonly Grip[];
  private readonly suctions: readonly SuctionLaw[];
  private readonly ownFactors: readonly number[];
  private readonly flows: readonly GapLaw[];
  private readonly ofGaps = new Map<number, number>();
  /** Where no force depends on the gap, one sum over the places does for all gaps. */
  private last: { readonly of: Integrator<unknown>; readonly key: string; readonly found: unknown } | null =
    null;

  constructor(readonly request: Checked) {
    const { gap } = request.prior;
    this.grips = request.pulls.map(gripOf);
    this.suctions = suctionLaws(request.pulls, gap.mean + REACH * gap.sd);
    this.ownFactors = request.pulls.map(({ input }) => input.vehicle.pullFactor ?? 1);
    this.flows = request.leaks.map(flowLaw);
    this.tellsFriction = this.grips.some((grip) => grip.perFriction > 0);
    this.unknowns = new Unknowns(request, this.tellsFriction);
  }

  private suctionsAt(gap: number): Suction[] {
    return this.suctions.map(({ whole, cavity }) => {
      const force = whole(gap);
      return { whole: force, cavity: cavity === whole ? force : cavity(gap) };
    });
  }

  private force(i: number, { whole, cavity }: Suction, { friction, factor }: Place): number {
    const suction = whole + ((factor ?? this.ownFactors[i]) - 1) * cavity;
    return forceOf(this.grips[i], suction, friction);
  }

  /** @returns predicted force of each pull [N] at a gap [m], friction and pull factor [-] */
  forces(gap: number, at: Place): number[] {
    return this.suctionsAt(gap).map((suction, i) => this.force(i, suction, at));
  }

  /** @returns predicted flow of each leak reading [m³/s] at a gap [m] */
  leakFlows(gap: number): number[] {
    return this.flows.map((flow) => flow(gap));
  }

  /** Logarithm of the density of a gap, all else integrated over, and what is known of the rest there. */
  atGap(gap: number, near: readonly number[] | null): { readonly log: number; readonly known: GivenGap } {
    const start = near ?? this.unknowns.start();
    const integral = this.over(gap, start, integrate);
    const known = "places" in integral ? this.unknowns.given(integral) : this.unknowns.unknown(start);
    return { log: integral.log, known };
  }

  /** Places over which {@link atGap} summed, with their shares, in search from a peak near; none where there is no density. */
  placesAt(gap: number, near: readonly number[]): Integral["places"] {
    const integral = this.over(gap, near, integrate);
    return "places" in integral ? integral.places : [];
  }

  /** Log-likelihood of each pull [-] at a gap [m], as a function of the place there. */
  pullsAt(gap: number): (x: readonly number[]) => number[] {
    const suctions = this.suctionsAt(gap);
    return (x) => {
      const at = this.unknowns.at(x);
      return this.request.pulls.map(({ held, letGo }, i) =>
        pullLikelihood(held, letGo, this.force(i, suctions[i], at), at.scatter),
      );
    };
  }

  /** As {@link atGap} to a few tenths, and the place of the peak there. */
  roughlyAtGap(
    gap: number,
    near: readonly number[] | null,
  ): { readonly log: number; readonly mode: readonly number[] } {
    return this.over(gap, near ?? this.unknowns.start(), roughIntegral);
  }

  /** All but the gap integrated over in one way or another; the start as the peak where there is nothing to integrate. */
  private over<T extends { readonly log: number; readonly mode: readonly number[] }>(
    gap: number,
    start: readonly number[],
    integral: Integrator<T>,
  ): T | { readonly log: number; readonly mode: readonly number[] } {
    const leak = this.ofGapAlone(gap);
    if (start.length === 0 || leak === Number.NEGATIVE_INFINITY) return { log: leak, mode: start };
    const suctions = this.suctionsAt(gap);
    const density = (x: readonly number[]) =>
      this.givenSuctions(suctions, x) + (this.tellsFriction ? x[0] : 0);
    if (density(start) === Number.NEGATIVE_INFINITY) return { log: Number.NEGATIVE_INFINITY, mode: start };
    const key = suctions.map(({ whole }) => whole).join();
    const kept = this.last?.of === integral && this.last.key === key ? (this.last.found as T) : null;
    const found = kept ?? integral(density, start, this.unknowns.widest());
    this.last = { of: integral, key, found };
    return { ...found, log: leak + found.log };
  }

  /** The most likely gap, friction, pull factor and scatter together, in search from a place near it. */
  peak(gap: number, mode: readonly number[], gapStep: number): Peak {
    const friction = this.tellsFriction && mode.length > 0 ? [Math.exp(mode[0])] : [];
    const start = [gap, ...friction, ...mode.slice(friction.length)];
    const steps = [
      gapStep,
      ...friction.map((mu) => mu / 50),
      ...mode.slice(friction.length).map(() => 1 / 10),
    ];
    const { x, value } = minimise((at) => -this.joint(at), start, { steps, tolerance: 1e-7 });
    return { ...this.unknowns.at(this.logsOf(x.slice(1))), gap: x[0], log: -value };
  }

  /** Friction by its logarithm, as everything else. */
  private logsOf(rest: readonly number[]): readonly number[] {
    return this.tellsFriction && rest.length > 0 ? [Math.log(rest[0]), ...rest.slice(1)] : rest;
  }

  private joint([gap, ...rest]: readonly number[]): number {
    if (!(gap >= 0) || (this.tellsFriction && !(rest[0] > 0))) return Number.NEGATIVE_INFINITY;
    if (rest.length === 0) return this.ofGapAlone(gap);
    return this.ofGapAlone(gap) + this.givenSuctions(this.suctionsAt(gap), this.logsOf(rest));
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

  /** Pulls at known suctions, with the priors of friction (in μ), pull factor and scatter (in their logarithms). */
  private givenSuctions(suctions: readonly Suction[], x: readonly number[]): number {
    const { pulls } = this.request;
    const at = this.unknowns.at(x);
    let sum = this.unknowns.prior(x);
    for (let i = 0; i < pulls.length; i += 1)
      sum += pullLikelihood(pulls[i].held, pulls[i].letGo, this.force(i, suctions[i], at), at.scatter);
    return sum;
  }
}

/** Scatters that the readings themselves show: about their own mean, and about the prediction. */
function seenScatters({ count, mean, squares }: LeakMisfit): number[] {
  return [squares / count, squares / count + mean ** 2].map((square) => Math.sqrt(square) + LEAST_SCATTER);
}
