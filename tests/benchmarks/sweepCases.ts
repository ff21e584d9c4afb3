import { CASE, MOST_COEFFICIENTS, RESULT, solveCase } from "#shared/physics/point/newton.ts";
import type { Leak } from "#shared/physics/restriction/leak.ts";

/**
 * The sweep of 1 000 000 coupled operating points: one deterministic family of inputs.
 *
 * index = (((i·50 + j)·10 + k)·4 + m)·5 + g with motor i, rotor j, diameter k, pack m, gap g; SI throughout.
 */
export const SWEEP_SIZE = 1_000_000;
const [MOTORS, ROTORS, DIAMETERS, PACKS, GAPS] = [100, 50, 10, 4, 5];
const AIR = { density: 1.2, viscosity: 1.81e-5 };
const SUPPLY = { duty: 0.95, driverResistance: 0.01, auxCurrent: 0.4 };
export const LIP = { perimeter: 0.36, land: 0.004, lossSum: 1.5 };
export const OPENING = { area: 1.2e-5, dischargeCoefficient: 0.61 };

export interface SweepTables {
  readonly motors: readonly {
    kv: number;
    k: number;
    resistance: number;
    friction: number;
    viscous: number;
  }[];
  readonly rotors: readonly {
    psi: readonly number[];
    lambda: readonly number[];
    /** the two as a case holds them: zeros up to the highest power that the solver takes */
    filled: { readonly psi: Float64Array; readonly lambda: Float64Array };
    phiEnd: number;
  }[];
  readonly diameters: readonly number[];
  readonly packs: readonly { series: number; voltage: number; resistance: number }[];
  readonly gaps: readonly number[];
}

const range = <T>(count: number, make: (i: number) => T): T[] =>
  Array.from({ length: count }, (_, i) => make(i));

function motor(i: number) {
  const [a, b] = [i % 10, Math.floor(i / 10)];
  const kv = 1200 + 1800 * a;
  const k = 60 / (2 * Math.PI * kv);
  const resistance = (0.1 + 0.1 * b) * Math.sqrt(6000 / kv);
  return { kv, k, resistance, friction: k * (0.05 + 0.02 * a), viscous: 1e-8 * (1 + b) };
}

function filled(powers: readonly number[]): Float64Array {
  const all = new Float64Array(MOST_COEFFICIENTS);
  all.set(powers);
  return all;
}

function rotor(j: number) {
  const [p, q] = [j % 10, Math.floor(j / 10)];
  const psi0 = 0.5 + 0.08 * p;
  const f = 0.08 + 0.05 * q;
  const c = 0.2 + 0.15 * (p % 4);
  const d = 0.1 + 0.1 * (q % 3);
  const psi = [psi0, (psi0 * (c - 1)) / f, (psi0 * (d - c)) / f ** 2, (-psi0 * d) / f ** 3];
  const lambda = [0.02 + 0.01 * (p % 5), 1.1 * psi0, (-0.3 * psi0) / f];
  return { psi, lambda, filled: { psi: filled(psi), lambda: filled(lambda) }, phiEnd: f };
}

/** @returns the 100 + 50 + 10 + 4 + 5 entries that the sweep combines */
export function sweepTables(): SweepTables {
  return {
    motors: range(MOTORS, motor),
    rotors: range(ROTORS, rotor),
    diameters: range(DIAMETERS, (k) => 0.02 + 0.006 * k),
    packs: range(PACKS, (m) => ({
      series: m + 1,
      voltage: 3.8 * (m + 1),
      resistance: 0.02 * (m + 1) + 0.015,
    })),
    gaps: range(GAPS, (g) => 0.0002 + 0.0003 * g),
  };
}

/** @returns the five places of an index: motor, rotor, diameter, pack, gap */
export function sweepPlaces(index: number): [number, number, number, number, number] {
  const at = (divisor: number, count: number) => Math.floor(index / divisor) % count;
  return [at(10000, MOTORS), at(200, ROTORS), at(20, DIAMETERS), at(5, PACKS), at(1, GAPS)];
}

/** Re at which 96/Re and 0.3164/Re^0.25 cross. */
const CROSSING = (96 / 0.3164) ** (4 / 3);

function setGap(c: Float64Array, height: number): void {
  const { perimeter, land, lossSum } = LIP;
  const { density, viscosity } = AIR;
  c[CASE.gapArea] = perimeter * height;
  c[CASE.gapInertia] = 0.5 * density * lossSum;
  c[CASE.gapLaminar] = (12 * viscosity * land) / (height * height);
  const blasius = 0.3164 * Math.sqrt(Math.sqrt(viscosity / (density * 2 * height)));
  c[CASE.gapTurbulent] = (0.5 * density * blasius * land) / (2 * height);
  c[CASE.gapCrossing] = (CROSSING * viscosity) / (density * 2 * height);
}

/** Writes one combination into a case of the fast solver. */
export function writeCase(c: Float64Array, tables: SweepTables, index: number): void {
  const { duty, driverResistance, auxCurrent } = SUPPLY;
  const ofMotor = tables.motors[(index / 10000) | 0];
  const { filled, phiEnd } = tables.rotors[((index / 200) | 0) % ROTORS];
  const pack = tables.packs[((index / 5) | 0) % PACKS];
  for (let power = 0; power < MOST_COEFFICIENTS; power++) {
    c[CASE.psi + power] = filled.psi[power];
    c[CASE.lambda + power] = filled.lambda[power];
  }
  c[CASE.phiEnd] = phiEnd;
  c[CASE.radius] = tables.diameters[((index / 20) | 0) % DIAMETERS] / 2;
  c[CASE.density] = AIR.density;
  c[CASE.torqueConstant] = ofMotor.k;
  c[CASE.resistance] = ofMotor.resistance + driverResistance + duty * duty * pack.resistance;
  c[CASE.frictionTorque] = ofMotor.friction;
  c[CASE.viscousTorque] = ofMotor.viscous;
  c[CASE.drivingVoltage] = duty * (pack.voltage - pack.resistance * auxCurrent);
  c[CASE.openingConductance] = OPENING.dischargeCoefficient * OPENING.area * Math.sqrt(2 / AIR.density);
  setGap(c, tables.gaps[index % GAPS]);
}

/** A start that needs no neighbour: the middle of the curve and a gap velocity of 30 m/s. */
export function writeStart(c: Float64Array, result: Float64Array): void {
  result[RESULT.phi] = 0.5 * c[CASE.phiEnd];
  result[RESULT.gapVelocity] = 30;
}

/** The same combination as the input of the general prediction's machine and leak. */
export function machineOf(tables: SweepTables, index: number) {
  const [i, j, k, m, g] = sweepPlaces(index);
  const [ofMotor, ofRotor, pack] = [tables.motors[i], tables.rotors[j], tables.packs[m]];
  return {
    air: AIR,
    rotor: {
      diameter: tables.diameters[k],
      psi: ofRotor.psi,
      lambda: ofRotor.lambda,
      phiMin: 0,
      phiMax: ofRotor.phiEnd,
      sizeCorrection: null,
    },
    motor: {
      kv: ofMotor.kv,
      resistance: ofMotor.resistance,
      frictionTorque: ofMotor.friction,
      viscousTorque: ofMotor.viscous,
      thermalResistance: null,
    },
    pack: {
      series: pack.series,
      parallel: 1,
      openCircuitVoltage: 3.8,
      cellResistance: 0.02,
      wireResistance: 0.015,
    },
    supply: SUPPLY,
    leak: [
      { kind: "lipGap", ...LIP, height: tables.gaps[g] },
      { kind: "opening", ...OPENING },
    ] satisfies Leak,
  };
}

export interface SweepSums {
  readonly pressure: number;
  readonly speed: number;
  readonly flow: number;
}

/**
 * Solves a share of the sweep, each case from its neighbour's solution.
 *
 * @param tables - from {@link sweepTables}, built outside the clock
 * @param first - first index
 * @param count - how many indices
 * @returns plain double sums in index order [Pa, rad/s, m³/s]
 * @throws {Error} when a case does not converge from a start of its own either
 */
export function runSweep(tables: SweepTables, first = 0, count = SWEEP_SIZE): SweepSums {
  const c = new Float64Array(CASE.length);
  const result = new Float64Array(RESULT.length);
  let [pressure, speed, flow] = [0, 0, 0];
  for (let index = first; index < first + count; index++) {
    writeCase(c, tables, index);
    if (index % GAPS === 0) writeStart(c, result);
    if (!solveCase(c, result)) {
      writeStart(c, result);
      if (!solveCase(c, result)) throw new Error(`no convergence at index ${index}`);
    }
    pressure += result[RESULT.pressure];
    speed += result[RESULT.speed];
    flow += result[RESULT.flow];
  }
  return { pressure, speed, flow };
}
