import { propellerRotors } from "./propellers.ts";
import { CELL_CURVE, FAMILIES, GEARS, MOTORS, PACKS, SKIRTS, SURFACES } from "./truth.ts";
import { BUILDS } from "./truthOfBuilds.ts";

const INVENTED = "Invented for the demo.";
const list = <T, D>(table: Record<string, T>, make: (truth: T) => D) =>
  Object.entries(table).map(([id, truth]) => ({ id, data: make(truth) }));

const discMass = (diameter: number) => Math.round(1240 * (Math.PI / 4) * diameter ** 2 * 0.0045 * 1e6) / 1e6;

/** Blades of the demo's rotors, of the mass of the whole [-]. */
const BLADE_SHARE = 0.04;

const ductedRotors = list(FAMILIES, (truth) => ({
  name: truth.name,
  kind: "ducted",
  form: truth.form,
  sizes: truth.sizes.map((diameter) => ({
    diameter,
    mass: discMass(diameter),
    height: 0.012,
    tipClearance: 0.0005,
    price: 1,
  })),
  geometry: {
    bladeCount: truth.blades,
    bladeExitAngle: truth.exitAngle,
    inletRatio: truth.inletRatio,
    widthRatio: truth.widthRatio,
  },
  // The strength is the usual one of the preset, 25 MPa: nobody tested it, and so it carries its mark.
  material: {
    preset: "pla",
    density: 1240,
    poissonRatio: 0.36,
    boreDiameter: 0.0015,
    bladeMass: Math.round(BLADE_SHARE * discMass(truth.sizes[0]) * 1e6) / 1e6,
    rimThickness: 0.0015,
  },
  note: INVENTED,
}));

export const rotors = [...ductedRotors, ...propellerRotors];

/** What a maker's leaflet says: rounded, and a little too good. */
export const motors = list(MOTORS, (truth) => ({
  name: truth.name,
  kv: Math.round((truth.kv * 1.03) / 50) * 50,
  resistance: Math.round(truth.resistance * 95) / 100,
  noLoadCurrent: Math.round(truth.noLoadCurrent * 90) / 100,
  thermalResistance: truth.thermalResistance,
  thermalTimeConstant: 45,
  windingLimit: 393.15,
  ratedVoltage: truth.rated,
  maxCurrent: truth.maxCurrent,
  mass: truth.mass,
  diameter: truth.diameter,
  length: truth.length,
  price: truth.price,
  estimated: ["thermalResistance", "thermalTimeConstant"],
  uncertainty: {
    kv: Math.round(truth.kv * 0.03),
    resistance: 0.02,
    thermalResistance: truth.thermalResistance * 0.25,
  },
  note: INVENTED,
}));

/** Greatest current of the demo's cells, 20 capacities an hour [1/s]. */
const CELL_RATE = 20 / 3600;

export const packs = list(PACKS, (truth) => ({
  name: truth.name,
  series: truth.series,
  parallel: 1,
  wireResistance: truth.wire,
  cell: {
    capacity: truth.capacity * 3.6,
    minimumVoltage: 3.2,
    resistance: truth.cellResistance,
    curve: CELL_CURVE,
    maxCurrent: truth.capacity * 3.6 * CELL_RATE,
  },
  mass: truth.mass,
  price: truth.price,
  uncertainty: { cellResistance: 0.004 },
  note: INVENTED,
}));

export const skirts = list(SKIRTS, (truth) => ({
  ...truth,
  uncertainty: { gap: 0.0001, friction: 0.05 },
  note: INVENTED,
}));

export const surfaces = list(SURFACES, (truth) => ({
  ...truth,
  wheelFriction: Math.round(truth.wheelFriction * 10) / 10,
  uncertainty: { wheelFriction: 0.1, roughness: truth.roughness / 2 },
  note: INVENTED,
}));

export const gears = list(GEARS, ({ name, wheelRadius, sag }) => ({
  name,
  wheelRadius,
  sag,
  estimated: [],
  uncertainty: {},
  note: INVENTED,
}));

export const builds = list(BUILDS, ({ mass, charge, aux, fallHeight, ...parts }) => ({
  ...parts,
  charge,
  supply: { duty: 1, driverResistance: 0.02, auxCurrent: aux },
  air: { temperature: 291.15, pressure: 100400, humidity: 0.7 },
  vehicle: { mass, wheelbase: 0.12, track: 0.1, cgHeight: 0.024, cgFromRear: 0.058, suctionFromRear: 0.06 },
  attitudes: [{ name: "Roof pane", angle: 153 }],
  targetMargin: 1.5,
  fallHeight,
  uncertainty: { "vehicle.mass": 0.004 },
}));
