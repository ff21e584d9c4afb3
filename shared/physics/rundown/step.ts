import type { Moment, RundownLaw } from "./law.ts";

/** Weights of the classical method: 1, 2, 2, 1, over their sum. */
const SIXTH = 1 / 6;

/**
 * The moment one step later.
 *
 *     y₁ = y₀ + h·(k₁ + 2k₂ + 2k₃ + k₄)/6
 *
 * @param law - of the run-down [-]
 * @param from - the moment before, its rates are k₁ [-]
 * @param h - step, 0 or more [s]
 * @returns the moment after, solved anew [-]
 * @throws {NotEnoughDataError} where what the rotor draws isn't known
 *
 * Valid for steps well below the winding's time constant; error of the order h⁴. Source: classical Runge–Kutta method (Kutta, 1901)
 */
export function stepped(law: RundownLaw, from: Moment, h: number): Moment {
  const { time, charge, rise } = from;
  const stage = (rates: Moment, share: number) =>
    law.momentAt(time + share, charge + share * rates.chargeRate, rise + share * rates.riseRate);
  const second = stage(from, h / 2);
  const third = stage(second, h / 2);
  const fourth = stage(third, h);
  const mean = (rate: (moment: Moment) => number) =>
    SIXTH * (rate(from) + 2 * rate(second) + 2 * rate(third) + rate(fourth));
  return law.momentAt(
    time + h,
    charge + h * mean((moment) => moment.chargeRate),
    rise + h * mean((moment) => moment.riseRate),
  );
}
