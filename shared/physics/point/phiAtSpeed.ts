import { NotEnoughDataError } from "../../numeric/errors.ts";
import { firstPositiveZero } from "../../numeric/polynomial.ts";
import { findRoot } from "../../numeric/root.ts";

/** Intervals of the scan from open to blocked. */
const SCAN = 256;
/** Times the fitted range is doubled in search of an end, for a curve whose ψ has no zero. */
const MOST_DOUBLINGS = 40;

interface Curve {
  readonly psi: readonly number[];
  readonly phiMax: number;
}

function endOf(curve: Curve, excess: (phi: number) => number): number {
  const zero = firstPositiveZero(curve.psi);
  if (zero !== null) return zero;
  let end = curve.phiMax;
  for (let i = 0; i < MOST_DOUBLINGS; i++, end *= 2) if (excess(end) < 0) return end;
  throw new NotEnoughDataError(
    "The curve's pressure never falls to what the leak lets through.",
    "Measure the rotor nearer to open, where its pressure is 0.",
    "rotor.psi",
  );
}

/**
 * φ at which rotor and leak meet at one speed: the crossing with the largest flow, on which a vehicle set down settles.
 *
 *     Q_leak(Δp(φ)) − φ·A·u = 0, scanned from open to blocked
 *
 * @param curve - ψ by rising powers of φ, end of its fitted range [-]
 * @param excess - flow of the leak less that of the rotor by φ [m³/s]
 * @returns φ [-]; null where the leak lets through less than the rotor moves all along
 * @throws {NotEnoughDataError} where ψ has no zero and the leak stays under it
 *
 * Valid for leaks that let more through at more pressure. Source: docs/method/operating-point.md
 */
export function phiAtSpeed(curve: Curve, excess: (phi: number) => number): number | null {
  const end = endOf(curve, excess);
  for (let i = SCAN; i > 0; i--) {
    const [lo, hi] = [(end * (i - 1)) / SCAN, (end * i) / SCAN];
    if (excess(lo) > 0 && excess(hi) <= 0) return findRoot(excess, lo, hi).root;
  }
  return null;
}
