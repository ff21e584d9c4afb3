import { openCircuitVoltage } from "../../physics/pack.ts";
import type { PredictInput } from "../../physics/predict.ts";
import type { RundownInput } from "../../physics/rundown.ts";
import type { SkirtInput } from "../../physics/skirt.ts";
import type { AdmittedSkirt, Problem } from "./problem.ts";
import type { Places } from "./result.ts";

/** @returns mass of a set, the vehicle without its chosen parts included [kg] */
export function massOf(problem: Problem, places: Places): number {
  const { motor, rotor, size, pack, skirt } = places;
  const parts = [
    problem.motors[motor],
    problem.rotors[rotor].sizes[size],
    problem.packs[pack],
    problem.skirts[skirt],
  ];
  return parts.reduce((sum, { mass }) => sum + mass, problem.fixed.vehicle.mass);
}

/** @returns an admitted skirt at one stand-off [m] as {@link skirtLeak} takes it, SI */
export function skirtAt(admitted: AdmittedSkirt, gap: number): SkirtInput {
  const {
    id,
    mass,
    height,
    price,
    stacked,
    share,
    wheelFriction,
    skirtFriction,
    pullFactor,
    gaps,
    joints,
    ...skirt
  } = admitted;
  return { ...skirt, gap };
}

function commonOf(problem: Problem, places: Places): Omit<PredictInput, "pack"> {
  const { air, vehicle, supply } = problem.fixed;
  const rotor = problem.rotors[places.rotor];
  const motor = problem.motors[places.motor];
  const admitted = problem.skirts[places.skirt];
  const { share, wheelFriction, skirtFriction, pullFactor = 1 } = admitted;
  return {
    air,
    rotor: {
      diameter: rotor.sizes[places.size].diameter,
      psi: rotor.psi,
      lambda: rotor.lambda,
      phiMin: rotor.phiMin,
      phiMax: rotor.phiMax,
      sizeCorrection: rotor.sizeCorrection && { ...rotor.sizeCorrection, applied: 1 },
    },
    motor: {
      kv: motor.kv,
      resistance: motor.resistance,
      frictionTorque: motor.frictionTorque,
      viscousTorque: motor.viscousTorque,
      thermalResistance: motor.thermalResistance,
    },
    supply: { ...supply, duty: problem.duties[places.duty] },
    skirt: skirtAt(admitted, admitted.gaps[places.gap]),
    vehicle: {
      ...vehicle,
      mass: massOf(problem, places),
      skirtShare: share,
      wheelFriction,
      skirtFriction,
      pullFactor,
    },
  };
}

/**
 * A set as a build: what {@link predict} takes.
 *
 *     its own mass, its skirt's share, its cell's V_oc at the charge
 *
 * @param problem - the question, SI
 * @param places - of the set [-]
 * @returns the build, SI
 * @throws {OutOfRangeError} on a charge outside the cell's curve
 *
 * Valid for any set. Source: definition
 */
export function inputOf(problem: Problem, places: Places): PredictInput {
  const { series, parallel, wireResistance, cell } = problem.packs[places.pack];
  const voltage = openCircuitVoltage(cell.curve, problem.fixed.charge);
  return {
    ...commonOf(problem, places),
    pack: { series, parallel, wireResistance, cellResistance: cell.resistance, openCircuitVoltage: voltage },
  };
}

/** @returns the set as {@link runDown} takes it, its winding settled at every moment, SI */
export function runOf(problem: Problem, places: Places): RundownInput {
  const { series, parallel, wireResistance, cell } = problem.packs[places.pack];
  return {
    ...commonOf(problem, places),
    pack: { series, parallel, wireResistance, cell },
    startCharge: problem.fixed.charge,
  };
}
