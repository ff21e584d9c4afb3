import { NotEnoughDataError, OutOfRangeError, requireFinite } from "../numeric/errors.ts";
import { fitLinear } from "../numeric/leastSquares.ts";
import type { Note } from "../physics/note.ts";

export interface ThrottlePoint {
  /** 0…1 [-] */
  readonly command: number;
  /** blocked [any unit of pressure] */
  readonly pressure: number;
}

export interface ThrottleOffset {
  /** c₀, the command at which the straight part begins [-] */
  readonly offset: number;
  /** null where no residual is left over [-] */
  readonly standardError: number | null;
  /** indices of the points on the straight part */
  readonly used: readonly number[];
  /** indices of points at the pressure sensor's upper end */
  readonly saturated: readonly number[];
  readonly warnings: readonly Note[];
}

/** Points within this share of the largest √p lie on the sensor's plateau, where there are several [-]. Judgement. */
const PLATEAU = 0.98;
const PLATEAU_POINTS = 3;
/** Below this share of the largest √p the motor's own friction bends the line [-]. Judgement. */
const STRAIGHT_FROM = 0.5;

/**
 * Offset of a throttle from a sweep of a blocked rotor, whose speed grows with the root of its pressure.
 *
 *     √p = s·(command − c₀) by least squares over the upper half of √p, a saturated plateau left out
 *
 * @param points - command [-], blocked pressure [any unit of pressure]
 * @returns c₀ with its standard error [-], and which points it rests on
 * @throws {OutOfRangeError} on a command beyond 0…1, a pressure that is not finite, by its path
 * @throws {NotEnoughDataError} on fewer than three points on the straight part, or a pressure that doesn't rise
 *
 * Valid where speed is linear in command above the offset: δ = (command − c₀)/(1 − c₀). Source: fan laws, Δp ∝ n²; docs/method/fits/motor.md
 */
export function fitThrottleOffset(points: readonly ThrottlePoint[]): ThrottleOffset {
  points.forEach(({ command, pressure }, i) => {
    if (!(command >= 0 && command <= 1)) throw new OutOfRangeError(`points.${i}.command`, command, "0 to 1");
    requireFinite(`points.${i}.pressure`, pressure);
  });
  const roots = points.map(({ pressure }) => Math.sqrt(Math.max(0, pressure)));
  const saturated = plateauOf(roots);
  const largest = roots.reduce((most, root, i) => (saturated.includes(i) ? most : Math.max(most, root)), 0);
  const used = roots.flatMap((root, i) =>
    root > 0 && root >= STRAIGHT_FROM * largest && !saturated.includes(i) ? [i] : [],
  );
  if (new Set(used.map((i) => points[i].command)).size < 3)
    throw new NotEnoughDataError(
      "A throttle offset needs blocked pressures at three different commands, above half speed.",
      "Sweep the throttle in steps of 10 % or less, blocked.",
      "points",
    );
  const fit = fitLinear({
    design: used.map((i) => [1, points[i].command]),
    response: used.map((i) => roots[i]),
  });
  const [start, slope] = fit.coefficients;
  if (!(slope > 0))
    throw new NotEnoughDataError(
      "The blocked pressure doesn't rise with the command.",
      "Check that the sweep was blocked and the sensor not saturated.",
      "points",
    );
  const offset = -start / slope;
  return {
    offset,
    standardError: fit.covariance && offsetError(fit.covariance, offset, slope),
    used,
    saturated,
    warnings: offset < 0 ? [belowZero(offset)] : [],
  };
}

function plateauOf(roots: readonly number[]): number[] {
  const top = Math.max(...roots);
  const near = roots.flatMap((root, i) => (root >= PLATEAU * top ? [i] : []));
  return near.length >= PLATEAU_POINTS ? near : [];
}

/** First-order propagation through −a/b. */
function offsetError(
  [[aa, ab], [, bb]]: readonly (readonly number[])[],
  offset: number,
  slope: number,
): number {
  return Math.sqrt(Math.max(0, aa + 2 * offset * ab + offset ** 2 * bb)) / slope;
}

function belowZero(offset: number): Note {
  return {
    code: "offset-below-zero",
    message: `The line begins at ${(100 * offset).toFixed(1)} %, below 0: use 0 unless the sweep repeats it.`,
  };
}
