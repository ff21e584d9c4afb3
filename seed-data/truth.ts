import type { Build } from "../shared/model/build.ts";
import { CRAWLER_STACKS, type TypedStack } from "./stacks.ts";

/**
 * The invented truth behind the demo: what the glasshouse crawler's parts really are. The tests of the demo are
 * readings of these numbers through noisy instruments; nothing here was measured on anything that exists.
 */
export const FAMILIES = {
  "swept-nine": {
    name: "Swept nine",
    form: "centrifugal",
    psi: [1.06, -1.4, -31],
    lambda: [0.022, 1.15],
    sizes: [0.038, 0.044],
    blades: 9,
    exitAngle: 42,
    inletRatio: 0.52,
    widthRatio: 0.13,
  },
  "straight-seven": {
    name: "Straight seven",
    form: "centrifugal",
    psi: [1.24, 0.7, -38],
    lambda: [0.036, 1.62],
    sizes: [0.042, 0.05],
    blades: 7,
    exitAngle: 88,
    inletRatio: 0.5,
    widthRatio: 0.15,
  },
  "tube-five": {
    name: "Tube five",
    form: "axial",
    psi: [0.31, -0.25, -2.1],
    lambda: [0.046, 0.16],
    sizes: [0.046, 0.05, 0.055],
    blades: 5,
    exitAngle: 30,
    inletRatio: 1,
    widthRatio: 0.25,
  },
} as const;

export const MOTORS = {
  "coreless-12": {
    name: "Coreless can, 12 mm",
    kv: 7600,
    resistance: 0.42,
    noLoadCurrent: 0.16,
    viscousTorque: 6e-9,
    thermalResistance: 16,
    mass: 0.011,
    diameter: 0.012,
    length: 0.025,
    rated: 4.2,
    maxCurrent: 2.5,
    price: 6,
  },
  "bell-18": {
    name: "Bell motor, 18 mm",
    kv: 4900,
    resistance: 0.19,
    noLoadCurrent: 0.34,
    viscousTorque: 1.5e-8,
    thermalResistance: 7,
    mass: 0.019,
    diameter: 0.022,
    length: 0.018,
    rated: 8.4,
    maxCurrent: 9,
    price: 14,
  },
  "bell-22": {
    name: "Bell motor, 22 mm",
    kv: 3300,
    resistance: 0.13,
    noLoadCurrent: 0.42,
    viscousTorque: 3e-8,
    thermalResistance: 6,
    mass: 0.031,
    diameter: 0.028,
    length: 0.021,
    rated: 12.6,
    maxCurrent: 12,
    price: 19,
  },
  "brushed-20": {
    name: "Brushed can, 20 mm",
    kv: 3900,
    resistance: 0.61,
    noLoadCurrent: 0.28,
    viscousTorque: 2e-8,
    thermalResistance: 7,
    mass: 0.028,
    diameter: 0.0204,
    length: 0.028,
    rated: 7.2,
    maxCurrent: 5,
    price: 4,
  },
} as const;

/** Open-circuit curve of the demo's cells: the shape of a lithium polymer cell, the points invented. */
const CURVE: [number, number][] = [
  [0, 3.3],
  [0.05, 3.52],
  [0.1, 3.62],
  [0.2, 3.7],
  [0.3, 3.74],
  [0.4, 3.77],
  [0.5, 3.81],
  [0.6, 3.87],
  [0.7, 3.94],
  [0.8, 4.02],
  [0.9, 4.1],
  [1, 4.19],
];

export const PACKS = {
  "one-cell-650": {
    name: "One cell, 650 mAh",
    series: 1,
    capacity: 650,
    cellResistance: 0.031,
    wire: 0.012,
    mass: 0.018,
    price: 7,
  },
  "two-cell-450": {
    name: "Two cells, 450 mAh",
    series: 2,
    capacity: 450,
    cellResistance: 0.026,
    wire: 0.014,
    mass: 0.029,
    price: 11,
  },
  "three-cell-850": {
    name: "Three cells, 850 mAh",
    series: 3,
    capacity: 850,
    cellResistance: 0.015,
    wire: 0.014,
    mass: 0.071,
    price: 17,
  },
} as const;
export const CELL_CURVE = CURVE;

export const SKIRTS = {
  "felt-ring": {
    name: "Felt ring, 110 mm",
    perimeter: 0.345,
    straightSide: 0,
    area: 0.0093,
    land: 0.004,
    edge: "rounded",
    gap: 0.0005,
    friction: 0.32,
    share: 0,
    mass: 0.014,
    openings: [],
  },
  "square-lip": {
    name: "Square lip, 96 by 84 mm",
    perimeter: 0.36,
    straightSide: 0.096,
    area: 0.0079,
    land: 0.003,
    edge: "square",
    gap: 0.0006,
    friction: 0.28,
    share: 0,
    mass: 0.011,
    openings: [{ area: 6e-6, dischargeCoefficient: 0.61 }],
  },
  "wide-land": {
    name: "Wide land, 130 mm",
    perimeter: 0.408,
    straightSide: 0,
    area: 0.0128,
    land: 0.008,
    edge: "square",
    gap: 0.0004,
    friction: 0.3,
    share: 0.1,
    mass: 0.019,
    openings: [{ area: 1.2e-5, dischargeCoefficient: 0.61 }],
  },
} as const;

export const SURFACES = {
  "side-pane": {
    name: "Side pane, clean glass",
    roughness: 0.00001,
    wheelFriction: 0.81,
    skirtFriction: 0.31,
    joints: [{ name: "Putty line", depth: 0.0003, width: 0.006, met: "across" }],
  },
  "roof-pane": {
    name: "Roof pane, old rolled glass",
    roughness: 0.00012,
    wheelFriction: 0.72,
    skirtFriction: 0.29,
    joints: [{ name: "Lap of two panes", depth: 0.0012, width: 0.02, met: "either" }],
  },
  "ridge-board": {
    name: "Ridge board, painted",
    roughness: 0.00022,
    wheelFriction: 0.64,
    skirtFriction: 0.36,
  },
} as const;

/** Running gear: k of all tyres together [N/m], the gap at which it was read [m], and the weights put on [g], below 0 lifted by a luggage scale. */
export const GEARS = {
  "rubber-tyres": {
    name: "Rubber tyres, 34 mm",
    wheelRadius: 0.017,
    sag: 0.0004,
    stiffness: 45_000,
    gap: 0.0006,
    date: "2026-05-20",
    loads: [-500, 0, 500, 1000, 1500],
  },
  "foam-tyres": {
    name: "Foam tyres, 34 mm",
    wheelRadius: 0.017,
    sag: 0.0009,
    stiffness: 14_000,
    gap: 0.0006,
    date: "2026-05-21",
    loads: [-400, 0, 300, 600, 900],
  },
} as const;

export type BuildTruth = Pick<
  Build,
  "name" | "rotor" | "diameter" | "motor" | "pack" | "skirt" | "surface" | "note"
> & { gear?: string } & {
  mass: number;
  charge: number;
  aux: number;
  fallHeight: number;
  cycle?: Build["cycle"];
  ledger?: Build["ledger"];
  stacks?: readonly TypedStack[];
};

const vehicleNote = "Invented for the demo.";
/** Invented: what the pane crawler carries beside its parts [kg]. */
const CRAWLER_LEDGER: BuildTruth["ledger"] = [
  {
    name: "Gear motor",
    group: "drive",
    quantity: 2,
    mass: 0.031,
    uncertainty: 0.0005,
    basis: "weighed",
    alternatives: [],
  },
  {
    name: "Wheel with tyre",
    group: "drive",
    quantity: 4,
    mass: 0.0135,
    uncertainty: 0.0003,
    basis: "weighed",
    alternatives: [{ name: "Foam wheel", mass: 0.008, uncertainty: 0.0005, price: 3, leadTime: 6 }],
  },
  {
    name: "Camera",
    group: "electronics",
    quantity: 1,
    mass: 0.048,
    uncertainty: 0.0005,
    basis: "weighed",
    alternatives: [
      { name: "Camera without its case", mass: 0.031, uncertainty: 0.001, price: 0, leadTime: 0 },
      { name: "Board camera", mass: 0.017, uncertainty: 0.001, price: 29, leadTime: 12 },
    ],
  },
  {
    name: "Speed controllers",
    group: "electronics",
    quantity: 3,
    mass: 0.007,
    uncertainty: 0.0003,
    basis: "weighed",
    alternatives: [],
  },
  { name: "Receiver", group: "electronics", quantity: 1, mass: 0.006, basis: "estimated", alternatives: [] },
  {
    name: "Frame, printed",
    group: "structure",
    quantity: 1,
    mass: 0.118,
    uncertainty: 0.001,
    basis: "weighed",
    alternatives: [],
  },
  {
    name: "Wiper and arm",
    group: "structure",
    quantity: 1,
    mass: 0.052,
    uncertainty: 0.001,
    basis: "weighed",
    alternatives: [],
  },
  {
    name: "Screws and glue",
    group: "structure",
    quantity: 1,
    mass: 0.01,
    basis: "estimated",
    alternatives: [],
  },
  {
    name: "Cover, printed",
    group: "cover",
    quantity: 1,
    mass: 0.082,
    uncertainty: 0.004,
    basis: "estimated",
    alternatives: [],
  },
  {
    name: "Filler and paint",
    group: "paint and filler",
    quantity: 1,
    mass: 0.012,
    uncertainty: 0.004,
    basis: "estimated",
    alternatives: [],
  },
  {
    name: "Wires and plugs",
    group: "wiring",
    quantity: 1,
    mass: 0.022,
    basis: "estimated",
    alternatives: [],
  },
];

export const BUILDS: Record<string, BuildTruth> = {
  "pane-crawler": {
    name: "Pane crawler, second rotor",
    rotor: "swept-nine",
    diameter: 0.044,
    motor: "bell-18",
    pack: "two-cell-450",
    skirt: "square-lip",
    surface: "side-pane",
    mass: 0.56,
    charge: 0.6,
    aux: 0.35,
    fallHeight: 2.5,
    cycle: [
      { angle: 90, share: 0.45, driveCurrent: 0.9, moving: true },
      { angle: 153, share: 0.25, driveCurrent: 0.7, moving: true },
      { angle: 153, share: 0.3, driveCurrent: 0, moving: false },
    ],
    ledger: CRAWLER_LEDGER,
    stacks: CRAWLER_STACKS,
    note: `Wipes the side panes, camera on top. ${vehicleNote}`,
  },
  "roof-crawler": {
    name: "Roof crawler, heavy wiper",
    rotor: "straight-seven",
    diameter: 0.042,
    motor: "brushed-20",
    pack: "two-cell-450",
    skirt: "felt-ring",
    surface: "roof-pane",
    mass: 0.56,
    charge: 0.6,
    aux: 0.3,
    fallHeight: 4,
    note: `Carries the long wiper under the roof panes. ${vehicleNote}`,
  },
  "ridge-runner": {
    name: "Ridge runner, tube fan",
    rotor: "tube-five",
    diameter: 0.05,
    motor: "bell-22",
    pack: "two-cell-450",
    skirt: "wide-land",
    surface: "ridge-board",
    mass: 1.12,
    charge: 0.6,
    aux: 0.4,
    fallHeight: 5.5,
    note: `First try with an axial fan for the ridge boards. ${vehicleNote}`,
  },
  "beam-crawler": {
    name: "Beam crawler, rubber tyres",
    rotor: "swept-nine",
    diameter: 0.044,
    motor: "bell-18",
    pack: "two-cell-450",
    skirt: "square-lip",
    surface: "ridge-board",
    gear: "rubber-tyres",
    mass: 0.7,
    charge: 0.6,
    aux: 0.35,
    fallHeight: 4,
    note: `Climbs the painted beams to the ridge; its tyres give a little. ${vehicleNote}`,
  },
  "prop-scout": {
    name: "Scout, pusher propeller",
    rotor: "pusher-three",
    diameter: 0.127,
    motor: "bell-22",
    pack: "two-cell-450",
    skirt: null,
    surface: "side-pane",
    mass: 0.13,
    charge: 0.6,
    aux: 0.25,
    fallHeight: 2.5,
    note: `Looks for loose putty ahead of the wiper; pressed on by a propeller, without a skirt. ${vehicleNote}`,
  },
};
