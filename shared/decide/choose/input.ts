import { cellAt } from "../../physics/cells/cell.ts";
import type { PredictInput } from "../../physics/predict.ts";
import type { AnyPredictInput } from "../../physics/predictAny.ts";
import type { PropellerPredictInput } from "../../physics/propeller.ts";
import type { PropellerInput } from "../../physics/propellerLaw.ts";
import type { RundownInput } from "../../physics/rundown.ts";
import type { SkirtInput } from "../../physics/skirt.ts";
import type { Family, Problem, TriedPropeller, TriedRotor, TriedSkirt, TriedStand } from "./problem.ts";
import type { Places } from "./result.ts";

/** @returns the family of a combination's rotor or propeller */
export function familyOf({ rotors, propellers = [] }: Problem, { open, rotor }: Places): Family {
  return open ? propellers[rotor] : rotors[rotor];
}

/** @returns what a combination's vehicle stands on */
export function standOf({ skirts, stands = [] }: Problem, { open, skirt }: Places): TriedSkirt | TriedStand {
  return open ? stands[skirt] : skirts[skirt];
}

/** @returns mass of a combination, the vehicle without its chosen parts included [kg] */
export function massOf(problem: Problem, places: Places): number {
  const { motor, size, pack } = places;
  const parts = [
    problem.motors[motor],
    familyOf(problem, places).sizes[size],
    problem.packs[pack],
    standOf(problem, places),
  ];
  return parts.reduce((sum, { mass }) => sum + mass, problem.fixed.vehicle.mass);
}

/** @returns a skirt to try at one stand-off [m] as {@link skirtLeak} takes it, SI */
export function skirtAt(tried: TriedSkirt, gap: number): SkirtInput {
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
  } = tried;
  return { ...skirt, gap };
}

/** @returns a propeller of a family at one diameter [m], SI */
export function propellerAt(
  { thrust, power, referenceReynolds, testedReynolds, chordRatio }: TriedPropeller,
  diameter: number,
): PropellerInput {
  const chord = chordRatio * diameter;
  return { kind: "propeller", diameter, thrust, power, referenceReynolds, chord, testedReynolds };
}

/** What combinations of either kind take alike. */
function commonOf(problem: Problem, places: Places) {
  const { air, vehicle, supply } = problem.fixed;
  const motor = problem.motors[places.motor];
  const { share, wheelFriction, skirtFriction } = standOf(problem, places);
  return {
    air,
    motor: {
      kv: motor.kv,
      resistance: motor.resistance,
      frictionTorque: motor.frictionTorque,
      viscousTorque: motor.viscousTorque,
      thermalResistance: motor.thermalResistance,
    },
    supply: { ...supply, duty: problem.duties[places.duty] },
    vehicle: { ...vehicle, mass: massOf(problem, places), skirtShare: share, wheelFriction, skirtFriction },
  };
}

/** @returns a rotor of a family at one diameter [m], SI */
export function ductedRotorAt(
  { psi, lambda, phiMin, phiMax, sizeCorrection }: TriedRotor,
  diameter: number,
): PredictInput["rotor"] {
  return {
    diameter,
    psi,
    lambda,
    phiMin,
    phiMax,
    sizeCorrection: sizeCorrection && { ...sizeCorrection, applied: 1 },
  };
}

/** A combination without its pack: rotor in a duct. */
function ductedOf(problem: Problem, places: Places): Omit<PredictInput, "pack"> {
  const { vehicle, ...common } = commonOf(problem, places);
  const tried = problem.skirts[places.skirt];
  const { diameter } = familyOf(problem, places).sizes[places.size];
  return {
    ...common,
    rotor: ductedRotorAt(problem.rotors[places.rotor], diameter),
    skirt: skirtAt(tried, tried.gaps[places.gap]),
    vehicle: { ...vehicle, pullFactor: tried.pullFactor ?? 1 },
  };
}

/** A combination without its pack: open propeller. */
function openOf(problem: Problem, places: Places): Omit<PropellerPredictInput, "pack"> {
  const { diameter } = familyOf(problem, places).sizes[places.size];
  const [{ propellers = [] }, { rotor }] = [problem, places];
  return { ...commonOf(problem, places), rotor: propellerAt(propellers[rotor], diameter) };
}

function packOf({ packs, fixed }: Problem, { pack }: Places) {
  const { series, parallel, wireResistance, cell } = packs[pack];
  const { voltage, resistance } = cellAt(cell, fixed.charge);
  return { series, parallel, wireResistance, cellResistance: resistance, openCircuitVoltage: voltage };
}

/** @returns a combination with a rotor in a duct, as {@link inputOf} @throws as there */
export function ductedInput(problem: Problem, places: Places): PredictInput {
  return { ...ductedOf(problem, places), pack: packOf(problem, places) };
}

/** @returns a combination with an open propeller, as {@link inputOf} @throws as there */
export function openInput(problem: Problem, places: Places): PropellerPredictInput {
  return { ...openOf(problem, places), pack: packOf(problem, places) };
}

/**
 * A combination as a build: what a prediction takes.
 *
 *     its own mass, its skirt's share, its cell's V_oc at the charge
 *
 * @param problem - the question, SI
 * @param places - of the combination [-]
 * @returns the build, SI
 * @throws {OutOfRangeError} on a charge outside the cell's curve
 *
 * Valid for any combination. Source: definition
 */
export function inputOf(problem: Problem, places: Places): AnyPredictInput {
  return places.open ? openInput(problem, places) : ductedInput(problem, places);
}

/** @returns the combination as {@link runDown} takes it, its winding settled at every moment, SI */
export function runOf(problem: Problem, places: Places): RundownInput {
  const { series, parallel, wireResistance, cell } = problem.packs[places.pack];
  const run = {
    pack: { series, parallel, wireResistance, cell },
    startCharge: problem.fixed.charge,
  };
  return places.open ? { ...openOf(problem, places), ...run } : { ...ductedOf(problem, places), ...run };
}
