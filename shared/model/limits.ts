import {
  AIR,
  CELL_VOLTAGE,
  CELLS,
  CURRENT,
  DIAMETER,
  FLOW,
  FRACTION,
  FRICTION,
  GAP,
  INCLINATION,
  LEAD_TIME,
  LOAD,
  LOADED_VOLTAGE,
  MASS,
  PLACE,
  PRICE,
  SIZE,
  SPEED,
  SPEED_OR_NONE,
  SUCTION,
  TORQUE,
  VOLTAGE,
} from "./baseLimits.ts";
import { above0, between, count, from0, type LimitTree } from "./limitTree.ts";

/** Least share of the pack's voltage that a what-if or a search tries [-]. */
export const LEAST_TRIED_DUTY = 0.01;
/** Least diameter of a rotor that a what-if tries [m]: a slider needs an end above 0. Judgement. */
export const LEAST_TRIED_DIAMETER = 2e-3;
/** Least charge that a run-down is started with [-]. */
export const LEAST_TRIED_CHARGE = 0.01;

export const ROTOR = {
  sizes: {
    diameter: DIAMETER,
    mass: MASS,
    height: above0(1),
    tipClearance: from0(0.1),
    price: PRICE,
    leadTime: LEAD_TIME,
  },
  geometry: {
    bladeCount: count(2, 200),
    bladeExitAngle: between(5, 90),
    inletRatio: between(0.05, 1),
    widthRatio: between(0.005, 2),
  },
  material: {
    density: above0(30_000),
    poissonRatio: between(0, 0.5),
    strength: above0(1e10),
    boreDiameter: from0(1),
    bladeMass: MASS,
    rimThickness: above0(1),
    bladeHeight: above0(1),
    bladeThickness: above0(0.1),
  },
  chord: above0(1),
} as const satisfies LimitTree;

export const MOTOR = {
  kv: above0(1e6),
  resistance: above0(1e4),
  noLoadCurrent: from0(1e3),
  viscousTorque: from0(1),
  thermalResistance: above0(1e4),
  thermalTimeConstant: above0(1e5),
  windingLimit: between(273.15, 600),
  ratedVoltage: above0(1e3),
  maxCurrent: above0(1e3),
  mass: MASS,
  diameter: above0(1),
  length: above0(1),
  price: PRICE,
  leadTime: LEAD_TIME,
} as const satisfies LimitTree;

export const PACK = {
  series: CELLS,
  parallel: CELLS,
  wireResistance: from0(100),
  cell: {
    capacity: above0(1e7),
    minimumVoltage: between(0.1, 10),
    resistance: from0(100),
    coldFactor: between(1, 20),
    curve: { 0: FRACTION, 1: CELL_VOLTAGE },
    maxCurrent: above0(1e4),
  },
  mass: MASS,
  height: above0(1),
  price: PRICE,
  leadTime: LEAD_TIME,
} as const satisfies LimitTree;

export const SKIRT = {
  perimeter: above0(20),
  area: above0(10),
  outline: { length: above0(10), width: above0(10), cornerRadius: from0(5) },
  land: from0(1),
  straightSide: from0(10),
  lossSum: from0(20),
  gap: GAP,
  openings: { area: above0(1), dischargeCoefficient: above0(1.2) },
  holes: { count: count(1, 1000), diameter: above0(0.5), thickness: from0(0.5) },
  honeycombs: { count: count(1, 100_000), diameter: above0(0.1), length: above0(1) },
  share: FRACTION,
  friction: FRICTION,
  height: above0(1),
  mass: MASS,
  price: PRICE,
  leadTime: LEAD_TIME,
} as const satisfies LimitTree;

export const GEAR = { wheelRadius: above0(1), sag: from0(0.1) } as const satisfies LimitTree;

export const SURFACE = {
  roughness: from0(0.05),
  wheelFriction: FRICTION,
  skirtFriction: FRICTION,
  joints: { depth: from0(0.1), width: from0(1), depthUncertainty: from0(0.1), widthUncertainty: from0(1) },
} as const satisfies LimitTree;

/** Joints that a surface may have. */
export const MOST_JOINTS = 6;

export const BUILD = {
  diameter: DIAMETER,
  attitudes: { angle: INCLINATION },
  charge: FRACTION,
  supply: { duty: FRACTION, driverResistance: from0(100), auxCurrent: from0(1e3) },
  air: AIR,
  vehicle: {
    mass: above0(1e4),
    skirtShare: FRACTION,
    rollingResistance: between(0, 2),
    wheelbase: above0(20),
    track: above0(20),
    cgHeight: from0(20),
    cgFromRear: between(-20, 20),
    suctionFromRear: between(-20, 20),
    jolt: from0(20),
    jetArea: above0(1),
    jetAngle: INCLINATION,
    verticalStiffness: above0(1e9),
    gapLoad: from0(1e6),
  },
  ledger: {
    quantity: above0(1e4),
    mass: MASS,
    uncertainty: MASS,
    made: {
      density: above0(30_000),
      volume: above0(1),
      infill: FRACTION,
      surface: above0(100),
      wall: above0(0.1),
      area: above0(100),
      thickness: above0(0.1),
    },
    place: PLACE,
    alternatives: { mass: MASS, uncertainty: MASS, price: PRICE, leadTime: LEAD_TIME },
  },
  places: { rotor: PLACE, motor: PLACE, pack: PLACE, skirt: PLACE },
  stacks: { space: SIZE, parts: { ...SIZE, quantity: count(1, 100) } },
  printRate: above0(1),
  targetMargin: between(1, 20),
  fallHeight: from0(1000),
  inertia: above0(1),
  cycle: { angle: INCLINATION, share: above0(1), driveCurrent: from0(1e3) },
  overrides: { series: CELLS, gap: GAP, wheelFriction: FRICTION },
} as const satisfies LimitTree;

/** Suction that a controller is told to keep [Pa]. */
export const KEPT_SUCTION = above0(1e6);
/** Thrust likewise [N]. */
export const KEPT_THRUST = above0(1e5);

/** As many parts as a drive cycle has at most. */
export const MOST_CYCLE_PARTS = 12;

/** What the search is asked for. */
export const SEARCH = {
  diameters: { from: above0(2), to: from0(2), step: from0(2) },
  gaps: { from: GAP, to: GAP, step: GAP },
  duties: between(LEAST_TRIED_DUTY, 1),
  wants: {
    targetMargin: BUILD.targetMargin,
    leastCrossing: BUILD.targetMargin,
    leastTime: from0(1e6),
    leastKeptTime: from0(1e6),
    mostWinding: between(250, 700),
    leastRotorFactor: above0(100),
    mostHeight: above0(2),
    mostPrice: PRICE,
    leastChance: FRACTION,
  },
} as const satisfies LimitTree;

/** Of every test: the day's air, the accuracy of an instrument, the holes of a plate. */
export const TEST = {
  air: AIR,
  instruments: { percent: between(0, 100), absolute: { min: 0 } },
  plate: {
    holes: {
      diameter: above0(0.2),
      thickness: from0(0.2),
      count: count(1, 1000),
      dischargeCoefficient: between(0.1, 1.2),
    },
  },
  /** open holes of one kind */
  open: count(0, 1000),
} as const satisfies LimitTree;

/** Below 90°, where no friction would hold [rad]. */
const STEEPEST = 0.9999 * (Math.PI / 2);

/** By kind of test. */
export const TESTS = {
  curve: {
    diameter: DIAMETER,
    rows: {
      speed: SPEED,
      pressure: between(-1e5, 1e5),
      flow: FLOW,
      voltage: VOLTAGE,
      current: CURRENT,
      torque: TORQUE,
      density: between(0.1, 5),
    },
  },
  pull: {
    diameter: DIAMETER,
    rigMass: from0(100),
    duty: above0(1),
    charge: FRACTION,
    rows: { held: LOAD, letGo: LOAD, voltage: LOADED_VOLTAGE, gap: GAP },
  },
  motor: {
    resistance: above0(1e4),
    rows: { voltage: VOLTAGE, current: CURRENT, speed: SPEED_OR_NONE, throttle: FRACTION },
  },
  leak: {
    gap: GAP,
    rows: { pressure: SUCTION, flow: FLOW, platePressure: SUCTION },
  },
  friction: { rows: { held: between(0, STEEPEST), slid: above0(STEEPEST) } },
  thrust: {
    diameter: DIAMETER,
    rows: {
      speed: SPEED,
      thrust: between(-1e5, 1e5),
      torque: TORQUE,
      current: CURRENT,
      voltage: VOLTAGE,
      throttle: FRACTION,
    },
  },
  discharge: {
    rows: { charge: from0(1e7), time: from0(1e7), voltage: LOADED_VOLTAGE, current: from0(1e4) },
  },
  /** lifted by at most what it is loaded with */
  "ride-height": { rows: { load: between(-LOAD.max, LOAD.max), height: GAP } },
  "weigh-in": { diameter: DIAMETER, rows: { reading: above0(LOAD.max) } },
  "run-log": {
    rows: {
      angle: between(0, Math.PI),
      voltage: LOADED_VOLTAGE,
      charge: FRACTION,
      time: from0(1e7),
    },
  },
} as const satisfies Readonly<Record<string, LimitTree>>;

export const INSTRUMENT = {
  percent: TEST.instruments.percent,
  absolute: TEST.instruments.absolute,
  resolution: TEST.instruments.absolute,
} as const satisfies LimitTree;

export const PLATE = {
  thickness: above0(TEST.plate.holes.thickness.max),
  holes: { diameter: TEST.plate.holes.diameter, count: TEST.plate.holes.count },
  dischargeCoefficient: TEST.plate.holes.dischargeCoefficient,
} as const satisfies LimitTree;

/** By collection of parts and builds. */
export const PARTS = {
  rotors: ROTOR,
  motors: MOTOR,
  packs: PACK,
  skirts: SKIRT,
  surfaces: SURFACE,
  instruments: INSTRUMENT,
  plates: PLATE,
  gears: GEAR,
  builds: BUILD,
} as const satisfies Readonly<Record<string, LimitTree>>;
