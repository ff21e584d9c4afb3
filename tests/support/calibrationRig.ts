import type { CalibrationLeak, CalibrationPull } from "#shared/fit/calibration.ts";
import { normalQuantile } from "#shared/numeric/normalQuantile.ts";
import { createRandom } from "#shared/numeric/random.ts";
import { airFrom } from "#shared/physics/air.ts";
import { type PredictInput, predict } from "#shared/physics/predict.ts";
import { EDGE_LOSS, gapFlow } from "#shared/physics/restriction/lipGap.ts";

/** An invented rig of the glasshouse crawler; its set gap is far from any that the tests look for, so that reading it would show. */
export const RIG: PredictInput = {
  air: { temperature: 293.15, pressure: 101325, humidity: 0.5 },
  rotor: {
    diameter: 0.042,
    psi: [0.9, 0.1, -8],
    lambda: [0.02, 0.3],
    phiMin: 0,
    phiMax: 0.3,
    sizeCorrection: null,
  },
  motor: { kv: 7800, resistance: 0.35, frictionTorque: 2e-4, viscousTorque: 0, thermalResistance: null },
  pack: { series: 1, parallel: 1, openCircuitVoltage: 4.1, cellResistance: 0.05, wireResistance: 0.02 },
  supply: { duty: 1, driverResistance: 0, auxCurrent: 0 },
  skirt: {
    perimeter: 0.25,
    area: 0.004,
    gap: 0.004,
    roughness: 5e-5,
    land: 0.003,
    edge: "square",
    openings: [],
    measuredLeak: null,
  },
  vehicle: {
    mass: 0.18,
    wheelFriction: 3,
    skirtFriction: 0.3,
    skirtShare: 0,
    rollingResistance: 0.02,
    driven: "both",
    wheelbase: 0.11,
    track: 0.09,
    cgHeight: 0.02,
    cgFromRear: 0.055,
    suctionFromRear: 0.055,
    jolt: 0,
    jetArea: null,
    jetAngle: 0,
  },
};

export const RIG_MASS = 0.3;
const GRAVITY = 9.80665;

export function rigAt(voltage: number, gap = RIG.skirt.gap): PredictInput {
  return { ...RIG, pack: { ...RIG.pack, openCircuitVoltage: voltage }, skirt: { ...RIG.skirt, gap } };
}

export interface Truth {
  readonly gap: number;
  readonly friction: number;
  readonly scatter: number;
}

/** Force that the rig truly holds on average, by docs/method/calibration.md, Equation, written out anew. */
export function trueForce(direction: CalibrationPull["direction"], voltage: number, truth: Truth): number {
  const { suction } = predict(rigAt(voltage, truth.gap));
  return direction === "along" ? truth.friction * (suction + RIG_MASS * GRAVITY) : suction;
}

/** @returns standard normal numbers that the seed alone decides */
export function normals(seed: number): () => number {
  const random = createRandom(seed);
  return () => normalQuantile(random.uniform() + 2 ** -33);
}

/** A pull with weights added one by one: the strength scatters about the true force, the bracket is one weight wide. */
export function pulledOnce(
  direction: CalibrationPull["direction"],
  voltage: number,
  truth: Truth,
  normal: () => number,
  weight = 0.2,
): CalibrationPull {
  const strength = trueForce(direction, voltage, truth) * (1 + truth.scatter * normal());
  const weights = Math.floor(strength / weight);
  const rig = direction === "along" ? { rigMass: RIG_MASS } : {};
  return {
    input: rigAt(voltage),
    direction,
    ...rig,
    held: weights * weight,
    letGo: (weights + 1) * weight,
  };
}

/** A leak reading of the same skirt, with scatter. */
export function leakedOnce(pressure: number, truth: Truth, normal: () => number): CalibrationLeak {
  const { skirt, air } = RIG;
  const { perimeter, land, roughness } = skirt;
  const lip = { perimeter, land, lossSum: EDGE_LOSS.square, height: truth.gap + roughness };
  return {
    input: { skirt, air },
    pressure,
    flow: gapFlow(lip, airFrom(air), pressure) * (1 + truth.scatter * normal()),
  };
}
