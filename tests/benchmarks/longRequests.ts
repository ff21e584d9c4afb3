import { chooseBody } from "#tests/support/chooseQuestion.ts";
import { begin, follow } from "./events.ts";

const API = "/api/v1";

/** A request that takes long, and what it is called in the table. */
export interface LongRequest {
  readonly name: string;
  readonly send: (address: string) => Promise<unknown>;
}

async function read(answer: Response): Promise<void> {
  const text = await answer.text();
  if (!answer.ok) throw new Error(`${answer.status}: ${text.slice(0, 200)}`);
}

const post = (path: string, body: object) => async (address: string) =>
  read(
    await fetch(address + API + path, {
      method: "POST",
      headers: { "Content-Type": "application/json" },
      body: JSON.stringify(body),
    }),
  );
const get = (path: string) => async (address: string) => read(await fetch(address + API + path));

/** An invented pane crawler, inline. */
const PACK = { openCircuitVoltage: 4.1, cellResistance: 0.05 };
const BUILD = {
  rotor: { diameter: 0.042, psi: [0.9, 0.1, -8], lambda: [0.02, 0.3], phiMax: 0.3 },
  motor: { kv: 7800, resistance: 0.35, frictionTorque: 2e-4 },
  pack: PACK,
  skirt: { perimeter: 0.25, area: 0.004, gap: 0.0006, land: 0.003, edge: "square" },
  vehicle: { mass: 0.18 },
};
const CELL = {
  minimumVoltage: 3,
  resistance: 0.05,
  curve: [
    [0, 3.3],
    [0.5, 3.75],
    [1, 4.2],
  ],
};
const DOUBTS = {
  "skirt.gap": 5e-5,
  "vehicle.wheelFriction": 0.05,
  "motor.kv": 100,
  "motor.resistance": 0.02,
  "rotor.psi.0": 0.02,
  "rotor.psi.2": 0.5,
  "pack.cellResistance": 0.005,
};

/** Readings that scatter, the same in each run. */
const scattered = <T>(count: number, make: (i: number, scatter: number) => T): T[] =>
  Array.from({ length: count }, (_, i) => make(i, 1 + 0.1 * Math.sin(37 * i)));

const PULLS = scattered(300, (i, scatter) => ({
  input: { ...BUILD, pack: { ...PACK, openCircuitVoltage: 3.6 + (i % 6) / 10 } },
  direction: ["straight-off", "ceiling"][i % 2],
  held: 2.5 * scatter,
  letGo: 3 * scatter,
}));
const LEAKS = scattered(1000, (i, scatter) => ({
  input: { skirt: BUILD.skirt },
  pressure: 100 + i,
  flow: 1e-4 * Math.sqrt(100 + i) * scatter,
}));
const CURVE = scattered(5000, (i, scatter) => ({
  rpm: 24_000,
  flow: (1e-3 * (i % 50)) / 50,
  pressure: 900 * (1 - (i % 50) / 100) * scatter,
  shaftPower: 1 + scatter,
}));
const PRIOR = { gap: { mean: 6e-4, sd: 2e-4 }, friction: { mean: 0.7, sd: 0.15 } };

/** Whatever a person can ask that takes long, at its largest. */
export const LONG_REQUESTS: readonly LongRequest[] = [
  { name: "next tests of a build", send: get("/builds/pane-crawler/next-tests") },
  { name: "verdict of a build, 20 000 samples", send: get("/builds/pane-crawler/verdict?samples=20000") },
  {
    name: "calibration, 300 pulls and 1000 leak readings",
    send: post("/calibrate", { prior: PRIOR, pulls: PULLS, leaks: LEAKS }),
  },
  {
    name: "20 000 samples of a prediction",
    send: post("/predict", { ...BUILD, uncertainty: DOUBTS, samples: 20_000 }),
  },
  {
    name: "run-down of three hours",
    send: post("/rundown", { ...BUILD, pack: { cell: { ...CELL, capacity: 30_000 } } }),
  },
  { name: "ways to hold", send: post("/ways", { ...BUILD, attitude: 90 }) },
  { name: "fit of 5000 points", send: post("/fit/rotor", { diameter: 0.042, points: CURVE }) },
  { name: "description of the API", send: get("/openapi.json") },
  { name: "archive of the book", send: get("/archive") },
  { name: "copy of the data file", send: get("/backup") },
];

/** @returns a search of the demo's parts in a million combinations; another margin is another search */
export const millionCombinations = (targetMargin: number) =>
  chooseBody({
    rotors: [{ rotor: "swept-nine", diameters: { from: 0.03, to: 0.0597, step: 0.0003 } }],
    skirts: [{ skirt: "square-lip", gaps: { from: 0.0003, to: 0.000888, step: 0.000012 } }],
    duties: Array.from({ length: 100 }, (_, i) => 0.505 + 0.005 * i),
    wants: { targetMargin },
  });

/** A search of a million combinations, and what is asked of its results; each after the one before. */
export function searchRequests(): readonly LongRequest[] {
  let id = "";
  const of = (path: string) => (address: string) => get(`/choose/${id}/${path}`)(address);
  const solve = async (address: string) => {
    id = await begin(address, millionCombinations(1.5));
    await follow(address, id);
  };
  return [
    { name: "search of a million combinations", send: solve },
    { name: "its deep pages", send: of("sets?only=all&from=700000&limit=500") },
    { name: "what its limits keep out", send: of("missed") },
    { name: "points of its plot", send: of("points?x=mass&y=time&limit=5000") },
    { name: "its shortlist", send: of("shortlist?count=4") },
    { name: "its table as a file", send: of("sets.csv?only=front") },
  ];
}
