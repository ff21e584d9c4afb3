import { OutOfRangeError } from "../../numeric/errors.ts";
import { createPchip, type Pchip } from "../../numeric/pchip.ts";
import { airFrom } from "../../physics/air.ts";
import { STANDARD_GRAVITY } from "../../physics/constants.ts";
import type { PredictInput } from "../../physics/predict.ts";
import { leakFlow } from "../../physics/restriction/leak.ts";
import { skirtLeak } from "../../physics/skirt.ts";
import type { CalibrationLeak, CalibrationPull } from "./data.ts";
import { solvedSuctions } from "./suctions.ts";
import { suctionsOver } from "./suctionsOver.ts";

/** Any law of the gap [m]. */
export type GapLaw = (gap: number) => number;

/** Gaps between which a monotone cubic stands in for the operating point: it is then off by about a millionth, by 2e-4 at most next to a gap of 0. */
const INTERVALS = 64;

/** Pull of a rig at a pull factor of 1, and what of it the factor multiplies: all but the jet's. */
export interface SuctionLaw {
  readonly whole: GapLaw;
  readonly cavity: GapLaw;
}

function tabulated(input: PredictInput, widest: number): Pchip {
  const gaps = Array.from({ length: INTERVALS + 1 }, (_, i) => (widest * i) / INTERVALS);
  return createPchip(gaps, suctionsOver(input, gaps));
}

function suctionLaw(input: PredictInput, widest: number): GapLaw {
  if (input.skirt.measuredLeak) {
    const [suction] = solvedSuctions(input, [widest]);
    return () => suction;
  }
  let curve = tabulated(input, widest);
  return (gap) => {
    while (gap > curve.clampedTo[1]) curve = tabulated(input, 2 * curve.clampedTo[1]);
    return curve.value(gap);
  };
}

const withFactor = (input: PredictInput, pullFactor: number): PredictInput => ({
  ...input,
  vehicle: { ...input.vehicle, pullFactor },
});

/** The jet's part is what the whole lacks of twice itself at twice the factor. */
function lawOf(input: PredictInput, widest: number): SuctionLaw {
  const whole = suctionLaw(withFactor(input, 1), widest);
  if (input.vehicle.jetArea === null) return { whole, cavity: whole };
  const twice = suctionLaw(withFactor(input, 2), widest);
  return { whole, cavity: (gap) => twice(gap) - whole(gap) };
}

/**
 * Force of each pull as a law of the gap, at a pull factor of 1; pulls of one and the same rig share theirs.
 *
 *     F_s(h): the operating point at gap h, or the same at any where the leak was measured
 *
 * @param pulls - each with its rig as a build, all SI [-]
 * @param widest - gap up to which the law is made at first [m], > 0; wider ones follow when asked for
 * @returns a law each: gap [m] → F_s and the cavity's part of it [N], 0 where the motor does not turn
 * @throws {OutOfRangeError} with the path of a number that can't be
 *
 * Valid and source: as {@link suctionsOver}
 */
export function suctionLaws(pulls: readonly CalibrationPull[], widest: number): SuctionLaw[] {
  const made = new Map<string, SuctionLaw>();
  return pulls.map(({ input }, i) => {
    const { air, rotor, motor, pack, supply, skirt, vehicle } = input;
    const { jetArea, jetAngle } = vehicle;
    const pulling = [{ ...skirt, gap: 0 }, jetArea, jetAngle];
    const key = JSON.stringify([air, rotor, motor, pack, supply, ...pulling]);
    const law = made.get(key) ?? ofPull(i, () => lawOf(input, widest));
    made.set(key, law);
    return law;
  });
}

/** How a pull's force follows from suction and friction: (fixed + perFriction·μ)·(F_s + weight). */
export interface Grip {
  readonly fixed: number;
  readonly perFriction: number;
  /** [N] */
  readonly weight: number;
}

/** A number that can't be is named by the pull it is in. */
function ofPull<T>(i: number, make: () => T): T {
  try {
    return make();
  } catch (error) {
    if (!(error instanceof OutOfRangeError)) throw error;
    throw new OutOfRangeError(`pulls.${i}.input.${error.quantity}`, error.value, error.allowed);
  }
}

/**
 * Share of suction and friction in the force that a pull is predicted to hold.
 *
 *     straight off and hung from the ceiling: F_s;  along: [μ_w(1 − σ_s) + μ_s·σ_s]·(F_s + m_rig·g)
 *
 * @param pull - direction, mass of the rig [kg], share and friction of the skirt [-]
 * @returns fixed part, part per μ_w [-], weight [N]
 *
 * Valid for a rig on a level floor. Source: Coulomb friction; docs/method/calibration.md, Equation
 */
export function gripOf(pull: CalibrationPull): Grip {
  if (pull.direction !== "along") return { fixed: 1, perFriction: 0, weight: 0 };
  const { skirtShare, skirtFriction } = pull.input.vehicle;
  return {
    fixed: skirtShare * skirtFriction,
    perFriction: 1 - skirtShare,
    weight: (pull.rigMass ?? 0) * STANDARD_GRAVITY,
  };
}

/** @returns predicted force of a pull [N] at a suction [N] and friction [-] */
export function forceOf(grip: Grip, suction: number, friction: number): number {
  return (grip.fixed + grip.perFriction * friction) * (suction + grip.weight);
}

/** @returns predicted flow of a leak reading as a law of the gap, gap [m] → Q [m³/s] */
export function flowLaw({ input, pressure }: CalibrationLeak): GapLaw {
  const air = airFrom(input.air);
  const skirt = { ...input.skirt, measuredLeak: null };
  return (gap) => leakFlow(skirtLeak({ ...skirt, gap }, air), air, pressure);
}
