import { DEFAULT_WEATHER } from "#shared/physics/air.ts";
import type { PredictInput } from "#shared/physics/predict.ts";

/** An invented crawler for glasshouse panes, without a pack. */
export const PANE_CRAWLER = {
  air: DEFAULT_WEATHER,
  rotor: {
    diameter: 0.044,
    psi: [1.05, -1.5, -32],
    lambda: [0.022, 1.1],
    phiMin: 0,
    phiMax: 0.16,
    sizeCorrection: null,
  },
  motor: {
    kv: 4900,
    resistance: 0.19,
    frictionTorque: 6e-4,
    viscousTorque: 1e-8,
    thermalResistance: null as number | null,
  },
  supply: { duty: 1, driverResistance: 0.02, auxCurrent: 0.35 },
  skirt: {
    perimeter: 0.36,
    area: 0.008,
    gap: 6e-4,
    roughness: 0,
    land: 0.003,
    lossSum: 1.5,
    openings: [],
    measuredLeak: null,
  },
  vehicle: {
    mass: 0.4,
    wheelFriction: 0.7,
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
} satisfies Omit<PredictInput, "pack">;

/** An invented propeller in the ducted rotor's place. */
export const PANE_PROPELLER = {
  kind: "propeller",
  diameter: 0.09,
  thrust: [0.12, 0.004],
  power: [0.06, -0.002],
  referenceReynolds: 20_000,
  chord: 0.012,
} as const;
