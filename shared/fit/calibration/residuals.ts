import type { Checked } from "./data.ts";

/** Measured against predicted of one pull, at the most likely gap and friction. */
export interface PullResidual {
  /** place in the request */
  readonly pull: number;
  /** [N] */
  readonly predicted: number;
  /** with gap and friction as held true before the tests [N] */
  readonly before: number;
  readonly held: number;
  readonly letGo: number | null;
  /** the prediction lies within the bracket */
  readonly inside: boolean;
  /** from the prediction to the bracket's nearer end, in stated scatters; above 0 where it held more than predicted, 0 inside [-] */
  readonly deviation: number;
}

/** The same of one reading of a leak test. */
export interface LeakResidual {
  /** [m³/s] */
  readonly predicted: number;
  /** with the gap as held true before the tests [m³/s] */
  readonly before: number;
  readonly measured: number;
  /** in stated uncertainties, scatter and meter together; above 0 where more leaked than predicted [-] */
  readonly deviation: number;
}

function deviationOf(low: number, high: number, predicted: number, scatter: number): number {
  const off = predicted < low ? low - predicted : predicted > high ? high - predicted : 0;
  return off === 0 ? 0 : off / (scatter * predicted);
}

/** Predictions at the most likely gap and friction, and at those held true before. */
export interface Predicted {
  readonly now: readonly number[];
  readonly before: readonly number[];
}

/** @returns residuals of the pulls at predicted forces [N] */
export function pullResiduals(request: Checked, { now, before }: Predicted): PullResidual[] {
  return request.pulls.map(({ held, letGo }, i) => {
    const deviation = deviationOf(held, letGo ?? Number.POSITIVE_INFINITY, now[i], request.scatter);
    const place = { pull: request.places[i], predicted: now[i], before: before[i] };
    return { ...place, held, letGo, inside: deviation === 0, deviation };
  });
}

/** @returns residuals of the leak readings at predicted flows [m³/s] */
export function leakResiduals(request: Checked, { now, before }: Predicted): LeakResidual[] {
  const stated = Math.hypot(request.leakScatter, request.meterUncertainty);
  return request.leaks.map(({ flow }, i) => {
    const deviation = deviationOf(flow, flow, now[i], stated);
    return { predicted: now[i], before: before[i], measured: flow, deviation };
  });
}
