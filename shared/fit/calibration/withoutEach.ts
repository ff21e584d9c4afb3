import { type CalibrationRequest, checkedRequest } from "./data.ts";
import type { GapNode } from "./gapGrid.ts";
import { Posterior } from "./posterior.ts";
import { posteriorGrid } from "./posteriorGrid.ts";
import { nodeWeights } from "./summary.ts";
import type { GivenGap } from "./unknowns.ts";

/** What the tests say of a gap, in short. */
export interface GapMoments {
  /** [m] */
  readonly mean: number;
  /** standard uncertainty [m] */
  readonly sd: number;
}

/** Share of the places that must still count with a group left out; with fewer they lie in the wrong place [-]. Judgement, held to the calibration anew by test. */
const LEAST_LEFT = 0.5;

/**
 * The gap without each of several groups of pulls, from the places of the one calibration with all of them.
 *
 *     p(h, μ, s | others) ∝ p(h, μ, s | all)/Π L_pull of the group, at the places of the whole
 *
 * @param request - as for {@link calibrate}
 * @param groups - places in `pulls` that are left out together
 * @returns mean and standard uncertainty of the gap for each group [m]; null where fewer than half of the places would still count: calibrate without it anew
 * @throws as {@link calibrate}
 *
 * Valid to about a thousandth of the standard uncertainty. Source: importance sampling; effective number (Σw)²/Σw² (Kong, Liu & Wong, J. Am. Stat. Assoc. 89 (1994) 278–288)
 */
export function gapWithoutEach(
  request: CalibrationRequest,
  groups: readonly (readonly number[])[],
): (GapMoments | null)[] {
  const checked = checkedRequest(request);
  const posterior = new Posterior(checked);
  const nodes = posteriorGrid(posterior);
  const left = groups.map((group) =>
    checked.places.flatMap((place, i) => (group.includes(place) ? [i] : [])),
  );
  const weights = nodeWeights(nodes);
  const sums = nodes.map((node, i) => sumsAt(posterior, node, weights[i], left));
  return groups.map((_, k) =>
    momentsOf(
      nodes,
      sums.map((each) => each[k]),
    ),
  );
}

/** Σ w/L and Σ w/L² over the places at one gap. */
interface Sums {
  readonly once: number;
  readonly twice: number;
}

function sumsAt(
  posterior: Posterior,
  { gap, known }: GapNode<GivenGap>,
  weight: number,
  groups: readonly (readonly number[])[],
): Sums[] {
  const [once, twice] = [groups.map(() => 0), groups.map(() => 0)];
  const pulls = posterior.pullsAt(gap);
  for (const { x, share } of weight > 0 ? posterior.placesAt(gap, known.mode) : []) {
    const logs = pulls(x);
    groups.forEach((group, k) => {
      const lost = Math.exp(-group.reduce((sum, i) => sum + logs[i], 0));
      if (share === 0) return;
      once[k] += weight * share * lost;
      twice[k] += weight * share * lost * lost;
    });
  }
  return groups.map((_, k) => ({ once: once[k], twice: twice[k] }));
}

function momentsOf(nodes: readonly GapNode<GivenGap>[], sums: readonly Sums[]): GapMoments | null {
  const total = sums.reduce((sum, { once }) => sum + once, 0);
  const squares = sums.reduce((sum, { twice }) => sum + twice, 0);
  if (!(total ** 2 / squares >= LEAST_LEFT)) return null;
  const mean = nodes.reduce((sum, { gap }, i) => sum + (gap * sums[i].once) / total, 0);
  const variance = nodes.reduce((sum, { gap }, i) => sum + ((gap - mean) ** 2 * sums[i].once) / total, 0);
  return { mean, sd: Math.sqrt(variance) };
}
