import { cellVoltages } from "../../../shared/book/cellVoltages.ts";
import type { Book } from "../../../shared/book/resolve.ts";
import {
  type FanCurvePoint,
  fanCurve,
  type LeakCurvePoint,
  leakCurve,
} from "../../../shared/physics/curves.ts";
import { requiredSuction } from "../../../shared/physics/hold/holdAt.ts";
import type { PredictInput } from "../../../shared/physics/predict.ts";
import { attitudeRows, type Outcome } from "../../state/outcome.ts";
import { type MeasuredPoint, measuredPoints } from "./measured.ts";

const CURVE_POINTS = 60;
/** A level line far above the rotor's blocked pressure is named at the top instead of flattening the curves. */
const MOST_HEADROOM = 1.9;
const MARGIN_TOP = 1.06;
const MARGIN_RIGHT = 1.05;

/** Fan and leak curves of one build. */
export interface BuildCurves {
  readonly rest: readonly FanCurvePoint[];
  readonly full: readonly FanCurvePoint[];
  readonly cutOff: readonly FanCurvePoint[];
  readonly leak: readonly LeakCurvePoint[];
  /** for a gap smaller and larger by its standard uncertainty; null where none is stated or the leak was measured */
  readonly leakUncertainty: {
    readonly less: readonly LeakCurvePoint[];
    readonly more: readonly LeakCurvePoint[];
  } | null;
}

/** A pressure that an attitude needs. */
export interface Level {
  readonly key: string;
  readonly title: string;
  readonly angle: number;
  /** [Pa] */
  readonly pressure: number;
}

export interface Picture {
  readonly outcome: Outcome;
  readonly curves: BuildCurves;
  readonly levels: readonly Level[];
  readonly measured: readonly MeasuredPoint[];
  /** ends of the scales [m³/s], [Pa] */
  readonly mostFlow: number;
  readonly mostPressure: number;
}

function withCell(input: PredictInput, openCircuitVoltage: number): PredictInput {
  return { ...input, pack: { ...input.pack, openCircuitVoltage } };
}

function withGap(input: PredictInput, gap: number): PredictInput {
  return { ...input, skirt: { ...input.skirt, gap: Math.max(0, gap) } };
}

/** @returns the levels that wall, ceiling, the user's own attitudes and the worst one need at the build's mass */
export function levelsOf(outcome: Outcome): Level[] {
  const { resolved, prediction, pullPerPascal } = outcome;
  const input = resolved?.input;
  if (!input || !prediction || pullPerPascal === null) return [];
  const { angle } = prediction.worst.parked;
  const rows = attitudeRows(outcome).map((row) => ({
    key: `at ${row.angle}`,
    title: row.title,
    angle: row.angle,
  }));
  const worst = { key: "worst", title: "worst", angle };
  const named = rows.some((row) => Math.abs(row.angle - angle) < 0.5) ? rows : [...rows, worst];
  return named.flatMap((each) => {
    const pressure = requiredSuction(input.vehicle, each.angle).parked / pullPerPascal;
    return pressure > 0 && Number.isFinite(pressure) ? [{ ...each, pressure }] : [];
  });
}

function highest(curves: readonly (readonly FanCurvePoint[])[]): { flow: number; pressure: number } {
  let [flow, pressure] = [0, 0];
  for (const curve of curves)
    for (const point of curve) {
      flow = Math.max(flow, point.flow);
      pressure = Math.max(pressure, point.pressure);
    }
  return { flow, pressure };
}

function leakCurves(outcome: Outcome, top: number): Pick<BuildCurves, "leak" | "leakUncertainty"> {
  const { resolved } = outcome;
  const input = resolved?.input;
  if (!input || !(top > 0)) return { leak: [], leakUncertainty: null };
  const leak = leakCurve(input, top, CURVE_POINTS);
  const doubt = resolved.gap.uncertainty;
  if (doubt === null || doubt === 0 || resolved.leak) return { leak, leakUncertainty: null };
  const at = (gap: number) => leakCurve(withGap(input, gap), top, CURVE_POINTS);
  return { leak, leakUncertainty: { less: at(input.skirt.gap - doubt), more: at(input.skirt.gap + doubt) } };
}

/**
 * Everything that Match draws of one build.
 *
 * @param book - the book, for the readings' own words
 * @param outcome - the solved build
 * @param atLeast - scale ends that other builds in the same picture need [m³/s], [Pa]
 * @returns null where the build has no numbers
 */
export function pictureOf(
  book: Book,
  outcome: Outcome,
  atLeast: { readonly flow: number; readonly pressure: number } = { flow: 0, pressure: 0 },
): Picture | null {
  const input = outcome.resolved?.input;
  const volts = outcome.resolved && cellVoltages(outcome.build, outcome.resolved);
  if (!input || !volts) return null;
  const [rest, full, cutOff] = [volts.rest, volts.full, volts.cutOff].map((cell) =>
    fanCurve(withCell(input, cell), CURVE_POINTS),
  );
  const levels = levelsOf(outcome);
  const end = highest([full, rest]);
  const blocked = Math.max(end.pressure, atLeast.pressure);
  const shown = levels.filter((level) => level.pressure <= MOST_HEADROOM * blocked);
  const top = Math.max(blocked, ...shown.map((level) => level.pressure)) * MARGIN_TOP || 1;
  return {
    outcome,
    curves: { rest, full, cutOff, ...leakCurves(outcome, top) },
    levels,
    measured: measuredPoints(book, outcome),
    mostFlow: Math.max(end.flow, atLeast.flow) * MARGIN_RIGHT || 1e-3,
    mostPressure: top,
  };
}

/** A curve that came out as before stays the same object. */
function sameCurve<P extends LeakCurvePoint & { readonly extrapolated?: boolean }>(
  next: readonly P[],
  before: readonly P[],
): readonly P[] {
  const isSame = next.every(({ flow, pressure, extrapolated }, i) => {
    const old = before[i];
    return old?.flow === flow && old.pressure === pressure && old.extrapolated === extrapolated;
  });
  return isSame && next.length === before.length ? before : next;
}

/**
 * A picture that keeps what a setting did not move: its curves are then the same objects, so that their points and paths
 * need not be worked out anew.
 */
export function steadied(next: Picture | null, before: Picture | null): Picture | null {
  if (!next || !before) return next;
  const { rest, full, cutOff, leak, leakUncertainty } = next.curves;
  const old = before.curves;
  const doubt = leakUncertainty &&
    old.leakUncertainty && {
      less: sameCurve(leakUncertainty.less, old.leakUncertainty.less),
      more: sameCurve(leakUncertainty.more, old.leakUncertainty.more),
    };
  const curves = {
    rest: sameCurve(rest, old.rest),
    full: sameCurve(full, old.full),
    cutOff: sameCurve(cutOff, old.cutOff),
    leak: sameCurve(leak, old.leak),
    leakUncertainty: doubt ?? leakUncertainty,
  };
  return { ...next, curves };
}
