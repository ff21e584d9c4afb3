import type {
  Problem,
  TriedMotor,
  TriedPack,
  TriedPropeller,
  TriedRotor,
  TriedSkirt,
  TriedStand,
  Wants,
} from "#shared/decide/choose/problem.ts";
import { createRandom } from "#shared/numeric/random.ts";

/** Invented questions around the glasshouse crawler. */

export const CURVE: readonly (readonly [number, number])[] = [
  [0, 3.0],
  [0.05, 3.4],
  [0.3, 3.65],
  [0.7, 3.85],
  [1, 4.18],
];

export const motor = (id: string, change: Partial<TriedMotor> = {}): TriedMotor => ({
  id,
  kv: 4900,
  resistance: 0.19,
  frictionTorque: 6e-4,
  viscousTorque: 1e-8,
  thermalResistance: null,
  mass: 0.04,
  height: 0.02,
  price: 12,
  maxCurrent: 12,
  ratedVoltage: 9,
  windingLimit: 400,
  ...change,
});

export const rotor = (id: string, change: Partial<TriedRotor> = {}): TriedRotor => ({
  id,
  psi: [1.05, -1.5, -32],
  lambda: [0.022, 1.1],
  phiMin: 0,
  phiMax: 0.12,
  sizeCorrection: null,
  basis: "measured",
  testedDiameters: [0.044],
  testedTipSpeeds: [40, 90],
  sizes: [0.036, 0.044, 0.05].map((diameter) => ({
    diameter,
    mass: 0.012 * (diameter / 0.044) ** 3,
    height: 0.3 * diameter,
    price: 2,
    burstSpeed: 250 / diameter,
  })),
  ...change,
});

export const pack = (id: string, series: number, change: Partial<TriedPack> = {}): TriedPack => ({
  id,
  series,
  parallel: 1,
  wireResistance: 0.014,
  cell: { capacity: 3600, minimumVoltage: 3, resistance: 0.026, curve: CURVE, maxCurrent: 10 },
  mass: 0.046 * series,
  height: 0.018,
  price: 6 * series,
  ...change,
});

export const skirt = (id: string, change: Partial<TriedSkirt> = {}): TriedSkirt => ({
  id,
  perimeter: 0.36,
  area: 0.008,
  roughness: 0.0001,
  land: 0.003,
  edge: "square",
  openings: [],
  measuredLeak: null,
  share: 0.1,
  wheelFriction: 0.7,
  skirtFriction: 0.3,
  gaps: [0.0003, 0.0005, 0.0008],
  mass: 0.03,
  height: 0.004,
  price: 1,
  ...change,
});

/** Invented, of the order that the published five-inch sweeps show. */
export const propeller = (id: string, change: Partial<TriedPropeller> = {}): TriedPropeller => ({
  id,
  thrust: [0.14, 0.006],
  power: [0.08, -0.004],
  referenceReynolds: 40_000,
  testedReynolds: [20_000, 80_000],
  chordRatio: 0.1,
  basis: "measured",
  testedDiameters: [0.127],
  testedTipSpeeds: [60, 140],
  sizes: [0.1, 0.127].map((diameter) => ({
    diameter,
    mass: 0.005 * (diameter / 0.127) ** 3,
    height: 0.01,
    price: 3,
  })),
  ...change,
});

export const stand = (id: string | null, change: Partial<TriedStand> = {}): TriedStand => ({
  id,
  share: 0,
  wheelFriction: 0.7,
  skirtFriction: 0,
  mass: 0,
  height: 0,
  price: 0,
  ...change,
});

export const WANTS: Wants = {
  attitudes: [
    { angle: 90, mode: "parked" },
    { angle: "worst", mode: "parked" },
    { angle: 153, mode: "driving" },
  ],
  targetMargin: 1.2,
  leastTime: 240,
  mostWinding: null,
  leastRotorFactor: 1.5,
  mostHeight: 0.062,
  mostPrice: 60,
  ratings: true,
};

export const question = (change: Partial<Problem> = {}): Problem => ({
  fixed: {
    air: { temperature: 293.15, pressure: 101_325, humidity: 0.5 },
    vehicle: {
      mass: 0.35,
      rollingResistance: 0.03,
      driven: "both",
      wheelbase: 0.14,
      track: 0.12,
      cgHeight: 0.03,
      cgFromRear: 0.07,
      suctionFromRear: 0.07,
      jolt: 0.1,
      jetArea: null,
      jetAngle: 0,
    },
    supply: { driverResistance: 0.01, auxCurrent: 0.35 },
    charge: 1,
    height: 0,
    price: 0,
  },
  motors: [
    motor("small", { kv: 6200, resistance: 0.28, mass: 0.03 }),
    motor("middle"),
    motor("strong", { kv: 3800, resistance: 0.12, mass: 0.07, price: 20 }),
  ],
  rotors: [rotor("swept"), rotor("radial", { psi: [1.2, 0.4, -40], lambda: [0.03, 1.3, -1], phiMax: 0.1 })],
  packs: [pack("two", 2), pack("three", 3)],
  skirts: [
    skirt("lip"),
    skirt("slotted", { openings: [{ area: 1.2e-5 }], edge: "rounded", gaps: [0.0004, 0.0006] }),
  ],
  duties: [0.8, 1],
  wants: WANTS,
  ...change,
});

/** Every kind of combination at once: warm windings, size correction, measured leak, openings, a jet, a sealed lip, weak supplies. */
export function mixedQuestion(seed: number): Problem {
  const random = createRandom(seed);
  const between = (low: number, high: number) => low + (high - low) * random.uniform();
  const motors = Array.from({ length: 12 }, (_, i) =>
    motor(`m${i}`, {
      kv: between(2500, 9000),
      resistance: between(0.05, 0.6),
      frictionTorque: i === 0 ? 9e-3 : between(1e-4, 1.5e-3),
      viscousTorque: i % 3 === 0 ? 0 : between(0, 5e-8),
      thermalResistance: i % 2 === 0 ? null : between(3, 30),
      mass: between(0.02, 0.09),
    }),
  );
  const rotors = Array.from({ length: 10 }, (_, i) => {
    const end = between(0.08, 0.3);
    const top = between(0.6, 1.6);
    const [c, d] = [between(-0.5, 0.9), between(0, 0.4)];
    const psi = [top, (top * (c - 1)) / end, (top * (d - c)) / end ** 2, (-top * d) / end ** 3];
    const lambda = [between(0.02, 0.08), between(0.4, 1.3) * top, (-between(0, 0.4) * top) / end];
    const tested = {
      testedDiameter: 0.044,
      testedTipSpeed: 70,
      testedDensity: 1.19,
      testedViscosity: 1.81e-5,
    };
    const sizes = [0.03, 0.04, 0.055].map((diameter) => ({
      diameter,
      mass: 0.01,
      height: 0.012,
      price: 1,
      burstSpeed: 12_000,
    }));
    return rotor(`r${i}`, {
      psi,
      lambda,
      sizeCorrection: i % 3 === 0 ? tested : null,
      phiMin: 0.02,
      phiMax: 0.8 * end,
      sizes,
    });
  });
  rotors.push(
    rotor("humped", { psi: [0.1, 0, 120, -600], lambda: [0.03, 0.6], sizes: rotors[0].sizes.slice(0, 1) }),
  );
  const leak = { coefficient: 2.6e-4, exponent: 0.58, density: 1.17, viscosity: 1.8e-5 };
  const skirts = [
    skirt("lip"),
    skirt("slotted", {
      openings: [{ area: 2e-5 }, { area: 1e-5, dischargeCoefficient: 0.7 }],
      edge: "thin",
      share: 0.3,
    }),
    skirt("measured", { measuredLeak: leak, gaps: [0.0005] }),
    skirt("measured and slotted", { measuredLeak: leak, openings: [{ area: 3e-5 }], gaps: [0.0005] }),
    skirt("openings alone", { roughness: 0, gaps: [0], openings: [{ area: 4e-5 }] }),
    skirt("sealed", { roughness: 0, gaps: [0] }),
    skirt("long land", { land: 0.012, lossSum: 1.3, gaps: [0.0001, 0.0002, 0.0015] }),
    skirt("no land", { land: 0, edge: "thin", gaps: [0.0004] }),
  ];
  const base = question();
  const vehicle = { ...base.fixed.vehicle, jetArea: 8e-4, jetAngle: 60 };
  return {
    ...base,
    fixed: { ...base.fixed, vehicle, charge: 0.9 },
    motors,
    rotors,
    packs: [pack("one", 1), pack("two", 2, { parallel: 2 }), pack("four", 4)],
    skirts,
    duties: [0.3, 0.7, 1],
  };
}

/** Propellers alone, of every kind: drift up, down and none, past what was tested, warm and cold windings, on wheels and on a skirt. */
export function openQuestion(seed: number): Problem {
  const random = createRandom(seed);
  const between = (low: number, high: number) => low + (high - low) * random.uniform();
  const mixed = mixedQuestion(seed);
  const propellers = Array.from({ length: 12 }, (_, i) => {
    const drift = i % 3 === 0 ? 0 : between(-0.02, 0.02);
    return propeller(`p${i}`, {
      thrust: [between(0.05, 0.2), i % 4 === 0 ? 0 : between(-0.02, 0.02)],
      power: [between(0.02, 0.1), drift],
      referenceReynolds: between(15_000, 90_000),
      testedReynolds: i % 5 === 0 ? undefined : [20_000, between(40_000, 120_000)],
      chordRatio: between(0.06, 0.16),
      sizes: [0.05, 0.09, 0.15].map((diameter) => ({ diameter, mass: 0.004 })),
    });
  });
  propellers.push(
    propeller("driven by the air when slow", { power: [0.002, 0.02], referenceReynolds: 90_000 }),
  );
  propellers.push(
    propeller("driven by the air when fast", { power: [0.03, -0.02], referenceReynolds: 20_000 }),
  );
  propellers.push(propeller("pulls away when slow", { thrust: [-0.01, 0.02], referenceReynolds: 50_000 }));
  return {
    ...mixed,
    rotors: [],
    skirts: [],
    propellers,
    stands: [stand(null), stand("lip", { share: 0.2, skirtFriction: 0.4, mass: 0.03, wheelFriction: 0.6 })],
  };
}
