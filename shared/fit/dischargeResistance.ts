/** A reading of one cell at its state of charge. */
export interface CellReading {
  /** z [-] */
  readonly charge: number;
  /** [V] */
  readonly voltage: number;
  /** drawn from the cell [A] */
  readonly current: number;
}

export interface ToldResistance {
  /** R of one cell [Ω] */
  readonly resistance: number;
  /** [Ω] */
  readonly standardError: number;
  /** scatter of a single voltage about the model [V] */
  readonly residualSd: number;
}

/** Step of current, as a share of the largest current, below which a reading tells nothing of R. Judgement. */
const LEAST_STEP = 0.05;
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

/** How a reading lies off the straight line between its neighbours, over √(1 + s² + (1 − s)²) so that all scatter alike. */
interface Step {
  readonly voltage: number;
  readonly current: number;
  /** index of the middle reading, weights of the one before, of itself, of the one after */
  readonly at: number;
  readonly weights: readonly [number, number, number];
}

/** @param first - index of the first reading among those of all runs */
function stepsOf(readings: readonly CellReading[], first: number): Step[] {
  return readings.slice(1, -1).map((middle, i): Step => {
    const [before, after] = [readings[i], readings[i + 2]];
    const span = after.charge - before.charge;
    const share = span === 0 ? 1 / 2 : (middle.charge - before.charge) / span;
    const scale = 1 / Math.sqrt(1 + share ** 2 + (1 - share) ** 2);
    const off = (pick: (reading: CellReading) => number) =>
      scale * (pick(middle) - (1 - share) * pick(before) - share * pick(after));
    return {
      voltage: off((reading) => reading.voltage),
      current: off((reading) => reading.current),
      at: first + i + 1,
      weights: [-scale * (1 - share), scale, -scale * share],
    };
  });
}

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
      parts[at - 1 + j] += (weights[k] * current * part) / sum;
    });
  });
  return scatter * Math.hypot(...parts);
}

/**
 * Resistance of a cell from readings under different currents, separately from its open-circuit voltage.
 *
 *     each reading against the line between its neighbours in charge: ΔV = −R·ΔI + bend;  R by Huber's regression through 0
 *
 * @param runs - discharges, each its readings of one cell: charge [-], voltage [V], current [A], in the order they were taken
 * @returns R with its standard error [Ω], scatter of a voltage [V]; null where they can't tell it: one current, too few steps of current, an error above 15 %, no resistance above 0
 *
 * Valid for one resistance over the whole discharge; bends of the curve between three readings count as outliers.
 * Source: Huber, Ann. Math. Stat. 35 (1964) 73–101 (from memory); docs/method/fits/discharge.md
 */
export function toldResistance(runs: readonly (readonly CellReading[])[]): ToldResistance | null {
  const ordered = runs.map((readings) => [...readings].sort((a, b) => b.charge - a.charge));
  const count = ordered.reduce((sum, { length }) => sum + length, 0);
  const most = ordered.flat().reduce((largest, { current }) => Math.max(largest, current), 0);
  let before = 0;
  const steps = ordered
    .flatMap((readings) => {
      const own = stepsOf(readings, before);
      before += readings.length;
      return own;
    })
    .filter(({ current }) => Math.abs(current) > LEAST_STEP * most);
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
