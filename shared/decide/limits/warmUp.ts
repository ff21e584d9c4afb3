import { findRoot } from "../../numeric/root.ts";
import type { RundownInput } from "../../physics/rundown.ts";
import type { State } from "./state.ts";

/** A winding from cold, at a supply that stays as it is. */
export interface WarmUp {
  /** from switching on to its limit [s]; null where it never gets there, or no limit is known */
  readonly timeToLimit: number | null;
  /** [s, K], to somewhat past the limit, or to where it has settled */
  readonly samples: readonly { readonly time: number; readonly temperature: number }[];
}

/** Steps in one time constant; more where the limit is met well before that [-]. */
const STEPS = { fewest: 40, most: 400, toLimit: 20 } as const;
/** A rise is settled within 1 % after so many time constants [-]. */
const SETTLED = 5;
/** A winding that must pass its limit in the end is followed for so many time constants at most [-]. */
const LONGEST = 40;
/** The picture goes on past the limit by this share of the way there [-]. */
const BEYOND = 1.25;
/** Rows of the answer, about. */
const MOST_SAMPLES = 120;

type Rate = (temperature: number) => number;

/** dT/dt = (I²·R_m(T)·R_th − (T − T_a))/τ, I from the operating point at T. */
function rateOf(build: RundownInput, state: State, thermalResistance: number, timeConstant: number): Rate {
  return (temperature) => {
    const { current, windingResistance } = state.draw.at(state.openCell, temperature);
    const settlesAt = build.air.temperature + current ** 2 * windingResistance * thermalResistance;
    return (settlesAt - temperature) / timeConstant;
  };
}

/** One step of the classical Runge–Kutta method. */
function warmer(rate: Rate, temperature: number, h: number): number {
  const k1 = rate(temperature);
  const k2 = rate(temperature + (h / 2) * k1);
  const k3 = rate(temperature + (h / 2) * k2);
  const k4 = rate(temperature + h * k3);
  return temperature + (h / 6) * (k1 + 2 * k2 + 2 * k3 + k4);
}

/** @returns step of the integration: a share of τ, shorter where the cold winding's rate meets the limit soon [s] */
function stepFor(rate: Rate, ambient: number, limit: number | null, tau: number): number {
  const [longest, shortest] = [tau / STEPS.fewest, tau / STEPS.most];
  const soonest = limit === null ? Number.POSITIVE_INFINITY : (limit - ambient) / rate(ambient);
  if (!(soonest > 0)) return longest;
  return Math.min(longest, Math.max(shortest, soonest / STEPS.toLimit));
}

/** @returns part of a step after which a temperature is reached that lies between its ends [s] */
function passing(rate: Rate, from: number, to: number, h: number, limit: number): number {
  // The ends as they were found: solved anew they could differ by a rounding, and with it in sign.
  const excess = (s: number) => {
    if (s === 0) return from - limit;
    return (s === h ? to : warmer(rate, from, s)) - limit;
  };
  return findRoot(excess, 0, h).root;
}

function thinned<T>(rows: readonly T[]): T[] {
  const every = Math.ceil(rows.length / MOST_SAMPLES);
  return rows.filter((_, i) => i % every === 0 || i === rows.length - 1);
}

/**
 * The winding's temperature against time from cold, and how long it may run.
 *
 *     τ_th·dT/dt = I²·R_m(T)·R_th − (T − T_a),  I from the operating point at the momentary T
 *
 * @param build - with R_th [K/W] and τ_th [s]
 * @param state - where it settles, from {@link stateOf}
 * @param limit - of the winding [K]; null where it isn't known
 * @returns time to the limit [s] and samples [s, K]; null where R_th or τ_th isn't known
 * @throws {OutOfRangeError} with the path of a number that can't be
 *
 * Valid for a constant supply: no charge is drawn down. Source: classical Runge–Kutta method; docs/method/run-down.md
 */
export function warmUp(build: RundownInput, state: State, limit: number | null): WarmUp | null {
  const { thermalResistance, thermalTimeConstant: tau } = build.motor;
  if (thermalResistance === null || tau === null || tau === undefined) return null;
  const rate = rateOf(build, state, thermalResistance, tau);
  const reaches = limit !== null && state.windingTemperature > limit;
  const h = stepFor(rate, build.air.temperature, limit, tau);
  const rows = [{ time: 0, temperature: build.air.temperature }];
  let timeToLimit = limit !== null && build.air.temperature >= limit ? 0 : null;
  let end = reaches && timeToLimit === null ? LONGEST * tau : SETTLED * tau;
  for (let i = 0; i * h < end; i++) {
    const from = rows[i].temperature;
    const to = warmer(rate, from, h);
    if (timeToLimit === null && limit !== null && to >= limit) {
      timeToLimit = i * h + passing(rate, from, to, h, limit);
      end = Math.max(BEYOND * timeToLimit, timeToLimit + h);
    }
    rows.push({ time: (i + 1) * h, temperature: to });
  }
  return { timeToLimit, samples: thinned(rows) };
}
