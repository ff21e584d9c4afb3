import { evaluatePolynomial, firstPositiveZero } from "../../numeric/polynomial.ts";
import { CORDIER_RANGE, cordierSpeed } from "../../physics/fanlaws/cordier.ts";
import { type SpecificNumbers, specificNumbers } from "../../physics/fanlaws/specific.ts";
import type { RotorInput } from "../../physics/point/machine.ts";
import { bestPoint } from "../../physics/point/sizeLaw.ts";

/** How a family is used at a duty, beside where it is at its best. */
export interface Suits {
  /** at its best efficiency */
  readonly best: SpecificNumbers;
  /** η there [-] */
  readonly bestEfficiency: number;
  /** where the duty uses it */
  readonly used: SpecificNumbers;
  /** η there over the best [-] */
  readonly share: number;
  /** D at which this duty would use it at its best [m] */
  readonly diameter: number;
  /** N_s of the family at its best over that of good fans of its D_s; null outside the published line [-] */
  readonly overLine: number | null;
}

/** @returns N_s of a family over that of good fans of its D_s; null outside the published line [-] */
function overLine({ speed, diameter }: SpecificNumbers): number | null {
  const [least, most] = CORDIER_RANGE;
  return diameter >= least && diameter <= most ? speed / cordierSpeed(diameter) : null;
}

/**
 * Whether a family suits a duty at all, by specific speed and diameter.
 *
 *     at its best, b: η_b = φ_b·ψ_b/λ_b;  D_b = D·D_s,b/D_s, the size at which this duty meets φ_b
 *
 * @param rotor - ψ, λ of the family [-]
 * @param used - φ that the duty meets, at a size D [-, m]
 * @returns N_s and D_s at its best and as used, η as used over the best [-], D_b [m]
 *
 * Valid for a curve whose power belongs to its pressure; null where its best efficiency is none (not between 0 and 1) or the duty has no flow. Source: docs/method/size.md
 */
export function suitsDuty(
  rotor: Pick<RotorInput, "psi" | "lambda" | "phiMax">,
  used: { readonly phi: number; readonly diameter: number },
): Suits | null {
  const end = firstPositiveZero(rotor.psi) ?? Number.POSITIVE_INFINITY;
  const { phi, efficiency } = bestPoint(rotor, end);
  const psiAt = (at: number) => evaluatePolynomial(rotor.psi, at);
  const lambda = evaluatePolynomial(rotor.lambda, used.phi);
  if (!(efficiency > 0 && efficiency < 1 && phi > 0 && used.phi > 0 && psiAt(used.phi) > 0 && lambda > 0))
    return null;
  const best = specificNumbers(phi, psiAt(phi));
  const there = specificNumbers(used.phi, psiAt(used.phi));
  return {
    best,
    bestEfficiency: efficiency,
    used: there,
    share: (used.phi * psiAt(used.phi)) / lambda / efficiency,
    diameter: (used.diameter * best.diameter) / there.diameter,
    overLine: overLine(best),
  };
}
