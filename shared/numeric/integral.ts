import { NoConvergenceError } from "./errors.ts";

/** Five points of Gauss and Legendre on −1…1, with their weights: exact up to the ninth degree. */
const [INNER, OUTER] = [1, -1].map((sign) => Math.sqrt(5 - 2 * sign * Math.sqrt(10 / 7)) / 3);
const [INNER_WEIGHT, OUTER_WEIGHT] = [1, -1].map((sign) => (322 + sign * 13 * Math.sqrt(70)) / 900);
const NODES = [
  [0, 128 / 225],
  [INNER, INNER_WEIGHT],
  [-INNER, INNER_WEIGHT],
  [OUTER, OUTER_WEIGHT],
  [-OUTER, OUTER_WEIGHT],
] as const;

/** A panel's points and weights on 0…1, for whoever asks the same panel again and again. */
export const PANEL = NODES.map(([node, weight]) => [(1 + node) / 2, weight / 2] as const);

/** Relative, at which a panel and its halves count as one. */
export const TOLERANCE = 1e-10;
const MOST_HALVINGS = 50;

function overPanel(f: (x: number) => number, from: number, to: number): number {
  const [middle, half] = [(from + to) / 2, (to - from) / 2];
  return half * NODES.reduce((sum, [node, weight]) => sum + weight * f(middle + node * half), 0);
}

/** One panel, halved until both halves together say what the whole says. */
function halved(
  f: (x: number) => number,
  [from, to]: readonly [number, number],
  whole: number,
  allowed: number,
  left: number,
): number {
  const middle = (from + to) / 2;
  const [lower, upper] = [overPanel(f, from, middle), overPanel(f, middle, to)];
  if (Math.abs(lower + upper - whole) <= allowed) return lower + upper;
  if (left === 0 || !Number.isFinite(lower + upper))
    throw new NoConvergenceError("The integral does not settle.", MOST_HALVINGS);
  return (
    halved(f, [from, middle], lower, allowed / 2, left - 1) +
    halved(f, [middle, to], upper, allowed / 2, left - 1)
  );
}

/**
 * Integral of a smooth function between two ends.
 *
 *     Gauss–Legendre of five points, each panel halved until its halves agree with it to 1e-10 of the whole
 *
 * @param f - function of one variable, never asked at the ends themselves [any unit]
 * @param from - lower end [unit of x]
 * @param to - upper end [unit of x]
 * @returns ∫ f dx [unit of f times unit of x]
 * @throws {NoConvergenceError} where the answers do not settle, as over a pole, or f is no number
 *
 * Valid for functions of one sign without a pole between the ends. Source: Gauss–Legendre quadrature, five points; Abramowitz & Stegun, 25.4.30
 */
export function integral(f: (x: number) => number, from: number, to: number): number {
  const whole = overPanel(f, from, to);
  return halved(f, [from, to], whole, TOLERANCE * Math.abs(whole), MOST_HALVINGS);
}
