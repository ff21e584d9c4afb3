import { airFrom } from "../../physics/air.ts";
import { bladeBending } from "../../physics/limits/blade.ts";
import {
  burstSpeed,
  type Disc,
  LEAST_SPEED_FACTOR,
  type RimLoad,
  rotorStress,
  speedFactor,
} from "../../physics/limits/disc.ts";
import type { RundownInput } from "../../physics/rundown.ts";
import type { LimitsInput, RotorBody } from "./input.ts";
import { judge, type Limit } from "./limit.ts";

/** What a rotor's figures are asked of: its size, the air, its body where that is known. */
export interface Turning {
  readonly build: Pick<RundownInput, "rotor" | "air">;
  readonly rotor: RotorBody | null;
}

/** A turning rotor against its strength. */
export interface RotorFigures {
  /** ω [rad/s] */
  readonly speed: number;
  /** [m/s] */
  readonly tipSpeed: number;
  /** tip speed over the speed of sound [-] */
  readonly mach: number;
  /** the greater of σ of disc and blades and σ of the bending [Pa]; null where the material isn't known */
  readonly stress: number | null;
  /** σ of bending at a blade's root [Pa]; null where it is left out */
  readonly bending: number | null;
  /** across printed layers [Pa] */
  readonly strength: number | null;
  /** √(strength/σ) [-]; infinite at rest */
  readonly factor: number | null;
  /** at which it reaches its strength [rad/s] */
  readonly burstSpeed: number | null;
  /** at which it should not be run: burst speed over the safety factor [rad/s] */
  readonly safeSpeed: number | null;
}

const NO_MATERIAL = "The rotor's material and bore: choose a material on the rotor's page.";
const PROPELLER =
  "The propeller's greatest speed, from its maker: the stress of open blades is not that of a disc.";

/** @returns the rotor as a disc at a diameter [m, kg/m³] */
export function discOf({ density, poisson, boreDiameter }: RotorBody, diameter: number): Disc {
  return { outerRadius: diameter / 2, boreRadius: boreDiameter / 2, density, poisson };
}

/** @returns σ of bending at a blade's root [Pa]; null where its shape isn't known */
export function bendingOf({ standing, density }: RotorBody, speed: number): number | null {
  return standing ? bladeBending({ ...standing, density }, speed) : null;
}

/** @returns its blades as a load on the rim, null without [kg, m] */
export function rimOf({ blades }: RotorBody): RimLoad | null {
  return blades && { bladeMass: blades.mass, bladeRadius: blades.radius, rimThickness: blades.rimThickness };
}

/**
 * The rotor at a speed, against its strength.
 *
 *     σ = max(σ_disc + σ_rim, σ_bending),  factor = √(strength/σ),  ω_safe = ω_burst/2
 *
 * @param input - rotor [kg/m³, Pa, m, kg], diameter [m], air
 * @param speed - ω [rad/s], ≥ 0
 * @returns stresses [Pa], factor on speed [-], speeds [rad/s], tip speed [m/s]; null what needs the material
 * @throws {OutOfRangeError} on a disc that can't be
 *
 * Valid as {@link rotorStress}; the safety factor of 2 on speed, 4 in stress, is common practice, no source. Source: docs/method/limits.md
 */
export function rotorFigures(input: Turning, speed: number): RotorFigures {
  const { build, rotor } = input;
  const tipSpeed = (speed * build.rotor.diameter) / 2;
  const running = { speed, tipSpeed, mach: tipSpeed / airFrom(build.air).soundSpeed };
  if (!rotor || isOpen(build))
    return {
      ...running,
      bending: null,
      stress: null,
      strength: null,
      factor: null,
      burstSpeed: null,
      safeSpeed: null,
    };
  const [disc, rim] = [discOf(rotor, build.rotor.diameter), rimOf(rotor)];
  const bending = bendingOf(rotor, speed);
  const stress = Math.max(rotorStress(disc, rim, speed), bending ?? 0);
  const burst = burstSpeedOf(rotor, build.rotor.diameter);
  return {
    ...running,
    bending,
    stress,
    strength: rotor.strength,
    factor: speedFactor(rotor.strength, stress),
    burstSpeed: burst,
    safeSpeed: burst / LEAST_SPEED_FACTOR,
  };
}

/**
 * Speed at which a rotor reaches its strength.
 *
 *     σ(ω) = strength, of the disc or at a blade's root, whichever comes first
 *
 * @param rotor - as a turning disc with its blades [kg/m³, Pa, m]
 * @param diameter - D [m]
 * @returns ω [rad/s]
 * @throws {OutOfRangeError} on a disc that can't be
 *
 * Valid and source: as {@link rotorFigures}
 */
export function burstSpeedOf(rotor: RotorBody, diameter: number): number {
  const ofDisc = burstSpeed(discOf(rotor, diameter), rimOf(rotor), rotor.strength);
  const bending = bendingOf(rotor, 1);
  return bending ? Math.min(ofDisc, Math.sqrt(rotor.strength / bending)) : ofDisc;
}

function isOpen(build: Pick<RundownInput, "rotor">): boolean {
  return "thrust" in build.rotor;
}

/**
 * The rotor's speed against the one at which it should not be run.
 *
 *     ω/(ω_burst/2)
 *
 * @param input - of the build; whether its rotor rests on an estimate
 * @param figures - from {@link rotorFigures} [rad/s]
 * @returns the limit: ω [rad/s], ω_safe [rad/s], their ratio [-]
 *
 * Valid and source: as {@link rotorFigures}
 */
export function rotorLimit(input: LimitsInput, { speed, safeSpeed }: RotorFigures): Limit {
  return judge({
    key: "rotor-speed",
    value: speed,
    limit: safeSpeed,
    missing: isOpen(input.build) ? PROPELLER : NO_MATERIAL,
    caution: "rotor",
    estimated: input.estimated.includes("rotor-speed"),
  });
}
