import { noiseSource } from "#seed-data/noise.ts";
import type { Book } from "#shared/book/book.ts";
import type { Build } from "#shared/model/build.ts";
import { type BenchTest, benchTest } from "#shared/model/tests/index.ts";
import { predict } from "#shared/physics/predict.ts";
import { curveTest, drawBench, leakTest, motorTest, pullTest, type Taken } from "./bench.ts";
import type { Scenario } from "./scenarios.ts";
import { drawVehicle, type Parts, partsOf, STATED, WEATHER } from "./vehicle.ts";

/** A maker's book, and what the maker's vehicle really does. */
export interface Made {
  readonly book: Book;
  readonly build: Build;
  /** F_s at the build's own state [N] */
  readonly pull: number;
  /** whether it holds parked on a ceiling */
  readonly holds: boolean;
}

/** How far about what just holds the mass is drawn, so that every chance of holding is said: by whether pulls pin the pull [-]. */
const [WIDE, NARROW] = [0.2, 0.07];

/** What a vehicle without any luck just holds on a ceiling [kg]. */
function massThatJustHolds(parts: Parts, scenario: Scenario): number {
  const { at, charge } = drawVehicle(parts, scenario, 1, () => 0);
  return predict(at(charge), [180]).attitudes[0]?.parked.margin ?? 0;
}
const STAMP = { revision: 1, createdAt: "2026-01-01T00:00:00.000Z", updatedAt: "2026-01-01T00:00:00.000Z" };

function changed<T extends { readonly id: string; readonly data: object }>(
  records: readonly T[],
  id: string,
  change: object,
): T[] {
  return records.map((each) => (each.id === id ? { ...each, data: { ...each.data, ...change } } : each));
}

/** The demo's book with the maker's tests alone, and parts that state no more than the scenario says. */
function bookOf(demo: Book, parts: Parts, scenario: Scenario, tests: readonly object[]): Book {
  const bare = { openings: [], holes: [], honeycombs: [], share: 0, gapBasis: "set" };
  const silent = { thermalResistance: undefined, diameter: undefined, length: undefined, uncertainty: {} };
  const { cell } = parts;
  return {
    ...demo,
    tests: tests.map((test, i) => ({
      id: `t${i}`,
      ...STAMP,
      data: benchTest.parse({ title: "", date: "2026-01-01", ...test }) as BenchTest,
    })),
    skirts: changed(demo.skirts, parts.skirt.id, {
      ...bare,
      uncertainty: { gap: scenario.gapUncertainty },
    }),
    surfaces: changed(demo.surfaces, parts.surface.id, { roughness: 0, wheelFriction: 0.7, uncertainty: {} }),
    packs: changed(demo.packs, parts.pack.id, { cell, wireResistance: 0.01, parallel: 1, uncertainty: {} }),
    motors: changed(demo.motors, parts.motor.id, silent),
  };
}

/** Draws a vehicle and a bench, takes the tests of a scenario and files them. */
export function maker(demo: Book, scenario: Scenario, seed: number): Made {
  const { normal, uniform } = noiseSource(seed);
  const draw = (sd: number) => sd * normal();
  const parts = partsOf(demo);
  const mass =
    massThatJustHolds(parts, scenario) * (1 + (scenario.pulls > 0 ? NARROW : WIDE) * (2 * uniform() - 1));
  const bench = drawBench(scenario, draw);
  const vehicle = drawVehicle(parts, scenario, mass, draw);
  const taken: Taken = { parts, scenario, vehicle, bench };
  const tests = [
    curveTest(taken),
    motorTest(taken),
    ...(scenario.leakTest ? [leakTest(taken)] : []),
    ...(scenario.pulls > 0 ? [pullTest(taken)] : []),
  ];
  const build: Build = {
    ...parts.stored,
    vehicle: { ...parts.stored.vehicle, mass },
    ...STATED,
    air: WEATHER,
    supply: { duty: 1, driverResistance: 0, auxCurrent: 0 },
    overrides: {},
    uncertainty: {},
    gear: null,
  };
  const { suction, attitudes } = predict(vehicle.at(vehicle.charge), [180]);
  const margin = attitudes[0]?.parked.margin ?? 0;
  return { book: bookOf(demo, parts, scenario, tests), build, pull: suction, holds: margin >= 1 };
}
