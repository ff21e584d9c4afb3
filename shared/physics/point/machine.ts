import { evaluatePolynomial, firstPositiveZero } from "../../numeric/polynomial.ts";
import type { CellState } from "../cells/cell.ts";
import { torqueConstant } from "../motor.ts";
import { type Pack, packResistance } from "../pack.ts";
import type { LeakAir } from "../restriction/law.ts";
import { warmingOf } from "../winding.ts";
import { type SizeLaw, sizeLaw, type TestedAt } from "./sizeLaw.ts";

/** What the rotor's curve is: coefficients by rising power of φ, and the range they were fitted on. */
export interface RotorInput {
  /** D [m] */
  readonly diameter: number;
  readonly psi: readonly number[];
  readonly lambda: readonly number[];
  /** of psi, as a fit leaves it; absent: ψ is taken as exact */
  readonly psiCovariance?: readonly (readonly number[])[];
  readonly phiMin: number;
  readonly phiMax: number;
  readonly sizeCorrection: TestedAt | null;
}

export interface MotorInput {
  /** [rpm/V] */
  readonly kv: number;
  /** at 20 °C [Ω] */
  readonly resistance: number;
  readonly frictionTorque: number;
  readonly viscousTorque: number;
  /** [K/W]; null: winding taken cold */
  readonly thermalResistance: number | null;
  /** of the winding at this moment, in the place of the one it settles at [K] */
  readonly windingTemperature?: number;
}

export interface PackInput extends Pack {
  /** of one cell [V] */
  readonly openCircuitVoltage: number;
}

export interface SupplyInput {
  readonly duty: number;
  readonly driverResistance: number;
  readonly auxCurrent: number;
}

/** Motor, pack and driver as one circuit. */
export interface Circuit {
  readonly motor: MotorInput;
  readonly supply: SupplyInput;
  /** k_t [N·m/A] */
  readonly torqueConstant: number;
  /** V_oc of the pack [V] */
  readonly openCircuitVoltage: number;
  /** R_b [Ω] */
  readonly packResistance: number;
  /** δ·(V_oc − R_b·I_aux) [V] */
  readonly drivingVoltage: number;
  /** R_d + δ²R_b: all of the circuit but the winding [Ω] */
  readonly circuitResistance: number;
}

/** Rotor, motor and supply, made ready to be asked for their speed at any φ. */
export interface Machine extends Circuit {
  readonly rotor: RotorInput;
  readonly air: LeakAir;
  /** of the air, where the winding's heat goes [K] */
  readonly ambient: number;
  /** D/2 [m] */
  readonly radius: number;
  /** πD²/4 [m²] */
  readonly area: number;
  /** end of the curve: first positive zero of ψ; infinite when ψ has none [-] */
  readonly phiEnd: number;
  readonly sizeLaw: SizeLaw;
}

/**
 * Puts motor, pack and driver together.
 *
 *     V_drive = δ(V_oc − R_b·I_aux),  R = R_d + δ²R_b  (+ R_m)
 *
 * @param input - motor [rpm/V, Ω, N·m, N·m·s/rad, K/W], pack [V, Ω], supply [-, Ω, A]
 * @returns the circuit, in SI units [-]
 * @throws {OutOfRangeError} on a number that no circuit can have
 *
 * Valid for one equivalent DC machine on one pack. Source: docs/method/motor.md
 */
export function assembleCircuit(input: {
  readonly motor: MotorInput;
  readonly pack: PackInput;
  readonly supply: SupplyInput;
}): Circuit {
  const { motor, pack, supply } = input;
  const resistance = packResistance(pack);
  const openCircuitVoltage = pack.series * pack.openCircuitVoltage;
  return {
    motor,
    supply,
    torqueConstant: torqueConstant(motor.kv),
    openCircuitVoltage,
    packResistance: resistance,
    drivingVoltage: drivingVoltage(supply, openCircuitVoltage, resistance),
    circuitResistance: circuitResistance(supply, resistance),
  };
}

/**
 * Puts rotor, motor, pack and supply together.
 *
 *     V_drive = δ(V_oc − R_b·I_aux),  R = R_d + δ²R_b  (+ R_m)
 *
 * @param input - rotor [m, -], motor [rpm/V, Ω, N·m, N·m·s/rad, K/W], pack [V, Ω], supply [-, Ω, A], air [kg/m³, Pa·s], ambient [K]
 * @returns the machine, in SI units [-]
 * @throws {OutOfRangeError} on a number that no machine can have
 *
 * Valid for one equivalent DC machine on one pack. Source: docs/method/motor.md
 */
export function assembleMachine(input: {
  readonly rotor: RotorInput;
  readonly motor: MotorInput;
  readonly pack: PackInput;
  readonly supply: SupplyInput;
  readonly air: LeakAir;
  readonly ambient: number;
}): Machine {
  const { rotor, air, ambient } = input;
  const phiEnd = firstPositiveZero(rotor.psi) ?? Number.POSITIVE_INFINITY;
  return {
    ...assembleCircuit(input),
    rotor,
    air,
    ambient,
    radius: rotor.diameter / 2,
    area: (Math.PI / 4) * rotor.diameter ** 2,
    phiEnd,
    sizeLaw: sizeLaw(rotor, phiEnd, air),
  };
}

function circuitResistance({ driverResistance, duty }: SupplyInput, packResistance: number): number {
  return driverResistance + duty ** 2 * packResistance;
}

function drivingVoltage(supply: SupplyInput, openCircuitVoltage: number, packResistance: number): number {
  return supply.duty * (openCircuitVoltage - packResistance * supply.auxCurrent);
}

/** A pack at a moment. */
export interface PackState {
  /** V_oc of the pack [V] */
  readonly openCircuitVoltage: number;
  /** R_b [Ω] */
  readonly packResistance: number;
}

/** @returns a pack whose cells stand at a state */
export function packAt(pack: Omit<Pack, "cellResistance">, { voltage, resistance }: CellState): PackState {
  return {
    openCircuitVoltage: pack.series * voltage,
    packResistance: packResistance({ ...pack, cellResistance: resistance }),
  };
}

/**
 * The same circuit at another state of its pack, and of its winding where that is given.
 *
 *     V_drive = δ(V_oc − R_b·I_aux),  R = R_d + δ²R_b  (+ R_m)
 *
 * @param circuit - from {@link assembleCircuit} or {@link assembleMachine}, whose other parts it keeps [-]
 * @param pack - V_oc [V] and R_b [Ω] of the pack
 * @param windingTemperature - of the winding at this moment [K]; as it was unless given
 * @returns the circuit at that state, in SI units [-]
 *
 * Valid and source: as {@link assembleCircuit}
 */
export function circuitAt<C extends Circuit>(
  circuit: C,
  pack: PackState,
  windingTemperature = circuit.motor.windingTemperature,
): C {
  const { supply } = circuit;
  const { openCircuitVoltage, packResistance } = pack;
  return {
    ...circuit,
    motor: { ...circuit.motor, windingTemperature },
    openCircuitVoltage,
    packResistance,
    drivingVoltage: drivingVoltage(supply, openCircuitVoltage, packResistance),
    circuitResistance: circuitResistance(supply, packResistance),
  };
}

/** @returns whether the motor turns at all: its torque at standstill, its winding not warmed yet, against its own friction */
export function overcomesFriction(machine: Circuit & { readonly ambient: number }): boolean {
  const { motor, ambient, torqueConstant: k, drivingVoltage, circuitResistance } = machine;
  const { winding } = warmingOf(motor, ambient);
  return (k * drivingVoltage) / (winding + circuitResistance) > motor.frictionTorque;
}

/** @returns ψ at φ, size correction included, at tip speed u [-] */
export function psiAt(machine: Machine, phi: number, tipSpeed: number): number {
  return evaluatePolynomial(machine.rotor.psi, phi) * machine.sizeLaw.factor(tipSpeed);
}
