import { fitLinear } from "../numeric/leastSquares.ts";
import { hatWeights, knotsAmong } from "./hatBasis.ts";

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
  /** scatter of the voltages about the model [V] */
  readonly residualSd: number;
}

/** Pieces of the open-circuit line that are tried. */
const FEWEST_KNOTS = 3;
const MOST_KNOTS = 24;
/** Current that the charge alone doesn't explain, as a share of the largest: below it one current is read. Judgement. */
const LEAST_CONTRAST = 0.05;
/** Relative standard error of R above which it is not told apart; as METHOD 5 for a motor's constants [-]. */
const MOST_DOUBT = 0.15;
/** Squared volts below which a fit can't get better: readings have no more digits. */
const LEAST_SQUARES = 1e-24;

interface Split {
  readonly resistance: number;
  readonly ofCurrent: number;
  readonly squares: number;
  readonly knots: number;
}

const squared = (list: readonly number[]): number => list.reduce((sum, x) => sum + x * x, 0);

/** What of voltage and current the charge alone doesn't explain; their ratio is −R (Frisch, Waugh, Lovell). */
function split(readings: readonly CellReading[], count: number): Split | null {
  const charges = readings.map(({ charge }) => charge);
  const knots = knotsAmong(charges, count);
  if (knots.length < count || readings.length - count - 1 < 1) return null;
  const design = charges.map((charge) => hatWeights(knots, charge));
  const rest = (response: readonly number[]) => fitLinear({ design, response }).residuals;
  const voltage = rest(readings.map((reading) => reading.voltage));
  const current = rest(readings.map((reading) => reading.current));
  const ofCurrent = squared(current);
  if (!(ofCurrent > 0)) return null;
  const resistance = -voltage.reduce((sum, v, i) => sum + v * current[i], 0) / ofCurrent;
  const squares = squared(voltage.map((v, i) => v + resistance * current[i]));
  return { resistance, ofCurrent, squares, knots: count };
}

/** Akaike's criterion, corrected for few readings. */
function criterion({ squares, knots }: Split, n: number): number {
  const parameters = knots + 2;
  if (n - parameters - 1 <= 0) return Number.POSITIVE_INFINITY;
  const correction = (2 * parameters * (parameters + 1)) / (n - parameters - 1);
  return n * Math.log(Math.max(squares, LEAST_SQUARES) / n) + 2 * parameters + correction;
}

/**
 * Resistance of a cell from readings under different currents, told apart from its open-circuit voltage.
 *
 *     V = V_oc(z) − R·I, V_oc of straight pieces:  R = −Σ rᵥrᵢ/Σ rᵢ², r what the charge alone leaves over
 *
 * @param readings - of one cell: charge [-], voltage [V], current [A]
 * @returns R with its standard error [Ω], scatter of the voltages [V]; null where they can't tell it: one current, too few readings, an error above 15 %, no resistance above 0
 *
 * Valid for one resistance over the whole discharge. Number of pieces by AICc. Source: least squares; Frisch & Waugh, Econometrica 1 (1933) 387–401 (from memory)
 */
export function toldResistance(readings: readonly CellReading[]): ToldResistance | null {
  const n = readings.length;
  const tried = Array.from({ length: MOST_KNOTS - FEWEST_KNOTS + 1 }, (_, i) => FEWEST_KNOTS + i)
    .map((count) => split(readings, count))
    .filter((each) => each !== null);
  const best = tried.reduce<Split | null>(
    (least, each) => (least && criterion(least, n) <= criterion(each, n) ? least : each),
    null,
  );
  if (!best || !Number.isFinite(criterion(best, n))) return null;
  const most = readings.reduce((largest, { current }) => Math.max(largest, current), 0);
  if (!(Math.sqrt(best.ofCurrent / n) > LEAST_CONTRAST * most)) return null;
  const residualSd = Math.sqrt(best.squares / (n - best.knots - 1));
  const standardError = residualSd / Math.sqrt(best.ofCurrent);
  if (!(best.resistance > 0 && standardError <= MOST_DOUBT * best.resistance)) return null;
  return { resistance: best.resistance, standardError, residualSd };
}
