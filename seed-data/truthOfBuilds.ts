import type { Build } from "../shared/model/build.ts";
import { CRAWLER_STACKS, type TypedStack } from "./stacks.ts";

type BuildTruth = Pick<
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
