import type { CollectionName } from "#shared/model/collections.ts";

/** Plain records of an invented crawler, as a client would send them. */
export const samples = {
  rotors: { name: "Fern 24", sizes: [{ diameter: 0.042 }, { diameter: 0.038 }] },
  motors: { name: "Pane motor", kv: 7800, resistance: 0.35, noLoadCurrent: 0.2 },
  packs: {
    name: "One cell",
    series: 1,
    cell: {
      capacity: 2340,
      minimumVoltage: 3,
      resistance: 0.05,
      curve: [
        [0, 3.3],
        [0.5, 3.75],
        [1, 4.2],
      ],
    },
  },
  skirts: { name: "Felt lip", perimeter: 0.25, area: 0.004, land: 0.003, gap: 0.0006 },
  surfaces: { name: "Clean glass", wheelFriction: 0.8 },
} as const satisfies Partial<Record<CollectionName, object>>;

type PartIds = Readonly<Record<"rotor" | "motor" | "pack" | "skirt" | "surface", string>>;

export const sampleBuild = (ids: PartIds) => ({
  name: "Side pane crawler",
  ...ids,
  diameter: 0.042,
  vehicle: { mass: 0.18 },
});

export const samplePull = (ids: PartIds, change: object = {}) => ({
  kind: "pull",
  title: "Pull on the pane",
  date: "2026-03-14",
  ...ids,
  diameter: { value: 42, unit: "mm" },
  direction: "straight-off",
  rigMass: { value: 40, unit: "g" },
  rows: [{ held: { value: 420, unit: "g" }, letGo: { value: 450, unit: "g" } }],
  ...change,
});

export const sampleCurve = (rotor: string, change: object = {}) => ({
  kind: "curve",
  title: "Blocked and open",
  date: "2026-03-12",
  rotor,
  diameter: { value: 42, unit: "mm" },
  flowFrom: "known-flow",
  rows: [
    {
      speed: { value: 24000, unit: "rpm" },
      pressure: { value: 90, unit: "mmH2O" },
      flow: { value: 0, unit: "L/s" },
    },
  ],
  ...change,
});
