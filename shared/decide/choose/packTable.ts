import { NotEnoughDataError, OutOfRangeError, requirePositive } from "../../numeric/errors.ts";
import { cellAt, resistanceVaries } from "../../physics/cells/cell.ts";
import { openCircuitCurve, packResistance } from "../../physics/pack.ts";
import { type CellPieces, cellPieces } from "../../physics/rundown/cellPieces.ts";
import type { TriedPack } from "./problem.ts";

/** Steps of charge in which a cell's curve is tabulated. */
const STEPS = 2048;

/** A pack's cell from its charge down to empty, tabulated once. */
export interface PackTable {
  /** V_oc of one cell at the charge [V] */
  readonly voltage: number;
  /** R_b [Ω] */
  readonly resistance: number;
  /** N_p·C_cell [C] */
  readonly capacity: number;
  /** R_cell/N_p [Ω] */
  readonly cellResistance: number;
  readonly minimumVoltage: number;
  /** least V_oc of one cell from the charge down, by step [V]; falls or stays */
  readonly lowest: Float64Array;
  /** ∫(V − V₀)^p dz from the charge down, p = 0, 1, 2, by step [V^p] */
  readonly moments: readonly [Float64Array, Float64Array, Float64Array];
  /** the curve cut where it is smooth, for a suction that is kept */
  readonly pieces: CellPieces;
  /** the cells by step; null where one resistance stands for every charge */
  readonly varying: CellsByStep | null;
}

/** Cells from a charge down to empty, in even steps. */
export interface CellsByStep {
  /** between two of them [-] */
  readonly width: number;
  /** V_oc of one cell [V] */
  readonly voltage: Float64Array;
  /** (R_cell − R_cell at the charge)/N_p [Ω] */
  readonly more: Float64Array;
}

/** Steps of charge for cells whose resistance varies. */
const VARYING_STEPS = 256;

/** Gauss–Legendre nodes on 0…1: cubic pieces of the curve to the second power are integrated to rounding. */
const GAUSS = [0.5 - Math.sqrt(0.15), 0.5, 0.5 + Math.sqrt(0.15)] as const;
const WEIGHTS = [5 / 18, 8 / 18, 5 / 18] as const;

function checkCell({ cell }: TriedPack, charge: number, path: string): void {
  requirePositive(`${path}.cell.capacity`, cell.capacity);
  requirePositive(`${path}.cell.minimumVoltage`, cell.minimumVoltage);
  if (!(charge > 0 && charge <= 1)) throw new OutOfRangeError("fixed.charge", charge, "above 0, up to 1");
  if (!(cell.curve[0]?.[0] === 0 && cell.curve[cell.curve.length - 1]?.[0] === 1))
    throw new NotEnoughDataError(
      "The cell's curve does not run from empty to full.",
      "Give its voltage at charge 0 and at charge 1.",
      `${path}.cell.curve`,
    );
}

/**
 * Tabulates a pack's cell from its charge down.
 *
 *     M_p(z) = ∫ (V_oc − V_oc(z₀))^p dz, p = 0, 1, 2
 *
 * @param pack - cell [-, V, Ω, C], cells in series and parallel [-]
 * @param charge - z₀ [-]
 * @param path - of the pack, for errors ("packs.0")
 * @returns the table, SI
 * @throws {OutOfRangeError} on a number that can't be
 * @throws {NotEnoughDataError} on a curve that stops short
 *
 * Valid for equal cells. Source: Gauss–Legendre quadrature of three nodes a step
 */
export function packTable(pack: TriedPack, charge: number, path: string): PackTable {
  checkCell(pack, charge, path);
  const { cell, parallel, series, wireResistance } = pack;
  const curve = openCircuitCurve(cell.curve);
  const { voltage, resistance } = cellAt(cell, charge);
  let made: Pick<PackTable, "lowest" | "moments"> | null = null;
  let cut: CellPieces | null = null;
  const tables = () => {
    made ??= tabulated(curve, voltage, charge);
    return made;
  };
  return {
    voltage,
    resistance: packResistance({ series, parallel, wireResistance, cellResistance: resistance }),
    capacity: parallel * cell.capacity,
    cellResistance: resistance / parallel,
    varying: resistanceVaries(cell) ? cellsByStep(pack, charge) : null,
    minimumVoltage: cell.minimumVoltage,
    // Asked for by times alone: a question without any has thousands of packs at no cost.
    get lowest() {
      return tables().lowest;
    },
    get moments() {
      return tables().moments;
    },
    get pieces() {
      cut ??= cellPieces(cell, charge);
      return cut;
    },
  };
}

function cellsByStep({ cell, parallel }: TriedPack, charge: number): CellsByStep {
  const width = charge / VARYING_STEPS;
  const [voltage, more] = [0, 0].map(() => new Float64Array(VARYING_STEPS + 1));
  const first = cellAt(cell, charge);
  for (let i = 0; i <= VARYING_STEPS; i++) {
    const at = cellAt(cell, Math.max(0, charge - i * width));
    voltage[i] = at.voltage;
    more[i] = (at.resistance - first.resistance) / parallel;
  }
  return { width, voltage, more };
}

function tabulated(
  curve: (charge: number) => number,
  voltage: number,
  charge: number,
): Pick<PackTable, "lowest" | "moments"> {
  const step = charge / STEPS;
  const lowest = new Float64Array(STEPS + 1).fill(voltage);
  const moments = [0, 1, 2].map(() => new Float64Array(STEPS + 1));
  for (let i = 1; i <= STEPS; i++) {
    lowest[i] = Math.min(lowest[i - 1], curve(Math.max(0, charge - i * step)));
    const over = GAUSS.map((share) => curve(Math.max(0, charge - (i - 1 + share) * step)) - voltage);
    moments.forEach((moment, power) => {
      moment[i] = moment[i - 1] + step * over.reduce((sum, v, j) => sum + WEIGHTS[j] * v ** power, 0);
    });
  }
  return { lowest, moments: [moments[0], moments[1], moments[2]] };
}

/** @returns step, with its fraction, at which the cell first falls to a voltage; the last one where it never does [-] */
export function stepAt({ lowest }: PackTable, voltage: number): number {
  if (voltage <= lowest[STEPS]) return STEPS;
  let [lo, hi] = [0, STEPS];
  while (hi - lo > 1) {
    const middle = (lo + hi) >> 1;
    if (lowest[middle] > voltage) lo = middle;
    else hi = middle;
  }
  const fall = lowest[lo] - lowest[hi];
  return fall > 0 ? lo + Math.max(0, lowest[lo] - voltage) / fall : hi;
}

/** @returns ∫(V − V₀)^power dz from the charge down to a step, with its fraction [V^power] */
export function momentAt({ moments }: PackTable, power: 0 | 1 | 2, step: number): number {
  const whole = Math.floor(step);
  const before = moments[power][whole];
  return whole >= STEPS ? before : before + (step - whole) * (moments[power][whole + 1] - before);
}
