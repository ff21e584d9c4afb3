import { OutOfRangeError } from "../numeric/errors.ts";
import type { Note } from "../physics/note.ts";
import { type CalibrationRequest, checkedRequest } from "./calibration/data.ts";
import {
  conflictNotes,
  coverageNotes,
  frictionNotes,
  gapNotes,
  type Side,
  sideOf,
} from "./calibration/notes.ts";
import { Posterior } from "./calibration/posterior.ts";
import { posteriorGrid } from "./calibration/posteriorGrid.ts";
import {
  type LeakResidual,
  leakResiduals,
  type PullResidual,
  pullResiduals,
} from "./calibration/residuals.ts";
import { type Summary, summarise } from "./calibration/summary.ts";

export type { Belief, CalibrationLeak, CalibrationPull, CalibrationRequest } from "./calibration/data.ts";
export type { LeakResidual, PullResidual } from "./calibration/residuals.ts";
export { type GapMoments, gapWithoutEach } from "./calibration/withoutEach.ts";

/** A quantity after the tests. */
export interface Calibrated {
  /** of the posterior */
  readonly mean: number;
  /** standard uncertainty */
  readonly sd: number;
  /** most likely value, together with that of the other */
  readonly best: number;
  /** 95 %; where the tests bound one side only, a one-sided interval: 0 or null stand for the side left open */
  readonly interval: readonly [number, number | null];
}

export interface Calibration {
  /** stand-off without the surface's roughness [m] */
  readonly gap: Calibrated;
  /** of the wheels [-]; null where no pull along the surface tells it */
  readonly friction: Calibrated | null;
  /** of gap [m] and friction [-]; of the gap alone where friction is null */
  readonly covariance: readonly (readonly number[])[];
  /** most likely relative sd of a single pull [-]; null without pulls */
  readonly scatter: number | null;
  /** at the most likely gap, friction and scatter; up to a constant that priors and flow readings alone decide */
  readonly logPosterior: number;
  readonly residuals: readonly PullResidual[];
  readonly leakResiduals: readonly LeakResidual[];
  readonly warnings: readonly Note[];
}

const CONFIDENCE = 0.95;

/**
 * Gap and friction that make the predictions agree with all pull and leak tests of a skirt on a surface.
 *
 *     p(h, μ, s | tests) ∝ p(h)·p(μ)·p(s)·Π [Φ((letGo − F)/(sF)) − Φ((held − F)/(sF))]·Π φ-density of the leak flows;  F = F_s(h), along: μ(F_s(h) + W)
 *
 * @param request - priors of gap [m] and friction [-] (normal, cut at 0); scatter of a pull and of a flow reading, meter's uncertainty [-]; pulls: rig, direction, rig mass [kg], held and letGo [N]; leak readings: skirt, air, pressure [Pa], flow [m³/s]
 * @returns gap [m] and friction [-] with standard uncertainty and 95 % interval, covariance, scatter [-], measured against predicted, notes
 * @throws {OutOfRangeError} naming the number that can't be; a pull that held although nothing can pull there
 * @throws {NotEnoughDataError} where a rotor's curve does not reach down to the leak
 * @throws {NoConvergenceError} never seen: where the grid does not settle
 *
 * Valid where all tests share one gap and one friction and are independent of each other: what makes all of them wrong alike is not in the uncertainty.
 * A pull whose skirt has a measured leak tells nothing of the gap. Source: Bayes' theorem by quadrature; docs/method/calibration.md, How it is solved
 */
export function calibrate(request: CalibrationRequest): Calibration {
  const checked = checkedRequest(request);
  const posterior = new Posterior(checked);
  requirePossible(posterior);
  const { gap: prior } = checked.prior;
  const nodes = posteriorGrid(posterior);
  const summary = summarise(nodes);
  const top = nodes.reduce((best, node) => (node.log > best.log ? node : best));
  const peak = posterior.peak(top.gap, top.known.mode, Math.sqrt(summary.gap.variance) / 4);
  const pulls = pullResiduals(checked, {
    now: posterior.forces(peak.gap, peak.friction),
    before: posterior.forces(prior.mean, checked.prior.friction.mean),
  });
  const leaks = leakResiduals(checked, {
    now: posterior.leakFlows(peak.gap),
    before: posterior.leakFlows(prior.mean),
  });
  const found = answerOf(posterior, summary, peak);
  return {
    ...found,
    scatter: checked.pulls.length > 0 ? peak.scatter : null,
    logPosterior: peak.log,
    residuals: pulls,
    leakResiduals: leaks,
    warnings: [
      ...coverageNotes(checked, request.pulls.length, posterior.tellsFriction),
      ...(checked.pulls.length + checked.leaks.length > 0 ? gapNotes(prior, found.gap) : []),
      ...(found.friction ? frictionNotes(checked.prior.friction, found.friction) : []),
      ...conflictNotes(pulls, leaks),
    ],
  };
}

/** A pull can't have held where even the narrowest gap gives no force: the motor does not turn, or the jet lifts. */
function requirePossible(posterior: Posterior): void {
  const { prior, pulls, places } = posterior.request;
  const forces = posterior.forces(0, Math.max(prior.friction.mean, prior.friction.sd));
  const wrong = pulls.findIndex(({ held }, i) => held > 0 && !(forces[i] > 0));
  if (wrong < 0) return;
  const allowed = "0 where the prediction is no force at any gap: check supply, motor and jet";
  throw new OutOfRangeError(`pulls.${places[wrong]}.held`, pulls[wrong].held, allowed);
}

type Answer = Pick<Calibration, "gap" | "friction" | "covariance">;

function answerOf(posterior: Posterior, summary: Summary, peak: { gap: number; friction: number }): Answer {
  const { pulls, leaks } = posterior.request;
  const side = sideOf(pulls);
  const gap = calibrated(summary.gap, peak.gap, leaks.length > 0 ? "both" : side);
  if (!posterior.tellsFriction) return { gap, friction: null, covariance: [[summary.gap.variance]] };
  const along = sideOf(pulls.filter(({ direction }) => direction === "along"));
  const mirrored = { held: "let-go", "let-go": "held", both: "both" } as const;
  return {
    gap,
    friction: calibrated(summary.friction, peak.friction, mirrored[along]),
    covariance: [
      [summary.gap.variance, summary.covariance],
      [summary.covariance, summary.friction.variance],
    ],
  };
}

/** All held: a gap can only be narrower. All let go at once: it can only be wider. Of friction the other way round. */
function calibrated(of: Summary["gap"], best: number, side: Side): Calibrated {
  const tail = (1 - CONFIDENCE) / 2;
  const interval = {
    held: [0, of.quantile(CONFIDENCE)],
    "let-go": [of.quantile(1 - CONFIDENCE), null],
    both: [of.quantile(tail), of.quantile(1 - tail)],
  } as const;
  return { mean: of.mean, sd: Math.sqrt(of.variance), best, interval: interval[side] };
}
