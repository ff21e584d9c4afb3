import { requireNonNegative } from "../numeric/errors.ts";
import { normalCdf } from "../numeric/normal.ts";
import { normalQuantile } from "../numeric/normalQuantile.ts";

/**
 * Value of a normal distribution that is cut at its limits, by the share below it.
 *
 *     x = m + u·Φ⁻¹[Φ(a) + p·(Φ(b) − Φ(a))],  a and b the limits less m, over u
 *
 * @param mean - of the uncut distribution, within the limits [any unit]
 * @param sd - of the uncut distribution, ≥ 0 [same unit]
 * @param limits - least and greatest value, infinite where there is none [same unit]
 * @returns function from a share p, above 0 and below 1 [-], to the value [same unit]
 * @throws {OutOfRangeError} on a negative standard deviation
 *
 * Valid for a mean within the limits; exactly the mean at sd 0. Source: inverse of the truncated normal distribution
 */
export function cutNormal(
  mean: number,
  sd: number,
  limits: readonly [number, number],
): (share: number) => number {
  requireNonNegative("uncertainty", sd);
  if (sd === 0) return () => mean;
  const [least, most] = limits;
  const below = normalCdf((least - mean) / sd);
  const width = normalCdf((most - mean) / sd) - below;
  if (below === 0 && width === 1)
    return (share) => Math.min(most, Math.max(least, mean + sd * normalQuantile(share)));
  return (share) => Math.min(most, Math.max(least, mean + sd * normalQuantile(below + share * width)));
}
