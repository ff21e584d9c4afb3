import { normalCdf } from "../../numeric/normal.ts";
import { createPchip } from "../../numeric/pchip.ts";
import { findRoot } from "../../numeric/root.ts";
import type { GapNode } from "./gapGrid.ts";
import type { GivenGap } from "./posterior.ts";

/** Means, variances and quantiles of gap and friction. */
export interface Summary {
  readonly gap: Moments;
  readonly friction: Moments;
  readonly covariance: number;
}

interface Moments {
  readonly mean: number;
  readonly variance: number;
  /** value below which a share lies */
  readonly quantile: (share: number) => number;
}

/** Conditional standard deviations around which a quantile of the mixture is looked for [-]. */
const FAR = 10;
/** Digits to which a quantile is worth knowing [-]. */
const TOLERANCE = 1e-9;

/**
 * What a grid over the gap says of gap and friction.
 *
 *     sums over the grid; friction's distribution is the mixture of its normal ones given each gap
 *
 * @param nodes - gap [m], logarithm of its density, friction's mean and variance given it [-], by rising gap
 * @returns mean, variance and quantiles of gap [m] and friction [-], their covariance [m]
 *
 * Valid where the grid holds all of the density. Source: laws of total variance and covariance
 */
export function summarise(nodes: readonly GapNode<GivenGap>[]): Summary {
  const weights = nodeWeights(nodes);
  const mean = (of: (node: GapNode<GivenGap>) => number) =>
    nodes.reduce((sum, node, i) => sum + weights[i] * of(node), 0);
  const gap = mean((node) => node.gap);
  const friction = mean((node) => node.known.friction);
  const gapVariance = mean((node) => (node.gap - gap) ** 2);
  const frictionVariance = mean(({ known }) => known.variance + (known.friction - friction) ** 2);
  return {
    gap: { mean: gap, variance: gapVariance, quantile: gapQuantile(nodes) },
    friction: { mean: friction, variance: frictionVariance, quantile: frictionQuantile(nodes, weights) },
    covariance: mean(({ gap: g, known }) => (g - gap) * (known.friction - friction)),
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

function gapQuantile(nodes: readonly GapNode<unknown>[]): (share: number) => number {
  const densities = densitiesOf(nodes);
  let total = 0;
  const below = densities.map((d, i) => {
    total += i === 0 ? 0 : (densities[i - 1] + d) / 2;
    return total;
  });
  const curve = createPchip(
    nodes.map((node) => node.gap),
    below,
  );
  return (share) =>
    findRoot((gap) => curve.value(gap) - share * total, ...curve.clampedTo, { tolerance: TOLERANCE }).root;
}

function frictionQuantile(nodes: readonly GapNode<GivenGap>[], weights: readonly number[]) {
  const parts = nodes.map(({ known }) => ({ mean: known.friction, sd: Math.sqrt(known.variance) }));
  const lo = Math.min(...parts.map(({ mean, sd }) => mean - FAR * sd));
  const hi = Math.max(...parts.map(({ mean, sd }) => mean + FAR * sd));
  const below = (x: number) =>
    parts.reduce((sum, { mean, sd }, i) => sum + weights[i] * normalCdf((x - mean) / sd), 0);
  return (share: number) => findRoot((x) => below(x) - share, lo, hi, { tolerance: TOLERANCE }).root;
}
