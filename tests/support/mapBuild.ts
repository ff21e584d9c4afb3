import type { MapAxis } from "#shared/decide/map/grid.ts";
import type { MapBuild, MapKey } from "#shared/decide/map/place.ts";
import { openCircuitVoltage } from "#shared/physics/pack.ts";
import { PANE_CRAWLER } from "./paneCrawler.ts";

export const CELL = {
  capacity: 1620,
  minimumVoltage: 3.2,
  resistance: 0.02,
  curve: [
    [0, 3.2],
    [0.3, 3.6],
    [1, 4.18],
  ] as [number, number][],
};
const RANGES: Readonly<Record<MapKey, readonly [number, number]>> = {
  diameter: [0.03, 0.06],
  kv: [3000, 9000],
  series: [1, 4],
  gap: [2e-4, 1.2e-3],
  mass: [0.2, 1.2],
  duty: [0.3, 1],
  charge: [0.1, 1],
  wheelFriction: [0.3, 1.2],
};
/** @returns an axis of so many values over what the crawler is tried at */
export const axisOf = (key: MapKey, count: number): MapAxis => {
  const [from, to] = RANGES[key];
  const n = key === "series" ? to - from + 1 : count;
  return { key, values: Array.from({ length: n }, (_, i) => from + ((to - from) * i) / (n - 1)) };
};
/** @returns the pane crawler as a map moves it, its rotor at the diameters asked for [m] */
export const mapBuild = (change: Partial<MapBuild> = {}, diameters: readonly number[] = []): MapBuild => ({
  input: {
    ...PANE_CRAWLER,
    pack: {
      series: 2,
      parallel: 1,
      cellResistance: 0.02,
      wireResistance: 0.02,
      openCircuitVoltage: openCircuitVoltage(CELL.curve, 0.6),
    },
  },
  cell: CELL,
  charge: 0.6,
  rotors: [...diameters, PANE_CRAWLER.rotor.diameter].map((diameter) => ({
    diameter,
    sizeCorrection: diameter > 0.045 ? { testedDiameter: 0.044, testedTipSpeed: 60 } : null,
    burstSpeed: 130 / diameter,
  })),
  attitudes: [
    { angle: "worst", mode: "driving" },
    { angle: 180, mode: "parked" },
  ],
  target: 1.5,
  windingLimit: 393.15,
  ...change,
});

/** @returns the crawler's motor and pack under an invented propeller of its own, with drift and a warm winding */
export const openInput = (): MapBuild["input"] => {
  const { air, motor, supply, vehicle } = PANE_CRAWLER;
  return {
    air,
    motor,
    supply,
    pack: mapBuild().input.pack,
    vehicle: { ...vehicle, mass: 0.15, skirtShare: 0 },
    rotor: {
      kind: "propeller",
      diameter: 0.1,
      thrust: [0.13, 0.009],
      power: [0.064, -0.003],
      referenceReynolds: 60_000,
      chord: 0.012,
      testedReynolds: [20_000, 90_000],
    },
  };
};
