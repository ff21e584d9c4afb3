import { type Air, airFrom, airNotes, type Weather } from "./air.ts";
import { compressibilityNotes } from "./fanlaws/notes.ts";
import { type Hold, holdOf } from "./hold/holdAt.ts";
import { compileHold } from "./hold/law.ts";
import { type Vehicle, vehicleNotes } from "./hold/vehicle.ts";
import { type Worst, worstOf } from "./hold/worst.ts";
import { RPM } from "./motor.ts";
import type { Note } from "./note.ts";
import { arrivalPoint, type Crossing, operatingPoints } from "./operatingPoint.ts";
import { packCurrent, packVoltage } from "./pack.ts";
import {
  assembleMachine,
  type Machine,
  type MotorInput,
  type PackInput,
  type RotorInput,
  type SupplyInput,
} from "./point/machine.ts";
import { pointNotes } from "./point/notes.ts";
import type { LeakAir } from "./restriction/law.ts";
import { type Leak, leakNotes, lipShare } from "./restriction/leak.ts";
import { type SkirtInput, skirtLeak } from "./skirt.ts";
import { suctionForce } from "./suction.ts";

export interface VehicleInput extends Vehicle {
  /** [m²]; null: no jet counted */
  readonly jetArea: number | null;
  /** [°] */
  readonly jetAngle: number;
}

export interface PredictInput {
  readonly air: Weather;
  readonly rotor: RotorInput;
  readonly motor: MotorInput;
  readonly pack: PackInput;
  readonly supply: SupplyInput;
  readonly skirt: SkirtInput;
  readonly vehicle: VehicleInput;
}

export interface Point {
  readonly speed: number;
  readonly rpm: number;
  readonly flow: number;
  readonly pressure: number;
  readonly phi: number;
  readonly psi: number;
  readonly lambda: number;
  readonly shaftPower: number;
  readonly motorCurrent: number;
  readonly packCurrent: number;
  readonly packVoltage: number;
  readonly windingTemperature: number;
  readonly extrapolated: boolean;
}

export type Attitude = Omit<Hold, "required">;

export interface Prediction {
  readonly air: { readonly density: number; readonly viscosity: number; readonly soundSpeed: number };
  readonly point: Point | null;
  readonly points: readonly (Point & { readonly stable: boolean })[];
  readonly suction: number;
  readonly attitudes: readonly Attitude[];
  readonly worst: Worst;
  readonly warnings: readonly Note[];
}

/** Floor, wall and ceiling: the attitudes that are always answered for [°]. */
export const STANDARD_ANGLES = [0, 90, 180] as const;

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
 * @param input - everything in SI units, as in {@link predict}
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
 * Suction force at one pressure and flow of a build.
 *
 *     F_s = Δp·(A_inside + σ_l·P·ℓ) + F_jet,  σ_l = 1 − ½Δp_friction/Δp
 *
 * @param input - skirt [m, m²] and jet [m², °]
 * @param state - the skirt's leak and the air
 * @param pressure - Δp of the cavity [Pa]
 * @param flow - Q through the rotor [m³/s]
 * @returns F_s, jet included [N]
 * @throws {OutOfRangeError} on a negative pressure or flow
 *
 * Valid for a cavity at one pressure. Source: docs/method/holding.md
 */
export function suctionAt(
  input: Pick<PredictInput, "skirt"> & { readonly vehicle: Pick<VehicleInput, "jetArea" | "jetAngle"> },
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
    landShare: lipShare(leak, air, pressure),
    flow,
    density: air.density,
    jetArea: vehicle.jetArea,
    jetAngleDegrees: vehicle.jetAngle,
  });
}

function pointOf(machine: Machine, crossing: Crossing): Point {
  const { speed, flow, pressure, phi, psi, lambda, current, windingTemperature } = crossing;
  const { rotor, air, area, radius, supply } = machine;
  const circuit = {
    ...supply,
    openCircuitVoltage: machine.openCircuitVoltage,
    packResistance: machine.packResistance,
  };
  return {
    speed,
    rpm: speed / RPM,
    flow,
    pressure,
    phi,
    psi,
    lambda,
    shaftPower: 0.5 * air.density * area * (speed * radius) ** 3 * lambda,
    motorCurrent: current,
    packCurrent: packCurrent(circuit, current),
    packVoltage: packVoltage(circuit, current),
    windingTemperature,
    extrapolated: phi < rotor.phiMin || phi > rotor.phiMax,
  };
}

function withoutRequired({ required: _required, ...attitude }: Hold): Attitude {
  return attitude;
}

/**
 * What a build does at one state: operating point, suction force, and what it holds at every attitude.
 *
 *     METHOD 1–7: air → leak and rotor → crossing → F_s → margins
 *
 * @param input - weather [K, Pa, -], rotor, motor, pack, supply, skirt, vehicle, all SI (kv in rpm/V)
 * @param angles - attitudes to answer for, floor, wall and ceiling unless given [°]
 * @returns air, the point a vehicle set down arrives at (null: the motor does not turn), every crossing, suction [N], margins, worst angles [°], warnings
 * @throws {OutOfRangeError} with the path of a number that can't be
 * @throws {NotEnoughDataError} where the rotor's curve does not reach down to the leak
 *
 * Valid for steady state. Source: docs/method/operating-point.md, holding.md
 */
export function predict(input: PredictInput, angles: readonly number[] = STANDARD_ANGLES): Prediction {
  const assembly = assemble(input);
  const { machine, leak, air } = assembly;
  const crossings = operatingPoints(machine, leak);
  const arrival = arrivalPoint(crossings);
  const suction = arrival ? suctionAt(input, assembly, arrival.pressure, arrival.flow) : 0;
  const law = compileHold(input.vehicle);
  const pulling = Math.max(0, suction);
  const ofCrossing = (crossing: Crossing) => suctionAt(input, assembly, crossing.pressure, crossing.flow);
  return {
    air: { density: air.density, viscosity: air.viscosity, soundSpeed: air.soundSpeed },
    point: arrival && pointOf(machine, arrival),
    points: crossings.map((crossing) => ({ ...pointOf(machine, crossing), stable: crossing.stable })),
    suction,
    attitudes: angles.map((angle) => withoutRequired(holdOf(law, pulling, angle))),
    worst: worstOf(law, pulling),
    warnings: [
      ...airNotes(input.air),
      ...machine.sizeLaw.notes,
      ...pointNotes(machine, crossings, arrival, suction, ofCrossing),
      ...(arrival ? leakNotes(leak, air, arrival.pressure) : []),
      ...(arrival
        ? compressibilityNotes(arrival.pressure, arrival.speed * machine.radius, air.soundSpeed)
        : []),
      ...vehicleNotes(input.vehicle),
    ],
  };
}
