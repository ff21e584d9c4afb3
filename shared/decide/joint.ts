import type { JointTable } from "../fit/calibration.ts";
import { normalQuantile } from "../numeric/normalQuantile.ts";
import { type Place, requirePlace } from "./numberAt.ts";
import { limitsOf } from "./physicalLimits.ts";
import type { Uncertain } from "./uncertain.ts";

/** Gap, pull factor and friction as tests tell them together; a path that is null isn't drawn. */
export interface JointPosterior {
  readonly table: JointTable;
  readonly paths: {
    readonly gap: string | null;
    readonly pullFactor: string | null;
    readonly friction: string | null;
  };
}

/** What lies at a place of the table between two of its gaps. */
interface Given {
  gap: number;
  logFactor: number;
  logFactorSd: number;
  friction: number;
  /** change of friction with a standard normal number of ln κ, and what it varies by itself */
  slope: number;
  frictionSd: number;
}

function nodesOf({ gaps, logFactor, friction, covariance }: JointTable): Given[] {
  return gaps.map((gap, i) => {
    const logFactorSd = Math.sqrt(logFactor[i].variance);
    const slope = logFactorSd > 0 ? covariance[i] / logFactorSd : 0;
    const own = Math.max(0, friction[i].variance - slope ** 2);
    const { mean } = friction[i];
    return {
      gap,
      logFactor: logFactor[i].mean,
      logFactorSd,
      friction: mean,
      slope,
      frictionSd: Math.sqrt(own),
    };
  });
}

/** Writes what stands below a share of the gaps; linear between two of them. */
function readerOf({ below }: JointTable, nodes: readonly Given[], into: Given): (share: number) => void {
  const keys = Object.keys(into) as (keyof Given)[];
  return (share) => {
    let [low, high] = [0, below.length - 1];
    while (high - low > 1) {
      const middle = (low + high) >> 1;
      if (below[middle] <= share) low = middle;
      else high = middle;
    }
    const width = below[high] - below[low];
    const t = width > 0 ? (share - below[low]) / width : 0;
    for (const key of keys) into[key] = nodes[low][key] + t * (nodes[high][key] - nodes[low][key]);
  };
}

/** The mean over all gaps, for numbers that are drawn without the gap. */
function middleOf({ below }: JointTable, nodes: readonly Given[]): Given {
  const weights = nodes.map(
    (_, i) => (below[Math.min(i + 1, nodes.length - 1)] - below[Math.max(i - 1, 0)]) / 2,
  );
  const mean = (of: (node: Given) => number) =>
    nodes.reduce((sum, node, i) => sum + weights[i] * of(node), 0);
  const logFactor = mean((node) => node.logFactor);
  const friction = mean((node) => node.friction);
  const logFactorSd = Math.sqrt(mean((node) => node.logFactorSd ** 2 + (node.logFactor - logFactor) ** 2));
  const both = mean(
    (node) => node.slope * node.logFactorSd + (node.logFactor - logFactor) * (node.friction - friction),
  );
  const slope = logFactorSd > 0 ? both / logFactorSd : 0;
  const whole = mean((node) => node.slope ** 2 + node.frictionSd ** 2 + (node.friction - friction) ** 2);
  const frictionSd = Math.sqrt(Math.max(0, whole - slope ** 2));
  return { gap: mean(({ gap }) => gap), logFactor, logFactorSd, friction, slope, frictionSd };
}

const within = ([least, most]: readonly [number, number], x: number) => Math.min(most, Math.max(least, x));

/**
 * Makes the writer of gap, pull factor and friction drawn from a joint posterior.
 *
 *     h by its distribution;  κ = exp(m(h) + s(h)·z₁);  μ = m_μ(h) + b(h)·z₁ + s_μ(h)·z₂
 *
 * @param copy - the input's own copy, into which samples are written [SI]
 * @param joint - the table and the paths of what is drawn from it
 * @param name - of the posterior, for a refusal [-]
 * @returns the writer; it takes one uniform number for each path [-]
 * @throws {OutOfRangeError} on a path at which there is no number
 *
 * Valid where ln κ and friction are about normal at each gap; without the gap's path both are those over all gaps. Source: docs/method/calibration.md, In the predictions
 */
export function jointInput(copy: object, { table, paths }: JointPosterior, name: string): Uncertain {
  const nodes = nodesOf(table);
  const now = middleOf(table, nodes);
  const read = readerOf(table, nodes, now);
  const place = (
    key: keyof JointPosterior["paths"],
  ): (Place & { limits: readonly [number, number] }) | null => {
    const path = paths[key];
    return path === null
      ? null
      : { ...requirePlace(copy, path, `${name}.paths.${key}`), limits: limitsOf(path) };
  };
  const [gap, factor, friction] = [place("gap"), place("pullFactor"), place("friction")];
  const write: Uncertain["write"] = (uniforms, from, independent) => {
    let next = 0;
    const normal = () => {
      independent[next] = normalQuantile(uniforms[from + next]);
      next += 1;
      return independent[next - 1];
    };
    if (gap) {
      read(uniforms[from]);
      gap.holder[gap.key] = within(gap.limits, now.gap);
      normal();
    }
    const first = factor ? normal() : 0;
    if (factor) factor.holder[factor.key] = Math.exp(now.logFactor + now.logFactorSd * first);
    if (!friction) return;
    const second = normal();
    const spread = factor
      ? now.slope * first + now.frictionSd * second
      : Math.hypot(now.slope, now.frictionSd) * second;
    friction.holder[friction.key] = within(friction.limits, now.friction + spread);
  };
  const drawn = [paths.gap, paths.pullFactor, paths.friction].filter((path) => path !== null);
  return { paths: drawn, dimensions: drawn.length, write };
}
