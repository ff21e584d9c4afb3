import type { StandingBlade } from "../../physics/limits/blade.ts";
import type { RundownInput } from "../../physics/rundown.ts";
import type { LimitKey } from "./limit.ts";

/** What a motor's maker allows; null where it isn't known. */
export interface MotorLimits {
  /** [K] */
  readonly windingLimit: number | null;
  /** [V] */
  readonly ratedVoltage: number | null;
  /** [A] */
  readonly maxCurrent: number | null;
}

/** All blades of a rotor, hung onto its disc's rim. */
export interface Blades {
  /** of all together [kg] */
  readonly mass: number;
  /** of their centre of gravity [m] */
  readonly radius: number;
  /** of the disc at its rim [m] */
  readonly rimThickness: number;
  readonly count: number | null;
}

/** A blade that stands free on its disc. */
export type BladeShape = Omit<StandingBlade, "density">;

/** A rotor as a turning disc, at the build's diameter. */
export interface RotorBody {
  /** ρ_m [kg/m³] */
  readonly density: number;
  /** ν [-] */
  readonly poisson: number;
  /** across printed layers [Pa] */
  readonly strength: number;
  /** [m] */
  readonly boreDiameter: number;
  readonly blades: Blades | null;
  /** null or absent: not known, and its bending is left out */
  readonly standing?: BladeShape | null;
}

/** A build and everything that its makers allow. */
export interface LimitsInput {
  /** the build with its cell, at the charge that it starts from */
  readonly build: RundownInput;
  readonly motor: MotorLimits;
  /** null: its material isn't known */
  readonly rotor: RotorBody | null;
  /** of the rotor with its blades [kg]; null where it isn't known */
  readonly rotorMass: number | null;
  /** [m]; null where it isn't stated */
  readonly fallHeight: number | null;
  /** limits that rest on an estimate */
  readonly estimated: readonly LimitKey[];
}
