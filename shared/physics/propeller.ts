import { findRoot } from "../numeric/root.ts";
import { type Air, airFrom, airNotes, type Weather } from "./air.ts";
import { WINDING_REFERENCE_TEMPERATURE } from "./constants.ts";
import { compressibilityNotes } from "./fanlaws/notes.ts";
import { propellerReynolds, propellerUnits } from "./fanlaws/propeller.ts";
import { holdOf } from "./hold/holdAt.ts";
import { compileHold } from "./hold/law.ts";
import { type Vehicle, vehicleNotes } from "./hold/vehicle.ts";
import { worstOf } from "./hold/worst.ts";
import { noLoadSpeed, RPM, shaftTorque } from "./motor.ts";
import type { Note } from "./note.ts";
import { packCurrent, packVoltage } from "./pack.ts";
import {
  assembleCircuit,
  type Circuit,
  type MotorInput,
  overcomesFriction,
  type PackInput,
  type SupplyInput,
} from "./point/machine.ts";
import { type Attitude, type Prediction, STANDARD_ANGLES } from "./predict.ts";
import { windingResistance } from "./winding.ts";

/** An open propeller that presses the vehicle on: coefficients at a reference Reynolds number and per ln Re. */
export interface PropellerInput {
  readonly kind: "propeller";
  /** [m] */
  readonly diameter: number;
  /** C_T at the reference, and per ln(Re/Re_ref) */
  readonly thrust: readonly [number, number];
  /** C_P likewise */
  readonly power: readonly [number, number];
  readonly referenceReynolds: number;
  /** at 75 % of the radius [m] */
  readonly chord: number;
}

export interface PropellerPredictInput {
  readonly air: Weather;
  readonly rotor: PropellerInput;
  readonly motor: MotorInput;
  readonly pack: PackInput;
  readonly supply: SupplyInput;
  readonly vehicle: Vehicle;
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

interface Winding {
  readonly current: number;
  readonly temperature: number;
}

/** Times the winding's temperature rise is doubled in search of its steady value. */
const FIRST_RISE = 50;
/** Least speed, relative to the unloaded one, at which a balance is looked for. */
const SLOWEST = 1e-6;

function windingAt(circuit: Circuit, ambient: number, speed: number): Winding {
  const { motor, torqueConstant: k, drivingVoltage, circuitResistance } = circuit;
  const current = (temperature: number) =>
    (drivingVoltage - k * speed) / (windingResistance(motor.resistance, temperature) + circuitResistance);
  const { thermalResistance, windingTemperature: now } = motor;
  if (now !== undefined) return { current: current(now), temperature: now };
  if (thermalResistance === null)
    return { current: current(WINDING_REFERENCE_TEMPERATURE), temperature: WINDING_REFERENCE_TEMPERATURE };
  const excess = (temperature: number) =>
    ambient +
    thermalResistance * current(temperature) ** 2 * windingResistance(motor.resistance, temperature) -
    temperature;
  let rise = FIRST_RISE;
  while (excess(ambient + rise) > 0) rise *= 2;
  const temperature = findRoot(excess, ambient, ambient + rise).root;
  return { current: current(temperature), temperature };
}

function thrustAndPower(rotor: PropellerInput, air: Air, speed: number): { thrust: number; power: number } {
  const state = { diameter: rotor.diameter, speed, density: air.density };
  const unit = propellerUnits(state);
  const drift = Math.log(propellerReynolds(state, rotor.chord, air.viscosity) / rotor.referenceReynolds);
  return {
    thrust: unit.thrust * (rotor.thrust[0] + rotor.thrust[1] * drift),
    power: unit.power * (rotor.power[0] + rotor.power[1] * drift),
  };
}

function pointOf(input: PropellerPredictInput, air: Air): PropellerPoint | null {
  const circuit = assembleCircuit(input);
  if (!overcomesFriction(circuit)) return null;
  const ambient = input.air.temperature;
  const net = (speed: number) => {
    const { current } = windingAt(circuit, ambient, speed);
    return shaftTorque(input.motor, current, speed) - thrustAndPower(input.rotor, air, speed).power / speed;
  };
  const unloaded = noLoadSpeed(
    { ...input.motor, resistance: input.motor.resistance + circuit.circuitResistance },
    circuit.drivingVoltage,
  );
  const speed = findRoot(net, SLOWEST * unloaded, unloaded).root;
  const { current, temperature } = windingAt(circuit, ambient, speed);
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
    windingTemperature: temperature,
    extrapolated: false,
  };
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
  if (input.motor.thermalResistance === null)
    notes.push({
      code: "winding-cold",
      message: "The winding is taken cold, at 20 °C: its thermal resistance isn't known.",
    });
  return notes;
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
    warnings: [...airNotes(input.air), ...notesOf(input, air, point), ...vehicleNotes(input.vehicle)],
  };
}
