import { NotEnoughDataError } from "../../numeric/errors.ts";
import { fitLinear } from "../../numeric/leastSquares.ts";
import type { Moment } from "./track.ts";

/** How a rotor slows down once its motor is cut. */
export interface CoastDown {
  /** friction torque over inertia [rad/s²] */
  readonly friction: number;
  readonly frictionError: number;
  /** torque of the air over inertia and over the square of the speed [1/rad] */
  readonly air: number;
  readonly airError: number;
  /** from and to which moment [s] */
  readonly from: number;
  readonly to: number;
  /** what the moments scatter by about the fit [rad/s] */
  readonly residualSd: number;
}

/** Fewer moments of a fall tell friction and air apart by luck. Judgement. */
const LEAST_MOMENTS = 8;
/** A fall over less leaves the two alike. Judgement. */
const LEAST_FALL = 0.3;
/** A moment higher than the one before by more is no fall any more [-]. */
const RISE = 0.01;

const MORE = "Let it run, cut the motor, record until it stands.";

/** Moments on either side that a moment is held against. */
const BESIDE = 2;
/** A moment further from the median of those beside it was heard wrongly [-]. Judgement. */
const WRONG = 0.08;

/** A window in which another line was loudest says a speed that its neighbours don't. */
function withoutWrong(moments: readonly Moment[]): Moment[] {
  return moments.filter(({ speed }, i) => {
    const near = moments.slice(Math.max(0, i - BESIDE), i + BESIDE + 1).map((moment) => moment.speed);
    const middle = near.sort((a, b) => a - b)[near.length >> 1];
    return Math.abs(speed / middle - 1) < WRONG;
  });
}

/** The longest stretch that only falls: of all stretches the one with the greatest fall. */
function fallOf(moments: readonly Moment[]): readonly Moment[] {
  let best: readonly Moment[] = [];
  let start = 0;
  const drop = (part: readonly Moment[]) => (part[0]?.speed ?? 0) - (part.at(-1)?.speed ?? 0);
  for (let i = 1; i <= moments.length; i++) {
    const goesOn = i < moments.length && moments[i].speed < moments[i - 1].speed * (1 + RISE);
    if (goesOn) continue;
    const part = moments.slice(start, i);
    if (drop(part) > drop(best)) best = part;
    start = i;
  }
  return best;
}

/** Before the motor is cut the speed stands still: the fall begins with the last moment near its highest. */
function fromCut(fall: readonly Moment[]): readonly Moment[] {
  const top = Math.max(...fall.map(({ speed }) => speed));
  const last = fall.findLastIndex(({ speed }) => speed > top * (1 - 2 * RISE));
  return fall.slice(Math.max(0, last));
}

/**
 * Friction and air resistance of a rotor that coasts down, over its inertia.
 *
 *     ω(t) = ω₀ − (M_c/J) t − (k/J) ∫ω² dt
 *
 * @param moments - speed through a recording in which the motor is cut [s, rad/s]
 * @returns M_c/J [rad/s²] and k/J [1/rad] with their standard errors
 * @throws {NotEnoughDataError} where the speed doesn't fall far or long enough
 *
 * Valid for friction that doesn't depend on speed and air torque with its square: a rotor in its duct or in the open, at
 * constant flow coefficient. Source: the motion's equation integrated once; docs/method/sound.md
 */
export function fitCoastDown(moments: readonly Moment[]): CoastDown {
  const fall = fromCut(fallOf(withoutWrong(moments)));
  if (fall.length < LEAST_MOMENTS)
    throw new NotEnoughDataError(`A fall of ${fall.length} moments is heard.`, MORE);
  const [first, last] = [fall[0], fall[fall.length - 1]];
  if (first.speed - last.speed < LEAST_FALL * first.speed)
    throw new NotEnoughDataError("The speed falls by less than a third.", MORE);
  let squares = 0;
  const design = fall.map(({ time, speed }, i) => {
    const before = fall[i - 1] ?? { time, speed };
    squares += ((speed ** 2 + before.speed ** 2) / 2) * (time - before.time);
    return [1, -(time - first.time), -squares];
  });
  const fit = fitLinear({ design, response: fall.map(({ speed }) => speed) });
  const [, friction, air] = fit.coefficients;
  const [, frictionError, airError] = fit.standardErrors ?? [0, Number.NaN, Number.NaN];
  const residualSd = fit.residualSd;
  return { friction, frictionError, air, airError, from: first.time, to: last.time, residualSd };
}
