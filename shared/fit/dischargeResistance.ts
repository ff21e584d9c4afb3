import type { Step } from "./dischargeSteps.ts";

export interface ToldResistance {
  /** R of one cell [Ω] */
  readonly resistance: number;
  /** [Ω] */
  readonly standardError: number;
  /** scatter of a single voltage about the model [V] */
  readonly residualSd: number;
}

/** Steps of current that are needed for an error of R. */
const FEWEST_STEPS = 4;
/** Relative standard error of R above which it is not measured separately; as for a motor's constants [-]. Judgement. */
const MOST_DOUBT = 0.15;
/** Huber's constant: 95 % efficiency on normal errors [-]. */
const HUBER = 1.345;
/** Standard deviation over median absolute deviation of a normal distribution [-]. */
const NORMAL_MAD = 1.4826;
/** Scatter below which voltages have no more digits [V]. */
const LEAST_SCATTER = 1e-9;
const ROUNDS = 50;

function median(values: readonly number[]): number {
  const sorted = [...values].sort((a, b) => a - b);
  const half = sorted.length / 2;
  return (sorted[Math.floor(half)] + sorted[Math.ceil(half) - 1]) / 2;
}

const scatterOf = (steps: readonly Step[], resistance: number): number =>
  Math.max(
    LEAST_SCATTER,
    NORMAL_MAD * median(steps.map(({ voltage, current }) => Math.abs(voltage + resistance * current))),
  );

/** Huber's weight of a step: 1 near the line, less beyond, as where the curve bends between three readings. */
const weightOf = ({ voltage, current }: Step, resistance: number, scatter: number): number =>
  Math.min(1, (HUBER * scatter) / Math.max(LEAST_SCATTER, Math.abs(voltage + resistance * current)));

/** Each voltage's part in R; its squares give the error, neighbours sharing readings. */
function errorOf(steps: readonly Step[], weights: readonly number[], count: number, scatter: number): number {
  const parts = new Float64Array(count);
  const sum = steps.reduce((total, { current }, k) => total + weights[k] * current ** 2, 0);
  steps.forEach(({ at, current, weights: own }, k) => {
    own.forEach((part, j) => {
      parts[at[j]] += (weights[k] * current * part) / sum;
    });
  });
  return scatter * Math.hypot(...parts);
}

/**
 * Resistance of a cell from readings under different currents, separately from its open-circuit voltage.
 *
 *     each reading against the line between two others in charge: ΔV = −R·ΔI + bend;  R by Huber's regression through 0
 *
 * @param steps - of current, from one reading to the next or from one discharge to another [V, A]
 * @param count - of all readings [-]
 * @returns R with its standard error [Ω], scatter of a voltage [V]; null where they can't tell it: too few steps of current, an error above 15 %, no resistance above 0
 *
 * Valid for one resistance over all these steps; bends of the curve between three readings count as outliers.
 * Source: Huber, Ann. Math. Stat. 35 (1964) 73–101 (from memory); docs/method/fits/discharge.md
 */
export function toldResistance(steps: readonly Step[], count: number): ToldResistance | null {
  if (steps.length < FEWEST_STEPS) return null;
  let resistance = median(steps.map(({ voltage, current }) => -voltage / current));
  let weights: number[] = [];
  for (let round = 0; round < ROUNDS; round += 1) {
    const scatter = scatterOf(steps, resistance);
    weights = steps.map((step) => weightOf(step, resistance, scatter));
    const sum = (pick: (step: Step) => number) =>
      steps.reduce((total, step, k) => total + weights[k] * pick(step), 0);
    resistance = -sum(({ voltage, current }) => voltage * current) / sum(({ current }) => current ** 2);
  }
  const squares = steps.reduce(
    (sum, { voltage, current }, k) => sum + weights[k] * (voltage + resistance * current) ** 2,
    0,
  );
  const residualSd = Math.sqrt(squares / (steps.length - 1));
  const standardError = errorOf(steps, weights, count, residualSd);
  if (!(resistance > 0 && standardError <= MOST_DOUBT * resistance)) return null;
  return { resistance, standardError, residualSd };
}
