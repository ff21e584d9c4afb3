import { noiseSource } from "#seed-data/noise.ts";
import { type Book, findById } from "#shared/book/book.ts";
import { bleedFlow } from "#shared/fit/bleed.ts";
import type { Build } from "#shared/model/build.ts";
import { type BenchTest, benchTest } from "#shared/model/tests/index.ts";
import { findRoot } from "#shared/numeric/root.ts";
import { type Air, airFrom } from "#shared/physics/air.ts";
import { RPM, torqueConstant } from "#shared/physics/motor.ts";
import { openCircuitVoltage } from "#shared/physics/pack.ts";
import { type PredictInput, predict } from "#shared/physics/predict.ts";
import { EDGE_LOSS, gapFlow } from "#shared/physics/restriction/lipGap.ts";
import type { Scenario } from "./scenarios.ts";

/** Scatter of single readings, beside the gains [-]. */
const SCATTER = { pressure: 0.006, flow: 0.01, speed: 0.002, current: 0.008, voltage: 0.002, pull: 0.035 };
const WEATHER = { temperature: 293.15, pressure: 101325, humidity: 0.5 };
const ROTOR = { diameter: 0.05, psi: [0.31, -0.25, -2.1], lambda: [0.046, 0.16] };
const HOLES = [{ diameter: 0.01, thickness: 0.003, count: 36 }];
const BUILD = "ridge-runner";

type Quantity = keyof Scenario["stated"];

/** A maker's book, and what the maker's vehicle really pulls. */
export interface Made {
  readonly book: Book;
  readonly build: Build;
  /** F_s at the build's own state [N] */
  readonly truth: number;
}

/** Draws a vehicle and a bench, takes the tests of a scenario and files them. */
export function maker(demo: Book, scenario: Scenario, seed: number): Made {
  const { normal } = noiseSource(seed);
  const draw = (of: number) => of * normal();
  const stored = findById(demo.builds, BUILD)?.data as Build;
  const skirt = findById(demo.skirts, stored.skirt);
  const surface = findById(demo.surfaces, stored.surface);
  const pack = findById(demo.packs, stored.pack);
  const motor = findById(demo.motors, stored.motor);
  if (!skirt || !surface || !pack || !motor) throw new Error("the demo lacks a part");
  const gain = Object.fromEntries(
    Object.entries(scenario.stated).map(([key, percent]) => [
      key,
      1 + draw((scenario.truth * percent) / 100),
    ]),
  ) as Record<Quantity, number>;
  const plate = 1 + draw(0.03);
  const testGap = Math.max(5e-5, skirt.data.gap + draw(scenario.gapUncertainty));
  const gap = testGap * (1 + (scenario.setAnew && scenario.leakTest ? draw(0.05) : 0));
  const pullFactor = scenario.pullFactor ?? Math.exp(draw(0.1));
  const lossSum = EDGE_LOSS[skirt.data.edge] * Math.max(0.3, 1 + draw(scenario.lip));
  const air = airFrom(WEATHER);
  const resistance = 0.13;
  const kv = 3300;
  const frictionTorque = torqueConstant(kv) * 0.42;
  const {
    curve = [
      [0, 3],
      [1, 4.2],
    ],
    capacity,
    minimumVoltage,
  } = pack.data.cell;
  const cell = { curve, capacity, minimumVoltage, resistance: 0.02 };
  const at = (charge: number): PredictInput => ({
    air: WEATHER,
    rotor: { ...ROTOR, phiMin: 0, phiMax: 1, sizeCorrection: null },
    motor: { kv, resistance, frictionTorque, viscousTorque: 0, thermalResistance: null },
    pack: {
      series: pack.data.series,
      parallel: 1,
      openCircuitVoltage: openCircuitVoltage(curve, charge),
      cellResistance: cell.resistance,
      wireResistance: 0.01,
    },
    supply: { duty: 1, driverResistance: 0, auxCurrent: 0 },
    skirt: {
      perimeter: skirt.data.perimeter,
      area: skirt.data.area,
      land: skirt.data.land,
      lossSum,
      gap,
      roughness: 0,
      openings: [],
      measuredLeak: null,
    },
    vehicle: {
      ...stored.vehicle,
      mass: 0.5,
      wheelFriction: 0.7,
      skirtFriction: 0.3,
      skirtShare: 0,
      pullFactor,
      jetArea: null,
    },
  });
  const noisy = (value: number, quantity: Exclude<Quantity, "load">) =>
    value * gain[quantity] * (1 + draw(SCATTER[quantity]));
  const q = (value: number, unit: string) => ({ value, unit });
  const said = (...keys: Quantity[]) =>
    Object.fromEntries(keys.map((key) => [key, { percent: scenario.stated[key] }]));
  const holes = {
    holes: HOLES.map((h) => ({
      diameter: q(h.diameter * 1e3, "mm"),
      thickness: q(h.thickness * 1e3, "mm"),
      count: h.count,
      edge: "sharp",
    })),
  };
  const metered = scenario.plate ? { flowFrom: "bleed-plate", plate: holes } : { flowFrom: "known-flow" };
  const through = (count: number, drop: number, of: Air) =>
    count === 0 ? 0 : plate * bleedFlow({ holes: [{ ...HOLES[0], count }], air: of, pressure: drop }).flow;

  function curveTest(): object {
    const count = scenario.readings[0];
    const speed = 26_000 * RPM;
    const u = (speed * ROTOR.diameter) / 2;
    const area = (Math.PI / 4) * ROTOR.diameter ** 2;
    const psi = (phi: number) =>
      ROTOR.psi.reduce((sum, c, j) => sum + c * phi ** j, 0) +
      scenario.wave * ROTOR.psi[0] * Math.sin(40 * phi);
    const lambda = (phi: number) => ROTOR.lambda[0] + ROTOR.lambda[1] * phi;
    const pressure = (phi: number) => 0.5 * air.density * u * u * psi(phi);
    const row = (phi: number, open: number | null) => {
      const power = 0.5 * lambda(phi) * air.density * area * u ** 3;
      const current = (power / speed + frictionTorque) / torqueConstant(kv);
      return {
        speed: q(noisy(speed / RPM, "speed"), "rpm"),
        pressure: q(noisy(pressure(phi), "pressure"), "Pa"),
        current: q(noisy(current, "current"), "A"),
        ...(open === null ? { flow: q(noisy(phi * area * u, "flow"), "m^3/s") } : { open: [open] }),
      };
    };
    const shares = Array.from({ length: count }, (_, i) => i / (count - 1));
    const rows = shares.map((share) => {
      if (!scenario.plate) return row(0.3 * share, null);
      const open = Math.round(30 * share ** 1.3);
      const excess = (phi: number) => through(open, Math.max(1e-6, pressure(phi)), air) - phi * area * u;
      return row(open === 0 ? 0 : findRoot(excess, 1e-9, 0.3).root, open);
    });
    return {
      kind: "curve",
      rotor: stored.rotor,
      diameter: q(50, "mm"),
      motor: stored.motor,
      ...metered,
      instruments: said("pressure", "speed", "current", ...(scenario.plate ? [] : (["flow"] as const))),
      rows,
    };
  }

  function leakTest(): object {
    const lip = {
      perimeter: skirt?.data.perimeter ?? 0,
      land: skirt?.data.land ?? 0,
      lossSum,
      height: testGap,
    };
    const count = scenario.readings[1];
    const rows = Array.from({ length: count }, (_, i) => {
      const pressure = 250 + (1300 * i) / (count - 1);
      const flow = gapFlow(lip, air, pressure);
      const read = { pressure: q(noisy(pressure, "pressure"), "Pa") };
      if (!scenario.plate) return { ...read, flow: q(noisy(flow, "flow"), "m^3/s") };
      const drop = findRoot((p) => through(8, p, air) - flow, 1e-3, 5e4).root;
      return { ...read, platePressure: q(noisy(drop, "pressure"), "Pa"), open: [8] };
    });
    return {
      kind: "leak",
      skirt: stored.skirt,
      surface: stored.surface,
      ...metered,
      instruments: said("pressure", ...(scenario.plate ? [] : (["flow"] as const))),
      rows,
    };
  }

  function motorTest(): object {
    const k = torqueConstant(kv);
    const row = (voltage: number, current: number, noLoad: boolean) => ({
      voltage: q(noisy(voltage, "voltage"), "V"),
      current: q(noisy(current, "current"), "A"),
      speed: q(noisy((voltage - current * resistance) / k / RPM, "speed"), "rpm"),
      noLoad,
    });
    const loads = Array.from({ length: scenario.readings[2] }, (_, i) =>
      row([5, 7][i % 2], 4 + 2.5 * i, false),
    );
    const free = [4, 6, 8].map((voltage) => row(voltage, frictionTorque / k, true));
    return {
      kind: "motor",
      motor: stored.motor,
      instruments: said("voltage", "current", "speed"),
      rows: [...free, ...loads],
    };
  }

  function pullTest(): object {
    const rows = Array.from({ length: scenario.pulls }, (_, i) => {
      const { suction, point } = predict(at(0.9 - 0.08 * i), []);
      const load = gain.load * suction * (1 + draw(SCATTER.pull));
      const held = Math.floor(load / 0.2) * 0.2;
      return {
        held: q(held, "N"),
        letGo: q(held + 0.2, "N"),
        voltage: q(noisy(point?.packVoltage ?? 0, "voltage"), "V"),
      };
    });
    const { rotor, motor: turned, pack: of, skirt: lip, surface: on } = stored;
    return {
      kind: "pull",
      rotor,
      motor: turned,
      pack: of,
      skirt: lip,
      surface: on,
      diameter: q(50, "mm"),
      direction: "straight-off",
      rigMass: q(0, "g"),
      instruments: said("load", "voltage"),
      rows,
    };
  }

  const taken = [
    curveTest(),
    motorTest(),
    ...(scenario.leakTest ? [leakTest()] : []),
    ...(scenario.pulls > 0 ? [pullTest()] : []),
  ];
  const stamp = { revision: 1, createdAt: "2026-01-01T00:00:00.000Z", updatedAt: "2026-01-01T00:00:00.000Z" };
  const tests = taken.map((test, i) => ({
    id: `t${i}`,
    ...stamp,
    data: benchTest.parse({ title: "", date: "2026-01-01", ...test }) as BenchTest,
  }));
  const same = <T extends { readonly id: string; readonly data: object }>(
    records: readonly T[],
    id: string,
    change: object,
  ): T[] =>
    records.map((record) => (record.id === id ? { ...record, data: { ...record.data, ...change } } : record));
  const bare = { openings: [], holes: [], honeycombs: [], share: 0, gapBasis: "set" };
  const book: Book = {
    ...demo,
    tests,
    skirts: same(demo.skirts, skirt.id, { ...bare, uncertainty: { gap: scenario.gapUncertainty } }),
    surfaces: same(demo.surfaces, surface.id, { roughness: 0, wheelFriction: 0.7, uncertainty: {} }),
    packs: same(demo.packs, pack.id, { cell, wireResistance: 0.01, parallel: 1, uncertainty: {} }),
    motors: same(demo.motors, motor.id, {
      thermalResistance: undefined,
      diameter: undefined,
      length: undefined,
      uncertainty: {},
    }),
  };
  const build: Build = {
    ...stored,
    vehicle: { ...stored.vehicle, mass: 0.5 },
    diameter: 0.05,
    charge: 0.7,
    air: WEATHER,
    supply: { duty: 1, driverResistance: 0, auxCurrent: 0 },
    overrides: {},
    uncertainty: {},
    gear: null,
  };
  return { book, build, truth: predict(at(0.7), []).suction };
}
