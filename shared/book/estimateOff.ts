import { evaluatePolynomial as polynomial } from "../numeric/polynomial.ts";
import { type Book, findById, oncePerBook } from "./book.ts";
import { drawnRotor } from "./drawnRotor.ts";
import { rotorBasis } from "./rotorBasis.ts";

/** A coefficient as the tests gave it and as the drawing had it. */
export interface Compared {
  readonly tested: number;
  readonly estimated: number;
}

/** How far the estimate from a rotor's drawing was off what its tests then gave. */
export interface EstimateOff {
  /** φ of best efficiency of the tested curve; null where the power was not measured [-] */
  readonly bestPhi: number | null;
  /** ψ there [-] */
  readonly pressure: Compared | null;
  /** λ there [-] */
  readonly power: Compared | null;
  /** ψ with no flow, on the fitted curve [-] */
  readonly blocked: Compared;
  /** the relative uncertainty that an estimate is marked with [-] */
  readonly marked: number;
}

/** Points at which the best efficiency is looked for; it is flat there. */
const LOOKED_AT = 400;

function phiOfBest(psi: readonly number[], lambda: readonly number[], from: number, to: number): number {
  let [best, most] = [from, Number.NEGATIVE_INFINITY];
  for (let i = 0; i <= LOOKED_AT; i++) {
    const phi = from + ((to - from) * i) / LOOKED_AT;
    const power = polynomial(lambda, phi);
    const efficiency = power > 0 ? (phi * polynomial(psi, phi)) / power : Number.NEGATIVE_INFINITY;
    if (efficiency > most) [best, most] = [phi, efficiency];
  }
  return best;
}

function offOf(book: Book, rotorId: string): EstimateOff | null {
  const rotor = findById(book.rotors, rotorId)?.data;
  const basis = rotorBasis(book, rotorId);
  const drawn = rotor && drawnRotor(rotor);
  if (!drawn || basis.basis === "missing" || basis.basis === "estimated") return null;
  const { psi, lambda, phiMin, phiMax } = basis;
  const compared = (tested: readonly number[], estimated: readonly number[], phi: number): Compared => ({
    tested: polynomial(tested, phi),
    estimated: polynomial(estimated, phi),
  });
  const bestPhi = lambda && phiOfBest(psi, lambda, phiMin, phiMax);
  return {
    bestPhi,
    pressure: bestPhi === null ? null : compared(psi, drawn.psi, bestPhi),
    power: bestPhi === null || !lambda ? null : compared(lambda, drawn.lambda, bestPhi),
    blocked: compared(psi, drawn.psi, 0),
    marked: drawn.uncertainty,
  };
}

/** @returns how far the estimate from a tested rotor's drawing was off; null where its geometry gives no estimate, or it was not tested */
export function estimateOff(book: Book, rotorId: string): EstimateOff | null {
  return oncePerBook(book, `estimate off ${rotorId}`, () => offOf(book, rotorId));
}
