import { OutOfRangeError } from "../numeric/errors.ts";
import { createPchip } from "../numeric/pchip.ts";
import type { Note } from "../physics/note.ts";
import { type CalibrationRequest, type Checked, checkedRequest } from "./calibration/data.ts";
import { gripOf } from "./calibration/forces.ts";
import {
  conflictNotes,
  coverageNotes,
  factorNotes,
  frictionNotes,
  gapNotes,
  type Side,
  sideOf,
} from "./calibration/notes.ts";
import { type Peak, Posterior } from "./calibration/posterior.ts";
import { posteriorGrid } from "./calibration/posteriorGrid.ts";
import {
  type LeakResidual,
  leakResiduals,
  type PullResidual,
  pullResiduals,
} from "./calibration/residuals.ts";
import { type JointTable, type Summary, summarise } from "./calibration/summary.ts";

export type {
  Belief,
  CalibrationLeak,
  CalibrationPull,
  CalibrationRequest,
  FactorBelief,
} from "./calibration/data.ts";
export type { LeakResidual, PullResidual } from "./calibration/residuals.ts";
export type { JointTable } from "./calibration/summary.ts";
export { type GapMoments, gapWithoutEach } from "./calibration/withoutEach.ts";

/** A quantity after the tests. */
export interface Calibrated {
  /** of the posterior */
  readonly mean: number;
  /** standard uncertainty */
  readonly sd: number;
  /** most likely value, together with those of the others */
  readonly best: number;
  /** 95 %; where the tests bound one side only, a one-sided interval: 0 or null stand for the side left open */
  readonly interval: readonly [number, number | null];
}

/** κ after the tests. */
export interface CalibratedFactor extends Calibrated {
  /** its median at the mean gap: the two belong together */
  readonly given: number;
}

export interface Calibration {
  /** stand-off without the surface's roughness [m] */
  readonly gap: Calibrated;
  /** of the wheels [-]; null where no pull along the surface tells it */
  readonly friction: Calibrated | null;
  /** of gap [m] and friction [-]; of the gap alone where friction is null */
  readonly covariance: readonly (readonly number[])[];
  /** κ [-]; null where it isn't looked for, or no pull tells it */
  readonly pullFactor: CalibratedFactor | null;
  /** all three, to draw from */
  readonly joint: JointTable;
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
 * Gap, friction and pull factor that make the predictions agree with all pull and leak tests of a skirt on a surface.
 *
 *     p(h, μ, κ, s | tests) ∝ p(h)·p(μ)·p(κ)·p(s)·Π [Φ((letGo − F)/(sF)) − Φ((held − F)/(sF))]·Π φ-density of the leak flows;  F = F_s(h, κ), along: μ(F_s + W)
 *
 * @param request - priors of gap [m] and friction [-] (normal, cut at 0), of κ [-] (log-normal); scatter of a pull and of a flow reading, meter's uncertainty [-]; pulls: rig, direction, rig mass [kg], held and letGo [N]; leak readings: skirt, air, pressure [Pa], flow [m³/s]
 * @returns gap [m], friction and κ [-] with standard uncertainty and 95 % interval, covariance, scatter [-], measured against predicted, notes
 * @throws {OutOfRangeError} naming the number that can't be; a pull that held although nothing can pull there
 * @throws {NotEnoughDataError} where a rotor's curve does not reach down to the leak
 * @throws {NoConvergenceError} never seen: where the grid does not settle
 *
 * Valid where all tests share one gap and one friction and are independent of each other: what makes all of them wrong alike is not in the uncertainty.
 * A pull whose skirt has a measured leak tells nothing of the gap, and the more of κ. Source: Bayes' theorem by quadrature; docs/method/calibration.md, How it is solved
 *
 * @example
 * const { input } = resolveBuild(book, book.builds[0].data);
 * const { gap, scatter } = calibrate({
 *   prior: { gap: { mean: 6e-4, sd: 2e-4 }, friction: { mean: 0.7, sd: 0.1 } },
 *   pulls: [
 *     { input, direction: "straight-off", held: 14.2, letGo: 14.7 },
 *     { input, direction: "straight-off", held: 13.7, letGo: 14.2 },
 *     { input, direction: "straight-off", held: 14.7, letGo: 15.2 },
 *   ],
 * });
 * 1e3 * gap.mean; // → 0.607
 * 1e3 * gap.sd; // → 0.020
 */
export function calibrate(request: CalibrationRequest): Calibration {
  return withNotes(request, calibrationNumbers(request));
}

/** What a calibration says in numbers, without a word. */
export type CalibrationNumbers = Omit<Calibration, "warnings">;

/**
 * The numbers of {@link calibrate}, which take nearly all of its time.
 *
 * @param request - as there [SI]
 * @returns the answer without its notes [SI]
 * @throws as {@link calibrate}
 *
 * Valid and source: as {@link calibrate}
 */
export function calibrationNumbers(request: CalibrationRequest): CalibrationNumbers {
  const checked = checkedRequest(request);
  const posterior = new Posterior(checked);
  requirePossible(posterior);
  const { gap: prior } = checked.prior;
  const nodes = posteriorGrid(posterior);
  const summary = summarise(nodes);
  const top = nodes.reduce((best, node) => (node.log > best.log ? node : best));
  const peak = posterior.peak(top.gap, top.known.mode, Math.sqrt(summary.gap.variance) / 4);
  return {
    ...answerOf(posterior, summary, peak),
    scatter: checked.pulls.length > 0 ? peak.scatter : null,
    logPosterior: peak.log,
    residuals: pullResiduals(checked, {
      now: posterior.forces(peak.gap, peak),
      before: posterior.forces(prior.mean, posterior.unknowns.at([])),
    }),
    leakResiduals: leakResiduals(checked, {
      now: posterior.leakFlows(peak.gap),
      before: posterior.leakFlows(prior.mean),
    }),
  };
}

/**
 * Puts the notes of {@link calibrate} to its numbers, in the units that are shown.
 *
 * @param request - what was asked [SI]
 * @param found - its answer, from {@link calibrationNumbers} wherever that was worked out [SI]
 * @returns the whole answer [SI]
 *
 * Valid and source: as {@link calibrate}
 */
export function withNotes(request: CalibrationRequest, found: CalibrationNumbers): Calibration {
  const checked = checkedRequest(request);
  const { gap, friction, pullFactor } = checked.prior;
  const tellsFriction = checked.pulls.some((pull) => gripOf(pull).perFriction > 0);
  return {
    ...found,
    warnings: [
      ...coverageNotes(checked, request.pulls.length, tellsFriction),
      ...(tellsGap(checked) ? gapNotes(gap, found.gap) : []),
      ...(found.pullFactor && pullFactor ? factorNotes(pullFactor, found.pullFactor) : []),
      ...(found.friction ? frictionNotes(friction, found.friction) : []),
      ...conflictNotes(found.residuals, found.leakResiduals),
    ],
  };
}

/** A pull can't have held where even the narrowest gap gives no force: the motor does not turn, or the jet lifts. */
function requirePossible(posterior: Posterior): void {
  const { prior, pulls, places } = posterior.request;
  const friction = Math.max(prior.friction.mean, prior.friction.sd);
  const forces = posterior.forces(0, { ...posterior.unknowns.at([]), friction });
  const wrong = pulls.findIndex(({ held }, i) => held > 0 && !(forces[i] > 0));
  if (wrong < 0) return;
  const allowed = "0 where the prediction is no force at any gap: check supply, motor and jet";
  throw new OutOfRangeError(`pulls.${places[wrong]}.held`, pulls[wrong].held, allowed);
}

/** A pull whose leak was measured has no word on the gap. */
const tellsGap = ({ pulls, leaks }: Checked): boolean =>
  leaks.length > 0 || pulls.some(({ input }) => !input.skirt.measuredLeak);

type Answer = Pick<Calibration, "gap" | "friction" | "pullFactor" | "covariance" | "joint">;

/** What is open to the other side of a pull that held or let go. */
const MIRRORED = { held: "let-go", "let-go": "held", both: "both" } as const;

function answerOf(posterior: Posterior, summary: Summary, peak: Peak): Answer {
  const { pulls, leaks } = posterior.request;
  const side = sideOf(pulls);
  const { joint } = summary;
  const gap = calibrated(
    summary.gap,
    peak.gap,
    leaks.length > 0 || !tellsGap(posterior.request) ? "both" : side,
  );
  const pullFactor = factorAnswer(summary, peak, side, pulls.length > 0);
  const common = { gap, pullFactor, joint };
  if (!posterior.tellsFriction) return { ...common, friction: null, covariance: [[summary.gap.variance]] };
  const along = sideOf(pulls.filter(({ direction }) => direction === "along"));
  return {
    ...common,
    friction: calibrated(summary.friction, peak.friction, MIRRORED[along]),
    covariance: [
      [summary.gap.variance, summary.covariance],
      [summary.covariance, summary.friction.variance],
    ],
  };
}

function factorAnswer(
  { factor, gap, joint }: Summary,
  peak: Peak,
  side: Side,
  pulled: boolean,
): CalibratedFactor | null {
  if (peak.factor === null || !pulled) return null;
  const logs = joint.logFactor.map(({ mean }) => mean);
  const given = Math.exp(createPchip(joint.gaps, logs).value(gap.mean));
  return { ...calibrated(factor, peak.factor, MIRRORED[side]), given };
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
