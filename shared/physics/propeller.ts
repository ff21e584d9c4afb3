import { OutOfRangeError, requirePositive } from "../numeric/errors.ts";
import { findRoot } from "../numeric/root.ts";
import { type Air, airFrom, airNotes, type Weather } from "./air.ts";
import { compressibilityNotes } from "./fanlaws/notes.ts";
import { holdOf } from "./hold/holdAt.ts";
import { compileHold } from "./hold/law.ts";
import { rideHeightOf } from "./hold/pull.ts";
import { vehicleNotes } from "./hold/vehicle.ts";
import { worstOf } from "./hold/worst.ts";
import { RPM, shaftTorque } from "./motor.ts";
import type { Note } from "./note.ts";
import { packCurrent, packVoltage } from "./pack.ts";
import {
  assembleCircuit,
  type Circuit,
  type MotorInput,
  type PackInput,
  type SupplyInput,
} from "./point/machine.ts";
import { type Balance, standing, withWinding } from "./point/speed.ts";
import { type Attitude, type Prediction, STANDARD_ANGLES, type VehicleInput } from "./predict.ts";
import { bladeReynolds, isBeyondTested, type PropellerInput, thrustAndPower } from "./propellerLaw.ts";

export type { PropellerInput } from "./propellerLaw.ts";

export interface PropellerPredictInput {
  readonly air: Weather;
  readonly rotor: PropellerInput;
  readonly motor: MotorInput;
  readonly pack: PackInput;
  readonly supply: SupplyInput;
  /** its jet is not counted: the thrust is measured with the whole stream */
  readonly vehicle: VehicleInput;
}

/** The operating point of a propeller: what belongs to a cavity is null. */
export interface PropellerPoint {
  readonly speed: number;
  readonly rpm: number;
  readonly flow: null;
  readonly pressure: null;
  readonly phi: null;
  readonly psi: null;
  readonly lambda: null;
  /** T, towards the surface [N] */
  readonly thrust: number;
  readonly shaftPower: number;
  readonly motorCurrent: number;
  readonly packCurrent: number;
  readonly packVoltage: number;
  readonly windingTemperature: number;
  readonly extrapolated: boolean;
}

export type PropellerPrediction = Omit<Prediction, "point" | "points"> & {
  readonly point: PropellerPoint | null;
  readonly points: readonly (PropellerPoint & { readonly stable: boolean })[];
};

/** Least speed, relative to the unloaded one, at which a balance is looked for. */
const SLOWEST = 1e-6;

/** ω at which the torques balance with the winding at one resistance; 0 where its torque is less than the friction. */
function speedAt(input: PropellerPredictInput, air: Air, circuit: Circuit, winding: number): number {
  const { torqueConstant: k, drivingVoltage, circuitResistance } = circuit;
  const net = (speed: number) =>
    shaftTorque(input.motor, (drivingVoltage - k * speed) / (winding + circuitResistance), speed) -
    thrustAndPower(input.rotor, air, speed).power / speed;
  const unloaded = drivingVoltage / k;
  if (!(unloaded > 0 && net(SLOWEST * unloaded) > 0)) return 0;
  const { power } = thrustAndPower(input.rotor, air, unloaded);
  if (net(unloaded) > 0) throw new OutOfRangeError("rotor.power", power, "coefficients that take power");
  return findRoot(net, SLOWEST * unloaded, unloaded).root;
}

function balanceOf(input: PropellerPredictInput, air: Air, circuit: Circuit): Balance {
  const { torqueConstant: k, drivingVoltage, circuitResistance } = circuit;
  return withWinding(input.motor, input.air.temperature, (winding, windingTemperature) => {
    const speed = speedAt(input, air, circuit, winding);
    if (speed === 0) return standing(circuit, winding, windingTemperature);
    const current = (drivingVoltage - k * speed) / (winding + circuitResistance);
    return { speed, current, windingResistance: winding, windingTemperature };
  });
}

function pointOf(input: PropellerPredictInput, air: Air): PropellerPoint | null {
  const circuit = assembleCircuit(input);
  const { speed, current, windingTemperature } = balanceOf(input, air, circuit);
  if (!(speed > 0)) return null;
  const { thrust, power } = thrustAndPower(input.rotor, air, speed);
  const electrical = {
    ...circuit.supply,
    openCircuitVoltage: circuit.openCircuitVoltage,
    packResistance: circuit.packResistance,
  };
  return {
    speed,
    rpm: speed / RPM,
    flow: null,
    pressure: null,
    phi: null,
    psi: null,
    lambda: null,
    thrust,
    shaftPower: power,
    motorCurrent: current,
    packCurrent: packCurrent(electrical, current),
    packVoltage: packVoltage(electrical, current),
    windingTemperature,
    extrapolated: isBeyondTested(input.rotor, air, speed),
  };
}

function beyondNote({ testedReynolds }: PropellerInput, reynolds: number): Note {
  const tested = (testedReynolds ?? []).map((end) => Math.round(end)).join(" to ");
  const message = `The propeller turns at Re = ${Math.round(reynolds)}, beyond the tested range ${tested}: extrapolated.`;
  return { code: "extrapolated", message };
}

function notesOf(input: PropellerPredictInput, air: Air, point: PropellerPoint | null): Note[] {
  if (!point) {
    const message =
      "The motor can't overcome its own friction at this voltage: the propeller stands still and nothing is held.";
    return [{ code: "motor-stalled", message }];
  }
  const notes = compressibilityNotes(0, (point.speed * input.rotor.diameter) / 2, air.soundSpeed);
  if (point.thrust <= 0)
    notes.push({
      code: "no-thrust",
      message: "The propeller's thrust comes out at 0 or below: its coefficients do not reach this speed.",
    });
  if (point.extrapolated) notes.push(beyondNote(input.rotor, bladeReynolds(input.rotor, air, point.speed)));
  if (input.motor.thermalResistance === null)
    notes.push({
      code: "winding-cold",
      message: "The winding is taken cold, at 20 °C: its thermal resistance isn't known.",
    });
  return notes;
}

/** What is stated of a cavity that isn't there. */
function cavityNotes(vehicle: VehicleInput): Note[] {
  rideHeightOf(vehicle, 0);
  requirePositive("vehicle.pullFactor", vehicle.pullFactor ?? 1);
  const stated = [
    ...((vehicle.pullFactor ?? 1) === 1 ? [] : ["The pull factor"]),
    ...((vehicle.verticalStiffness ?? null) === null ? [] : ["The vertical stiffness"]),
  ];
  return stated.map((what) => ({
    code: "no-cavity",
    message: `${what} changes nothing: an open propeller has no cavity and no gap.`,
  }));
}

/**
 * What a vehicle pressed on by an open propeller does at one state.
 *
 *     T = C_T(Re)·ρn²D⁴,  M = C_P(Re)·ρn²D⁵/(2π) = k·I − M_c − M_v·ω;  then what it holds, T in the place of F_s
 *
 * @param input - weather [K, Pa, -], propeller [m, -], motor, pack, supply, vehicle, all SI (kv in rpm/V)
 * @param angles - attitudes to answer for, floor, wall and ceiling unless given [°]
 * @returns as {@link predict}, with thrust [N]; what belongs to a cavity is null
 * @throws {OutOfRangeError} with the path of a number that can't be
 *
 * Valid standing still, away from the surface: the thrust next to a surface differs and is not modelled. Source: docs/method/fits/propeller.md, docs/method/holding.md
 */
export function predictPropeller(
  input: PropellerPredictInput,
  angles: readonly number[] = STANDARD_ANGLES,
): PropellerPrediction {
  const air = airFrom(input.air);
  const point = pointOf(input, air);
  const press = Math.max(0, point?.thrust ?? 0);
  const law = compileHold(input.vehicle);
  const attitudes = angles.map((angle): Attitude => {
    const { required: _required, ...attitude } = holdOf(law, press, angle);
    return attitude;
  });
  return {
    air: { density: air.density, viscosity: air.viscosity, soundSpeed: air.soundSpeed },
    point,
    points: point ? [{ ...point, stable: true }] : [],
    suction: press,
    attitudes,
    worst: worstOf(law, press),
    warnings: [
      ...airNotes(input.air),
      ...notesOf(input, air, point),
      ...vehicleNotes(input.vehicle),
      ...cavityNotes(input.vehicle),
    ],
  };
}
