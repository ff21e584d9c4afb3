import { requirePositive } from "../numeric/errors.ts";
import { findRoot } from "../numeric/root.ts";
import type { AnyPredictInput } from "../physics/predictAny.ts";
import { pullBy, pulled, type Wanted, wantedMargin } from "./wanted.ts";

/** A mass from nothing to anything, for the search [kg]. */
const [LIGHTEST, HEAVIEST] = [1e-9, 1e6];
/** Of the logarithm. */
const TOLERANCE = 1e-12;

/**
 * The mass at which a build just has a margin on an attitude, all else as it stands.
 *
 *     m(mass) = m_target;  for a rigid vehicle mass·m/m_target, as every condition goes with the weight
 *
 * @param build - ducted, or with a propeller, all SI [-]
 * @param wanted - attitudes [°], each parked or driving
 * @param targets - margins that are asked for [-]
 * @returns by attitude and target: the mass [kg]; 0 where no mass has that margin, null where any has
 * @throws {OutOfRangeError} with the path of a number that can't be, on a target that is not above 0
 * @throws {NotEnoughDataError} where the build as it stands has no answer
 *
 * Valid for a centre of gravity that stays where it is, and a margin that falls as the mass grows. Source: docs/method/mass.md, Allowed mass
 */
export function allowedMasses(
  build: AnyPredictInput,
  wanted: readonly Wanted[],
  targets: readonly number[],
): (number | null)[][] {
  const pull = pulled(build);
  const marginAt = (mass: number, of: Wanted) => {
    const variant = { ...build, vehicle: { ...build.vehicle, mass } } as AnyPredictInput;
    return wantedMargin(variant.vehicle, pullBy(variant, pull), of);
  };
  const massFor = (of: Wanted, target: number): number | null => {
    requirePositive("targetMargin", target);
    if (marginAt(HEAVIEST, of) >= target) return null;
    if (marginAt(LIGHTEST, of) < target) return 0;
    const excess = (x: number) => Math.log(Math.max(marginAt(Math.exp(x), of), Number.MIN_VALUE) / target);
    return Math.exp(findRoot(excess, Math.log(LIGHTEST), Math.log(HEAVIEST), { tolerance: TOLERANCE }).root);
  };
  return wanted.map((of) => targets.map((target) => massFor(of, target)));
}
