import { type GapNode, gapGrid } from "./gapGrid.ts";
import { type Posterior, REACH } from "./posterior.ts";
import type { GivenGap } from "./unknowns.ts";

/**
 * A posterior on a grid over the gap; each gap's peak is looked for from that of the gap before.
 *
 *     begun six prior standard deviations to both sides of the prior's mean
 *
 * @param posterior - of all tests
 * @returns nodes by rising gap [m]
 * @throws {NoConvergenceError} as {@link gapGrid}
 *
 * Valid as {@link gapGrid}. Source: docs/method/calibration.md, How it is solved
 */
export function posteriorGrid(posterior: Posterior): GapNode<GivenGap>[] {
  const { gap: prior } = posterior.request.prior;
  let near: readonly number[] | null = null;
  const density = (gap: number) => {
    const at = posterior.atGap(gap, near);
    if (at.log > Number.NEGATIVE_INFINITY) near = at.known.mode;
    return at;
  };
  const rough = (gap: number) => {
    const at = posterior.roughlyAtGap(gap, near);
    if (at.log > Number.NEGATIVE_INFINITY) near = at.mode;
    return at.log;
  };
  const [from, to] = [Math.max(0, prior.mean - REACH * prior.sd), prior.mean + REACH * prior.sd];
  return gapGrid(density, rough, from, to);
}
