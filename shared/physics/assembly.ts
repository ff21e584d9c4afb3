import { type Air, airFrom, type Weather } from "./air.ts";
import type { Vehicle } from "./hold/vehicle.ts";
import {
  assembleMachine,
  type Machine,
  type MotorInput,
  type PackInput,
  type RotorInput,
  type SupplyInput,
} from "./point/machine.ts";
import type { LeakAir } from "./restriction/law.ts";
import { type Leak, lipShare } from "./restriction/leak.ts";
import { type SkirtInput, skirtLeak } from "./skirt.ts";
import { suctionForce } from "./suction.ts";

export interface VehicleInput extends Vehicle {
  /** [m²]; null: no jet counted */
  readonly jetArea: number | null;
  /** [°] */
  readonly jetAngle: number;
  /** κ on the cavity's part of the pull: what the model leaves out; 1 unless given [-] */
  readonly pullFactor?: number;
  /** k of tyres and springs together, by which the gap gives under load; null or absent: rigid [N/m] */
  readonly verticalStiffness?: number | null;
  /** N₀ on the vehicle when the gap was set; null or absent: m·g [N] */
  readonly gapLoad?: number | null;
}

/** What of a vehicle belongs to its pull. */
export type PullingVehicle = Pick<VehicleInput, "jetArea" | "jetAngle" | "pullFactor">;

export interface PredictInput {
  readonly air: Weather;
  readonly rotor: RotorInput;
  readonly motor: MotorInput;
  readonly pack: PackInput;
  readonly supply: SupplyInput;
  readonly skirt: SkirtInput;
  readonly vehicle: VehicleInput;
}

/** A build at one state, its rotor, motor and leak made ready. */
export interface Assembly {
  readonly machine: Machine;
  readonly leak: Leak;
  readonly air: Air;
}

/**
 * Makes machine and leak of a build ready for one state of the air.
 *
 *     h = h_set + h_rough,  K by the edge or as given
 *
 * @param input - everything in SI units, as a prediction takes it
 * @returns machine, leak and air [SI]
 * @throws {OutOfRangeError} with the path of a number that can't be
 *
 * Valid as its parts. Source: docs/method/operating-point.md
 */
export function assemble(input: PredictInput): Assembly {
  const air = airFrom(input.air);
  const { rotor, motor, pack, supply } = input;
  return {
    machine: assembleMachine({ rotor, motor, pack, supply, air, ambient: input.air.temperature }),
    leak: skirtLeak(input.skirt, air),
    air,
  };
}

/**
 * Pull at one pressure and flow of a build.
 *
 *     F_s = κ·Δp·(A_inside + σ_l·P·ℓ) + F_jet,  σ_l = 1 − ½Δp_friction/Δp
 *
 * @param input - skirt [m, m²], pull factor [-] and jet [m², °]
 * @param state - the skirt's leak and the air
 * @param pressure - Δp of the cavity [Pa]
 * @param flow - Q through the rotor [m³/s]
 * @returns F_s, jet included [N]
 * @throws {OutOfRangeError} on a negative pressure or flow
 *
 * Valid for a cavity at one pressure. Source: docs/method/holding.md
 */
export function suctionAt(
  input: Pick<PredictInput, "skirt"> & { readonly vehicle: PullingVehicle },
  { leak, air }: Pick<Assembly, "leak"> & { readonly air: LeakAir },
  pressure: number,
  flow: number,
): number {
  const { skirt, vehicle } = input;
  return suctionForce({
    area: skirt.area,
    perimeter: skirt.perimeter,
    land: skirt.land,
    pressure,
    pullFactor: vehicle.pullFactor ?? 1,
    landShare: lipShare(leak, air, pressure),
    flow,
    density: air.density,
    jetArea: vehicle.jetArea,
    jetAngleDegrees: vehicle.jetAngle,
  });
}
