import { cosineOfDegrees, sineOfDegrees } from "../physics/hold/angle.ts";
import { CONDITIONS, type HoldLaw, neededSuction, weightIn } from "../physics/hold/law.ts";
import type { Pull } from "../physics/hold/pull.ts";

/** Attitudes over which the loads of a sample are looked for [°]: close enough that a mode's most lies near one. */
const SCAN = Array.from({ length: 13 }, (_, i) => 15 * i).map(
  (angle) => [sineOfDegrees(angle), cosineOfDegrees(angle)] as const,
);
/** Gaps through which a sample's pull is solved. */
const NODES = 4;

/** Narrowest and widest stand-off at which a mode lets go anywhere; null where none does. */
function gapRange(law: HoldLaw, { set, giving }: Pull): readonly [number, number] | null {
  if (!giving) return null;
  let [least, most] = [Number.POSITIVE_INFINITY, Number.NEGATIVE_INFINITY];
  const weight = weightIn(law);
  for (const [sine, cosine] of SCAN)
    for (const mode of ["liftOff", "slide", "tip", "climb"] as const) {
      const [from, to] = CONDITIONS[mode];
      const required = neededSuction(law, from, to, set, sine, cosine);
      if (!(required > 0 && required < Number.POSITIVE_INFINITY)) continue;
      const load = required + weight * cosine;
      if (load < least) least = load;
      if (load > most) most = load;
    }
  return most > Number.NEGATIVE_INFINITY ? [giving.gapUnder(most), giving.gapUnder(least)] : null;
}

/** Newton's divided differences of the values at the places, in place. */
function differences(xs: readonly number[], ys: number[]): void {
  for (let order = 1; order < xs.length; order++)
    for (let i = xs.length - 1; i >= order; i--) ys[i] = (ys[i] - ys[i - 1]) / (xs[i] - xs[i - order]);
}

/**
 * A giving pull solved at four gaps and no more, for samples by the thousand.
 *
 *     1/F_s a cubic in h through four stand-offs: Δp ≈ p₀/(1 + a·h² + b·h³) of a lip on a falling curve
 *
 * @param law - from {@link compileHold} [-, N, N]
 * @param pull - rigid or giving [N]
 * @returns the pull itself where it is rigid or stands still, else one that is within some tenths of a per cent of it [N]
 *
 * Valid for springs that let the gap change by less than some times itself. Source: docs/method/uncertainty.md
 */
export function sparsePull(law: HoldLaw, pull: Pull): Pull {
  const { set, giving } = pull;
  const range = gapRange(law, pull);
  if (!giving || !range || !(set > 0)) return pull;
  const [narrow, wide] = range;
  if (!(wide > narrow)) return pull;
  // from the widest down, each crossing next to the one before
  const xs = Array.from({ length: NODES }, (_, i) => wide - ((wide - narrow) * i) / (NODES - 1));
  const ys = xs.map((gap) => 1 / giving.at(gap));
  if (!ys.every(Number.isFinite)) return pull;
  differences(xs, ys);
  const at = (gap: number): number => {
    const h = Math.max(narrow, Math.min(gap, wide));
    let inverse = ys[NODES - 1];
    for (let i = NODES - 2; i >= 0; i--) inverse = inverse * (h - xs[i]) + ys[i];
    return 1 / inverse;
  };
  return { set, giving: { gapUnder: giving.gapUnder, at } };
}
