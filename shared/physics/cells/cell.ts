import { findRoot } from "../../numeric/root.ts";
import { openCircuitCurve } from "../pack.ts";

/** Points of a quantity of one cell by its charge, by rising charge [-, its unit]. */
export type ByCharge = readonly (readonly [number, number])[];

/** One cell at a moment. */
export interface CellState {
  /** at rest [V] */
  readonly voltage: number;
  /** R_cell there [Ω] */
  readonly resistance: number;
}

/** What says the states of a cell. */
export interface CellLaw {
  /** open circuit, by rising charge from 0 to 1 [-, V] */
  readonly curve: ByCharge;
  /** R_cell, the same at every charge where no curve says more [Ω] */
  readonly resistance: number;
  /** R_cell by charge, as discharges showed it [-, Ω]; absent or null: one for all charges */
  readonly resistanceCurve?: ByCharge | null;
}

function along(points: ByCharge, charge: number): number {
  const after = points.findIndex(([z]) => z >= charge);
  if (after < 0) return points[points.length - 1][1];
  if (after === 0) return points[0][1];
  const [[z0, r0], [z1, r1]] = [points[after - 1], points[after]];
  return r0 + ((charge - z0) / (z1 - z0)) * (r1 - r0);
}

/** @returns whether a cell's resistance differs from charge to charge */
export function resistanceVaries({ resistance, resistanceCurve }: Omit<CellLaw, "curve">): boolean {
  return resistanceCurve?.some(([, each]) => each !== resistance) ?? false;
}

/**
 * Resistance of a cell by its charge.
 *
 *     R_cell(z): straight between the points of its curve, as at its ends beyond them;  one R without a curve
 *
 * @param cell - R [Ω], its curve [-, Ω]
 * @param charge - z [-]
 * @returns R_cell [Ω]
 *
 * Valid at the temperature that the cell's resistance is told for. Source: docs/method/fits/discharge.md
 */
export function cellResistance(cell: Omit<CellLaw, "curve">, charge: number): number {
  const { resistance, resistanceCurve } = cell;
  return resistanceCurve && resistanceVaries(cell) ? along(resistanceCurve, charge) : resistance;
}

/**
 * A cell's state by its charge.
 *
 *     V_oc(z) by {@link openCircuitCurve}, R_cell(z) by {@link cellResistance}
 *
 * @param cell - its curves [-, V, Ω]
 * @param charge - z, 0…1 [-]
 * @returns V_oc [V] and R_cell [Ω]
 * @throws {OutOfRangeError} as the curve
 *
 * Valid and source: as the two
 */
export function cellAt(cell: CellLaw, charge: number): CellState {
  return { voltage: openCircuitCurve(cell.curve)(charge), resistance: cellResistance(cell, charge) };
}

/**
 * Charge of a cell by its voltage at rest.
 *
 *     V_oc(z) = V, inverse of the cell's curve
 *
 * @param cell - with its open-circuit curve, rising [-, V]
 * @param voltage - V at rest [V]
 * @returns z [-]; null where the curve does not reach the voltage
 * @throws {OutOfRangeError} on a curve that can't be
 *
 * Valid for a rising curve. Source: docs/method/run-down.md
 */
export function chargeAt(cell: Pick<CellLaw, "curve">, voltage: number): number | null {
  const curve = openCircuitCurve(cell.curve);
  if (!(voltage >= curve(0) && voltage <= curve(1))) return null;
  return findRoot((charge) => curve(charge) - voltage, 0, 1).root;
}

/** Repetitions that find a stand-in's voltage to rounding: each leaves R·dI/dV of the error, some hundredths. */
const ROUNDS = 8;

/**
 * Voltage of a cell of another resistance that gives the same current.
 *
 *     V′ = V − (R − R₀)·I(V′): behind R₀ it stands where the cell itself does behind R
 *
 * @param cell - V [V] and R [Ω]
 * @param resistance - R₀ of the stand-in [Ω]
 * @param currentAt - I of one cell by V′, with R₀ [A]
 * @returns V′ at rest [V]; V itself where R is R₀
 *
 * Valid for a sag in proportion to the current, as long as R·dI/dV stays below 1. Source: Kirchhoff's laws
 */
export function standInVoltage(
  { voltage, resistance: own }: CellState,
  resistance: number,
  currentAt: (voltage: number) => number,
): number {
  const more = own - resistance;
  if (more === 0) return voltage;
  let standIn = voltage;
  for (let i = 0; i < ROUNDS; i++) standIn = voltage - more * currentAt(standIn);
  return standIn;
}

/**
 * A cell's state by its voltage at rest.
 *
 *     R_cell at the charge where V_oc(z) = V;  beyond the curve as at its nearer end
 *
 * @param cell - its curves [-, V, Ω]
 * @param voltage - V at rest [V]
 * @returns the voltage as given [V] and R_cell [Ω]
 * @throws {OutOfRangeError} on a curve that can't be
 *
 * Valid and source: as {@link chargeAt} and {@link cellResistance}
 */
export function cellAtVoltage(cell: CellLaw, voltage: number): CellState {
  if (!resistanceVaries(cell)) return { voltage, resistance: cell.resistance };
  const end = voltage < cell.curve[0][1] ? 0 : 1;
  return { voltage, resistance: cellResistance(cell, chargeAt(cell, voltage) ?? end) };
}
