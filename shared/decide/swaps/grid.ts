/** Sums of whole numbers up to here have no rounding; some room is left for what is compared with them. */
const EXACT = 2 ** 50;
/** How far a product may lie from the whole number that it is, by the rounding of its factors [-]. */
const ROUNDING = 1e-14;

/** Decimal steps on which amounts are added: 0.1 + 0.2 is 0.3 there, so that equal sums tie whatever their order. */
export interface Grid {
  /** whether each amount is a whole number of steps; else each is rounded to one */
  readonly isExact: boolean;
  /** @returns an amount in steps, in part where it isn't one of the grid's own */
  readonly toSteps: (amount: number) => number;
  /** @returns steps as an amount */
  readonly toAmount: (steps: number) => number;
}

function grid(digits: number, isExact: boolean): Grid {
  const scale = 10 ** Math.abs(digits);
  return digits >= 0
    ? { isExact, toSteps: (amount) => amount * scale, toAmount: (steps) => steps / scale }
    : { isExact, toSteps: (amount) => amount / scale, toAmount: (steps) => steps * scale };
}

const isWhole = (steps: number): boolean => Math.abs(steps - Math.round(steps)) <= steps * ROUNDING;

/**
 * The decimal grid on which amounts add up without rounding: the coarsest that has them all, else the finest that holds their sums.
 *
 *     step = 10^(−d),  d ≤ ⌊log₁₀(2⁵⁰/total)⌋
 *
 * @param amounts - that will be added [any unit, ≥ 0]
 * @param total - the largest sum that will be made [any unit, ≥ 0]
 * @returns the grid [any unit]
 *
 * Valid for sums up to 1e300. Source: whole numbers up to 2⁵³ are exact in IEEE 754
 */
export function decimalGrid(amounts: readonly number[], total: number): Grid {
  const finest = total > 0 ? Math.floor(Math.log10(EXACT / total)) : 0;
  for (let digits = Math.min(0, finest); digits <= finest; digits++) {
    const { toSteps } = grid(digits, true);
    if (amounts.every((amount) => isWhole(toSteps(amount)))) return grid(digits, true);
  }
  return grid(finest, false);
}
