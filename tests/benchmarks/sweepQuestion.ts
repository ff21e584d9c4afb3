import type { Problem } from "#shared/decide/choose/problem.ts";
import { LIP, OPENING, SWEEP_SIZE, sweepTables } from "./sweepCases.ts";

/** Invented masses, strengths and wants that let some thousands of the million combinations pass. */
const CELL = {
  capacity: 3600,
  minimumVoltage: 3,
  resistance: 0.02,
  maxCurrent: 20,
  curve: [
    [0, 3.0],
    [0.05, 3.4],
    [0.3, 3.65],
    [0.7, 3.85],
    [1, 4.18],
  ],
} as const;
const VEHICLE = {
  mass: 0.3,
  rollingResistance: 0.03,
  driven: "both",
  wheelbase: 0.14,
  track: 0.12,
  cgHeight: 0.03,
  cgFromRear: 0.07,
  suctionFromRear: 0.07,
  jolt: 0,
  jetArea: null,
  jetAngle: 0,
} as const;
const WEATHER = { temperature: 293.15, pressure: 101_325, humidity: 0.5 } as const;

/**
 * The million combinations of the sweep as a question of choosing: the same motors, rotors, sizes, packs and gaps, on a cell with a curve.
 *
 *     100 motors × 50 rotors × 10 sizes × 4 packs × 5 gaps
 *
 * @param motors - of the hundred, all unless given; fewer make a smaller question [-]
 * @returns the question, SI
 */
export function sweepQuestion(motors = 100): Problem {
  const tables = sweepTables();
  return {
    fixed: {
      air: WEATHER,
      vehicle: VEHICLE,
      supply: { driverResistance: 0.01, auxCurrent: 0.4 },
      charge: 1,
      height: 0,
      price: 0,
    },
    motors: tables.motors.slice(0, motors).map(({ kv, resistance, friction, viscous }, i) => ({
      id: `motor ${i}`,
      kv,
      resistance,
      frictionTorque: friction,
      viscousTorque: viscous,
      thermalResistance: null,
      mass: 0.02 + 0.0007 * i,
      height: 0.02,
      price: 10 + 0.1 * i,
    })),
    rotors: tables.rotors.map(({ psi, lambda, phiEnd }, i) => ({
      id: `rotor ${i}`,
      psi,
      lambda,
      phiMin: 0,
      phiMax: phiEnd,
      sizeCorrection: null,
      basis: "measured" as const,
      testedDiameters: [0.044],
      testedTipSpeeds: [40, 90] as const,
      sizes: tables.diameters.map((diameter) => ({
        diameter,
        mass: 0.012 * (diameter / 0.044) ** 3,
        height: 0.3 * diameter,
        price: 2,
        burstSpeed: 260 / diameter,
      })),
    })),
    packs: tables.packs.map(({ series }) => ({
      id: `pack ${series}`,
      series,
      parallel: 1,
      wireResistance: 0.015,
      cell: CELL,
      mass: 0.046 * series,
      height: 0.018,
      price: 6 * series,
    })),
    skirts: [
      {
        id: "skirt",
        perimeter: LIP.perimeter,
        area: 0.008,
        roughness: 0,
        land: LIP.land,
        lossSum: LIP.lossSum,
        openings: [OPENING],
        measuredLeak: null,
        share: 0.1,
        wheelFriction: 0.7,
        skirtFriction: 0.3,
        gaps: tables.gaps,
        mass: 0.03,
        height: 0.004,
        price: 1,
      },
    ],
    duties: [0.95],
    wants: {
      attitudes: [
        { angle: 90, mode: "parked" },
        { angle: "worst", mode: "parked" },
        { angle: 153, mode: "driving" },
        { angle: 180, mode: "driving" },
      ],
      targetMargin: 1.5,
      leastTime: 300,
      mostWinding: null,
      leastRotorFactor: 1.2,
      mostHeight: 0.07,
      mostPrice: 60,
      ratings: true,
    },
  };
}

/** Combinations of the whole question. */
export const QUESTION_SIZE = SWEEP_SIZE;
