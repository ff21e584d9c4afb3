import { normalCdf } from "../../numeric/normal.ts";
import { createPchip } from "../../numeric/pchip.ts";
import { findRoot } from "../../numeric/root.ts";
import type { GapNode } from "./gapGrid.ts";
import type { GivenGap, Moment } from "./unknowns.ts";

/** Means, variances and quantiles of gap, friction and pull factor. */
export interface Summary {
  readonly gap: Moments;
  readonly friction: Moments;
  /** of gap and friction */
  readonly covariance: number;
  readonly factor: Moments;
  readonly joint: JointTable;
}

interface Moments {
  readonly mean: number;
  readonly variance: number;
  /** value below which a share lies */
  readonly quantile: (share: number) => number;
}

/** A joint posterior to draw from: the gap by its distribution, friction and ln κ normal together at each gap. */
export interface JointTable {
  /** by rising width [m] */
  readonly gaps: readonly number[];
  /** share of the gaps that are narrower, 0 to 1 [-] */
  readonly below: readonly number[];
  readonly friction: readonly Moment[];
  readonly logFactor: readonly Moment[];
  /** of friction and ln κ */
  readonly covariance: readonly number[];
}

/** Conditional standard deviations around which a quantile of the mixture is looked for [-]. */
const FAR = 10;
/** Digits to which a quantile is worth knowing [-]. */
const TOLERANCE = 1e-9;

/**
 * What a grid over the gap says of gap, friction and pull factor.
 *
 *     sums over the grid; friction's distribution is the mixture of its normal ones given each gap, that of κ of log-normal ones
 *
 * @param nodes - gap [m], logarithm of its density, means and variances of friction and ln κ given it [-], by rising gap
 * @returns mean, variance and quantiles of gap [m], friction and κ [-], covariance of gap and friction [m], the table to draw from
 *
 * Valid where the grid holds all of the density. Source: laws of total variance and covariance; moments of the log-normal distribution
 */
export function summarise(nodes: readonly GapNode<GivenGap>[]): Summary {
  const weights = nodeWeights(nodes);
  const mean = (of: (node: GapNode<GivenGap>) => number) =>
    nodes.reduce((sum, node, i) => sum + weights[i] * of(node), 0);
  const gap = mean((node) => node.gap);
  const friction = mean((node) => node.known.friction.mean);
  const gapVariance = mean((node) => (node.gap - gap) ** 2);
  const frictionVariance = mean(
    ({ known }) => known.friction.variance + (known.friction.mean - friction) ** 2,
  );
  return {
    gap: { mean: gap, variance: gapVariance, quantile: gapQuantile(nodes) },
    friction: {
      mean: friction,
      variance: frictionVariance,
      quantile: mixtureQuantile(
        nodes.map(({ known }) => known.friction),
        weights,
      ),
    },
    covariance: mean(({ gap: g, known }) => (g - gap) * (known.friction.mean - friction)),
    factor: factorOf(nodes, weights),
    joint: tableOf(nodes),
  };
}

function factorOf(nodes: readonly GapNode<GivenGap>[], weights: readonly number[]): Moments {
  const logs = nodes.map(({ known }) => known.logFactor);
  const mean = (of: (log: Moment) => number) => logs.reduce((sum, log, i) => sum + weights[i] * of(log), 0);
  const first = mean((log) => Math.exp(log.mean + log.variance / 2));
  const second = mean((log) => Math.exp(2 * log.mean + 2 * log.variance));
  const ofLog = mixtureQuantile(logs, weights);
  return { mean: first, variance: Math.max(0, second - first ** 2), quantile: (p) => Math.exp(ofLog(p)) };
}

function tableOf(nodes: readonly GapNode<GivenGap>[]): JointTable {
  const below = sharesBelow(nodes);
  const whole = below[below.length - 1];
  return {
    gaps: nodes.map(({ gap }) => gap),
    below: below.map((share) => share / whole),
    friction: nodes.map(({ known }) => known.friction),
    logFactor: nodes.map(({ known }) => known.logFactor),
    covariance: nodes.map(({ known }) => known.covariance),
  };
}

function densitiesOf(nodes: readonly GapNode<unknown>[]): number[] {
  const peak = Math.max(...nodes.map((node) => node.log));
  return nodes.map((node) => Math.exp(node.log - peak));
}

/** Weights of the first three nodes and of the last three: the density is cut off at a gap of 0. Gregory's rule, third order. */
const END_WEIGHTS = [3 / 8, 7 / 6, 23 / 24];

/** @returns share of each node of a grid in the whole, adding up to 1 [-] */
export function nodeWeights(nodes: readonly GapNode<unknown>[]): number[] {
  const weighted = densitiesOf(nodes).map((density, i) => {
    const fromEnd = Math.min(i, nodes.length - 1 - i);
    return density * (END_WEIGHTS[fromEnd] ?? 1);
  });
  const sum = weighted.reduce((total, weight) => total + weight, 0);
  return weighted.map((weight) => weight / sum);
}

function sharesBelow(nodes: readonly GapNode<unknown>[]): number[] {
  const densities = densitiesOf(nodes);
  let total = 0;
  return densities.map((d, i) => {
    total += i === 0 ? 0 : (densities[i - 1] + d) / 2;
    return total;
  });
}

function gapQuantile(nodes: readonly GapNode<unknown>[]): (share: number) => number {
  const below = sharesBelow(nodes);
  const total = below[below.length - 1];
  const curve = createPchip(
    nodes.map((node) => node.gap),
    below,
  );
  return (share) =>
    findRoot((gap) => curve.value(gap) - share * total, ...curve.clampedTo, { tolerance: TOLERANCE }).root;
}

function mixtureQuantile(moments: readonly Moment[], weights: readonly number[]) {
  const parts = moments.map(({ mean, variance }) => ({ mean, sd: Math.sqrt(variance) }));
  if (parts.every(({ sd }) => sd === 0)) return () => parts[0].mean;
  const lo = Math.min(...parts.map(({ mean, sd }) => mean - FAR * sd));
  const hi = Math.max(...parts.map(({ mean, sd }) => mean + FAR * sd));
  const below = (x: number) =>
    parts.reduce((sum, { mean, sd }, i) => sum + weights[i] * normalCdf((x - mean) / sd), 0);
  return (share: number) => findRoot((x) => below(x) - share, lo, hi, { tolerance: TOLERANCE }).root;
}
