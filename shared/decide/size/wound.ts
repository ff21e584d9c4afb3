import { answerOrNull } from "../../numeric/errors.ts";
import { findRoot } from "../../numeric/root.ts";
import { airFrom } from "../../physics/air.ts";
import { type Turning, turningForThrust, turningsFor } from "../../physics/point/turning.ts";
import type { AnyPredictInput } from "../../physics/predictAny.ts";
import { type Pulled, pullBy, pulled, wantedMargin } from "../wanted.ts";
import { isOpen, rotorAt, sizedBuild, skirtOf } from "./build.ts";
import { type Duty, dutyOf } from "./duty.ts";
import type { SizeBuild, SizeQuestion } from "./input.ts";
import { pullOfNeed } from "./need.ts";
import { type Winding, windingFor } from "./winding.ts";

/** What does the duty at one diameter, or why nothing does. */
export type Wound =
  | {
      readonly state: "does";
      readonly build: AnyPredictInput;
      readonly motor: Extract<Winding, { state: "does" }>;
      readonly at: Pulled & { readonly point: NonNullable<Pulled["point"]> };
    }
  | {
      readonly state: "short";
      readonly turning: Turning;
      readonly power: Extract<Winding, { state: "short" }>;
    }
  | { readonly state: "runs-away" | "no-torque" | "settles-elsewhere"; readonly turning: Turning }
  /** the margin is not reached with a gap that gives */
  | { readonly state: "gives-way"; readonly turning: Turning };

/** The pull of a build put back is that of its duty within this [-]. */
const SAME_PULL = 1e-9;
/** Digits of a winding whose gap gives [-]. */
const TOLERANCE = 1e-13;
/** Steps of K_v in search of one that holds, and their ratio: up to about six times the first. */
const [STEPS, STEP] = [24, 1.08];

/**
 * How a rotor of one size turns when it does what is asked, the slowest first.
 *
 *     as {@link turningsFor}, an open propeller as {@link turningForThrust}
 *
 * @param asked - from {@link askedOf}, SI
 * @param diameter - D [m]
 * @returns ω [rad/s], M [N·m]
 * @throws {OutOfRangeError} {NotEnoughDataError} as the two
 *
 * Valid and source: as the two
 */
export function turningsAt(
  { build, duty, pull }: Pick<Asked, "build" | "duty" | "pull">,
  diameter: number,
): Turning[] {
  const air = airFrom(build.air);
  const rotor = rotorAt(build, diameter);
  if (isOpen(rotor)) return [turningForThrust(rotor, air, pull)];
  return duty ? turningsFor(rotor, air, duty) : [];
}

function woundFor(build: SizeBuild, diameter: number, pull: number, turning: Turning): Wound {
  const { frictionTorque, viscousTorque } = build.motor;
  const whole = turning.torque + frictionTorque + viscousTorque * turning.speed;
  if (!(turning.torque > 0 && whole > 0)) return { state: "no-torque", turning };
  const motor = windingFor(build, turning);
  if (motor.state === "short") return { state: "short", turning, power: motor };
  if (motor.state === "runs-away") return { state: "runs-away", turning };
  const back = sizedBuild(build, diameter, motor);
  const at = pulled(back);
  const { point } = at;
  if (!point || !(Math.abs(at.suction / pull - 1) < SAME_PULL))
    return { state: "settles-elsewhere", turning };
  return { state: "does", build: back, motor, at: { ...at, point } };
}

/** The winding with which a build whose gap gives has the margin at each mode's own limit; the first one from below. */
function giving(question: SizeQuestion, diameter: number, rigid: Wound): Wound {
  const { build, need } = question;
  if (rigid.state !== "does" || !("hold" in need)) return rigid;
  const { angle: attitude, margin, mode } = need.hold;
  const asked = (kv: number) => {
    const resistance = rigid.motor.resistance * (rigid.motor.kv / kv) ** 2;
    const back = sizedBuild(build, diameter, { kv, resistance });
    const at = pulled(back);
    return {
      back,
      resistance,
      at,
      excess: wantedMargin(back.vehicle, pullBy(back, at), { attitude, mode }) - margin,
    };
  };
  const excess = (kv: number) => answerOrNull(() => asked(kv).excess) ?? Number.NaN;
  const does = (kv: number): Wound => {
    const { back, resistance, at } = asked(kv);
    const { point } = at;
    if (!point) return { state: "gives-way", turning: { speed: 0, torque: 0 } };
    return { state: "does", build: back, motor: { state: "does", kv, resistance }, at: { ...at, point } };
  };
  const first = excess(rigid.motor.kv);
  const ratio = first > 0 ? 1 / STEP : STEP;
  let before = rigid.motor.kv;
  for (let i = 0; i < STEPS; i++) {
    const next = before * ratio;
    const now = excess(next);
    if (Number.isNaN(now)) break;
    if (now > 0 !== first > 0) {
      const [lo, hi] = [Math.min(before, next), Math.max(before, next)];
      return does(findRoot(excess, lo, hi, { tolerance: TOLERANCE }).root);
    }
    before = next;
  }
  const { speed } = rigid.at.point;
  return { state: "gives-way", turning: { speed, torque: rigid.at.point.shaftPower / speed } };
}

const gives = ({ build: { vehicle, rotor }, need }: SizeQuestion): boolean =>
  "hold" in need && !isOpen(rotor) && (vehicle.verticalStiffness ?? null) !== null;

/** A question with all of its answer that no diameter changes. */
export interface Asked extends SizeQuestion {
  /** with the gap as set [N] */
  readonly pull: number;
  /** null with an open propeller */
  readonly duty: Duty | null;
}

/**
 * What is wanted of the rotor, whatever its size.
 *
 *     F by {@link pullOfNeed}, Δp and Q by {@link dutyOf}
 *
 * @param question - build, need and limits, SI
 * @returns the question with its pull [N] and duty [Pa, m³/s, W]
 * @throws {OutOfRangeError} on a need that can't be met by any rotor
 *
 * Valid as its parts. Source: docs/method/size.md
 */
export function askedOf(question: SizeQuestion): Asked {
  const { build, need } = question;
  const pull = pullOfNeed(build.vehicle, need);
  const duty = isOpen(build.rotor) ? null : dutyOf(build, skirtOf(build), pull);
  return { ...question, pull, duty };
}

/**
 * The winding that does it at one diameter, proven by putting it back.
 *
 *     rigid: in closed form by {@link windingFor};  a gap that gives: margin(K_v) = wanted, R₂₀ = (k_t/K_m)²
 *
 * @param asked - from {@link askedOf}, SI
 * @param diameter - D [m]
 * @returns the build and its operating point, or what stops it
 * @throws {OutOfRangeError} {NotEnoughDataError} as {@link turningsFor}
 *
 * Valid where the operating point that a vehicle set down settles at is that of the duty; every φ is tried, the slowest first. Source: docs/method/size.md
 */
export function woundAt(asked: Asked, diameter: number): Wound {
  const { build, pull } = asked;
  let first: Wound | null = null;
  for (const turning of turningsAt(asked, diameter)) {
    const wound = woundFor(build, diameter, pull, turning);
    if (wound.state === "does") return gives(asked) ? giving(asked, diameter, wound) : wound;
    first ??= wound;
  }
  return first ?? { state: "settles-elsewhere", turning: { speed: Number.NaN, torque: Number.NaN } };
}
