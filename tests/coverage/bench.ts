import { bleedFlow } from "#shared/fit/bleed.ts";
import { findRoot } from "#shared/numeric/root.ts";
import { RPM, torqueConstant } from "#shared/physics/motor.ts";
import { predict } from "#shared/physics/predict.ts";
import { gapFlow } from "#shared/physics/restriction/lipGap.ts";
import type { Scenario } from "./scenarios.ts";
import { AIR, MOTOR, type Parts, STATED, TEST_SPEED, type Vehicle } from "./vehicle.ts";

/** Scatter of single readings, beside the gains [-]. */
const SCATTER = { pressure: 0.006, flow: 0.01, speed: 0.002, current: 0.008, voltage: 0.002 };
/** Scatter of a single pull as calibrations hold it: about 5 %, half or twice of it within a standard deviation, and no more than a fifth [-]. Source: docs/method/calibration.md. */
const PULLS = { about: 0.05, most: 0.2 };
const HOLES = [{ diameter: 0.01, thickness: 0.003, count: 36 }];

type Quantity = keyof Scenario["stated"];
type Draw = (sd: number) => number;

const quantity = (value: number, unit: string) => ({ value, unit });

/** A maker's instruments, their gains drawn once. */
export interface Bench {
  /** the instrument's gain on one reading and its scatter */
  readonly read: (value: number, of: Exclude<Quantity, "load">) => number;
  readonly loadGain: number;
  readonly draw: Draw;
  /** flow through some holes of the plate at a drop [m³/s] */
  readonly through: (count: number, drop: number) => number;
  readonly said: (...keys: Quantity[]) => object;
  readonly metered: object;
}

/** Draws the gains of the instruments, and that of the plate. */
export function drawBench(scenario: Scenario, draw: Draw): Bench {
  const gain = Object.fromEntries(
    Object.entries(scenario.stated).map(([key, percent]) => [
      key,
      1 + draw((scenario.truth * percent) / 100),
    ]),
  ) as Record<Quantity, number>;
  const plate = 1 + draw(0.03);
  const holes = HOLES.map(({ diameter, thickness, count }) => ({
    diameter: quantity(diameter * 1e3, "mm"),
    thickness: quantity(thickness * 1e3, "mm"),
    count,
    edge: "sharp",
  }));
  const flowOf = (count: number, pressure: number) =>
    bleedFlow({ holes: [{ ...HOLES[0], count }], air: AIR, pressure }).flow;
  return {
    read: (value, of) => value * gain[of] * (1 + draw(SCATTER[of])),
    loadGain: gain.load,
    draw,
    through: (count, drop) => (count === 0 ? 0 : plate * flowOf(count, drop)),
    said: (...keys) => Object.fromEntries(keys.map((key) => [key, { percent: scenario.stated[key] }])),
    metered: scenario.plate ? { flowFrom: "bleed-plate", plate: { holes } } : { flowFrom: "known-flow" },
  };
}

/** Everything that a test is taken with. */
export interface Taken {
  readonly parts: Parts;
  readonly scenario: Scenario;
  readonly vehicle: Vehicle;
  readonly bench: Bench;
}

/** A curve test from blocked to nearly open, by flow meter or plate. */
export function curveTest({ parts, scenario, vehicle, bench }: Taken): object {
  const { testedDiameter: diameter, psi, lambda } = vehicle;
  const { read, said, metered, through } = bench;
  const u = (TEST_SPEED * diameter) / 2;
  const area = (Math.PI / 4) * diameter ** 2;
  const pressure = (phi: number) => 0.5 * AIR.density * u * u * psi(phi);
  const row = (phi: number, open: number | null) => {
    const power = 0.5 * lambda(phi) * AIR.density * area * u ** 3;
    const current = (power / TEST_SPEED + MOTOR.frictionTorque) / torqueConstant(MOTOR.kv);
    return {
      speed: quantity(read(TEST_SPEED / RPM, "speed"), "rpm"),
      pressure: quantity(read(pressure(phi), "pressure"), "Pa"),
      current: quantity(read(current, "current"), "A"),
      ...(open === null ? { flow: quantity(read(phi * area * u, "flow"), "m^3/s") } : { open: [open] }),
    };
  };
  const [count] = scenario.readings;
  const rows = Array.from({ length: count }, (_, i) => {
    const share = i / (count - 1);
    if (!scenario.plate) return row(0.3 * share, null);
    const open = Math.round(30 * share ** 1.3);
    const excess = (phi: number) => through(open, Math.max(1e-6, pressure(phi))) - phi * area * u;
    return row(open === 0 ? 0 : findRoot(excess, 1e-9, 0.3).root, open);
  });
  return {
    kind: "curve",
    rotor: parts.stored.rotor,
    diameter: quantity(diameter * 1e3, "mm"),
    motor: parts.stored.motor,
    ...metered,
    instruments: said("pressure", "speed", "current", ...(scenario.plate ? [] : (["flow"] as const))),
    rows,
  };
}

/** A leak test at the gap as it then stood. */
export function leakTest({ parts, scenario, vehicle, bench }: Taken): object {
  const { perimeter, land } = parts.skirt.data;
  const { lossSum, landFriction, testGap: height } = vehicle;
  const { read, said, metered, through } = bench;
  const lip = { perimeter, land: land * landFriction, lossSum, height };
  const count = scenario.readings[1];
  const rows = Array.from({ length: count }, (_, i) => {
    const pressure = 250 + (1300 * i) / (count - 1);
    const flow = gapFlow(lip, AIR, pressure);
    const taken = { pressure: quantity(read(pressure, "pressure"), "Pa") };
    if (!scenario.plate) return { ...taken, flow: quantity(read(flow, "flow"), "m^3/s") };
    const drop = findRoot((p) => through(8, p) - flow, 1e-3, 5e4).root;
    return { ...taken, platePressure: quantity(read(drop, "pressure"), "Pa"), open: [8] };
  });
  return {
    kind: "leak",
    skirt: parts.stored.skirt,
    surface: parts.stored.surface,
    ...metered,
    instruments: said("pressure", ...(scenario.plate ? [] : (["flow"] as const))),
    rows,
  };
}

/** A motor test: three runs without load, the rest under it. */
export function motorTest({ parts, scenario, bench: { read, said } }: Taken): object {
  const k = torqueConstant(MOTOR.kv);
  const row = (voltage: number, current: number, noLoad: boolean) => ({
    voltage: quantity(read(voltage, "voltage"), "V"),
    current: quantity(read(current, "current"), "A"),
    speed: quantity(read((voltage - current * MOTOR.resistance) / k / RPM, "speed"), "rpm"),
    noLoad,
  });
  const loads = Array.from({ length: scenario.readings[2] }, (_, i) =>
    row([5, 7][i % 2], 4 + 2.5 * i, false),
  );
  const free = [4, 6, 8].map((voltage) => row(voltage, MOTOR.frictionTorque / k, true));
  const instruments = said("voltage", "current", "speed");
  return { kind: "motor", motor: parts.stored.motor, instruments, rows: [...free, ...loads] };
}

/** Pulls straight off, at falling charge, the voltage read. */
export function pullTest({ parts, scenario, vehicle, bench }: Taken): object {
  const { read, said, loadGain, draw } = bench;
  const scatter = Math.min(PULLS.most, scenario.pullScatter ?? PULLS.about * 2 ** draw(1));
  const rows = Array.from({ length: scenario.pulls }, (_, i) => {
    const { suction, point } = predict(vehicle.at(0.9 - 0.08 * i), []);
    const load = loadGain * suction * Math.max(0.1, 1 + draw(scatter));
    const held = Math.floor(load / 0.2) * 0.2;
    return {
      held: quantity(held, "N"),
      letGo: quantity(held + 0.2, "N"),
      voltage: quantity(read(point?.packVoltage ?? 0, "voltage"), "V"),
    };
  });
  const { rotor, motor, pack, skirt, surface } = parts.stored;
  return {
    kind: "pull",
    ...{ rotor, motor, pack, skirt, surface },
    diameter: quantity(STATED.diameter * 1e3, "mm"),
    direction: "straight-off",
    rigMass: quantity(0, "g"),
    instruments: said("load", "voltage"),
    rows,
  };
}
