import { NotEnoughDataError, OutOfRangeError, requireFinite } from "../numeric/errors.ts";
import { fitLinear } from "../numeric/leastSquares.ts";
import type { Note } from "../physics/note.ts";
import { formatFixed } from "../units/format.ts";

export interface ThrottlePoint {
  /** 0…1 [-] */
  readonly command: number;
  /** what grows with the motor's voltage in a straight line: its duty, √Δp of a blocked rotor [any unit] */
  readonly response: number;
}

export interface ThrottleOffset {
  /** c₀, the command at which the straight part begins [-] */
  readonly offset: number;
  /** null where no residual is left over [-] */
  readonly standardError: number | null;
  /** indices of the points on the straight part */
  readonly used: readonly number[];
  /** indices of points on a plateau: a sensor or a controller at its end */
  readonly saturated: readonly number[];
  readonly warnings: readonly Note[];
}

/** Points within this share of the largest response lie on a plateau, where there are several [-]. Judgement. */
const PLATEAU = 0.98;
const PLATEAU_POINTS = 3;
/** Below this share of the largest response friction bends the line of a speed [-]. Judgement. */
const STRAIGHT_FROM = 0.5;

/**
 * Offset of a throttle from a sweep: the command at which the motor would begin to turn.
 *
 *     response = s·(command − c₀) by least squares over the upper half of the response, a plateau left out
 *
 * @param points - command [-], response [any unit]
 * @returns c₀ with its standard error [-], and which points it is based on
 * @throws {OutOfRangeError} on a command beyond 0…1, a response that is not finite, by its path
 * @throws {NotEnoughDataError} on fewer than three commands on the straight part, or a response that doesn't rise
 *
 * Valid where the motor's voltage is linear in the command above the offset: δ = (command − c₀)/(1 − c₀).
 * Source: least squares; of a blocked rotor √Δp ∝ n by the fan laws; docs/method/fits/motor.md, Throttle offset
 */
export function fitThrottleOffset(points: readonly ThrottlePoint[]): ThrottleOffset {
  points.forEach(({ command, response }, i) => {
    if (!(command >= 0 && command <= 1)) throw new OutOfRangeError(`points.${i}.command`, command, "0 to 1");
    requireFinite(`points.${i}.response`, response);
  });
  const responses = points.map(({ response }) => response);
  const saturated = plateauOf(responses);
  const largest = responses.reduce(
    (most, each, i) => (saturated.includes(i) ? most : Math.max(most, each)),
    0,
  );
  const used = responses.flatMap((each, i) =>
    each > 0 && each >= STRAIGHT_FROM * largest && !saturated.includes(i) ? [i] : [],
  );
  if (new Set(used.map((i) => points[i].command)).size < 3)
    throw new NotEnoughDataError(
      "A throttle offset needs readings at three different throttles, above half speed.",
      "Sweep the throttle in steps of 10 % or less.",
      "points",
    );
  const fit = fitLinear({
    design: used.map((i) => [1, points[i].command]),
    response: used.map((i) => responses[i]),
  });
  const [start, slope] = fit.coefficients;
  if (!(slope > 0))
    throw new NotEnoughDataError(
      "The motor's voltage doesn't rise with the throttle.",
      "Check the throttle of each row.",
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

function plateauOf(responses: readonly number[]): number[] {
  const top = Math.max(...responses);
  const near = responses.flatMap((each, i) => (each >= PLATEAU * top ? [i] : []));
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
    message: `By the sweep the motor turns from a throttle of ${formatFixed(100 * offset, 1)} % on; an offset below 0 counts as 0.`,
  };
}
