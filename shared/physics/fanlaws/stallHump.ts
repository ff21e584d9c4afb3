import {
  differentiatePolynomial,
  evaluatePolynomial,
  firstPositiveZero,
  zerosOn,
} from "../../numeric/polynomial.ts";

/** A rise below this share of the largest |ψ| is rounding [-]. */
const ROUNDING = 1e-9;
/** A rise counts beyond this many of its own standard errors [-]. Common practice, no source. */
const CLEAR = 2;

/**
 * Whether a fitted pressure curve rises with the flow somewhere before it comes down to zero: a stall hump.
 *
 *     a stretch of [0, first positive zero] with ψ(b) − ψ(a) > 2·u(ψ(b) − ψ(a)), u² = dᵀCd, dⱼ = bʲ − aʲ
 *
 * @param psi - ψ in ascending powers of φ [-]
 * @param covariance - of psi; empty where unknown or exact, then any rise counts
 * @param phiMax - where to stop looking if ψ has no positive zero, the end of the tested range [-]
 * @returns true where it rises [-]
 *
 * Valid for the fitted curve; a hump narrower than the readings' steps stays unseen. Source: propagation of the fit's covariance
 */
export function hasStallHump(
  psi: readonly number[],
  covariance: readonly (readonly number[])[],
  phiMax: number,
): boolean {
  const end = firstPositiveZero(psi) ?? phiMax;
  const slope = differentiatePolynomial(psi);
  if (slope.every((c) => c === 0)) return false;
  const turns = [0, ...zerosOn(slope, 0, end), end];
  const scale = psi.reduce((sum, c, j) => sum + Math.abs(c) * end ** j, 0);
  return turns.slice(1).some((to, i) => {
    const from = turns[i];
    const rise = evaluatePolynomial(psi, to) - evaluatePolynomial(psi, from);
    return rise > Math.max(ROUNDING * scale, CLEAR * riseError(covariance, from, to));
  });
}

function riseError(covariance: readonly (readonly number[])[], from: number, to: number): number {
  const d = covariance.map((_, j) => to ** j - from ** j);
  const square = covariance.reduce(
    (sum, row, i) => sum + row.reduce((part, c, j) => part + d[i] * d[j] * c, 0),
    0,
  );
  return Math.sqrt(Math.max(0, square));
}
