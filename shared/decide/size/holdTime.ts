import {
  type CellState,
  cellAt,
  chargeAt,
  resistanceVaries,
  standInVoltage,
} from "../../physics/cells/cell.ts";
import { type AnyPredictInput, atCell } from "../../physics/predictAny.ts";
import type { CellInput } from "../../physics/rundown.ts";
import { pulled } from "../wanted.ts";

/** Intervals of charge over which 1/I is summed. */
const INTERVALS = 64;

/** 1/I_pack at a state of the cells [1/A]; NaN where the rotor stands. */
function inverseCurrent(build: AnyPredictInput, cell: CellState): number {
  return 1 / (pulled(atCell(build, cell)).point?.packCurrent ?? Number.NaN);
}

/** The parabola through three points, by divided differences. */
function parabola(x: readonly number[], y: readonly number[]): (at: number) => number {
  const near = (y[1] - y[0]) / (x[1] - x[0]);
  const far = (y[2] - y[1]) / (x[2] - x[1]);
  const square = (far - near) / (x[2] - x[0]);
  return (at) => y[0] + (at - x[0]) * (near + (at - x[1]) * square);
}

/** Simpson's rule on evenly spaced values. */
function simpson(values: readonly number[], width: number): number {
  const last = values.length - 1;
  const weighted = values.reduce((sum, value, i) => {
    if (i === 0 || i === last) return sum + value;
    return sum + (i % 2 === 1 ? 4 : 2) * value;
  }, 0);
  return (weighted * width) / (3 * last);
}

/**
 * How long a build does at least what it does at its own voltage: from a full cell down to that voltage at rest.
 *
 *     t = N_p·C·∫dz/I_pack(V_oc(z)) from z(V) to 1;  1/I_pack a parabola in V_oc through three operating points
 *     R_cell(z) of its own at each charge: V_oc by {@link standInVoltage}
 *
 * @param build - at the voltage that it is sized for, SI
 * @param cell - of its pack [C, V, Ω]
 * @returns t [s]; 0 at a full cell's voltage, null where the cell never rests at that voltage or the rotor stands
 * @throws {OutOfRangeError} on a cell that can't be
 *
 * Valid within about 0.3 % of {@link runDown}, the winding settled. Source: definition of capacity; docs/method/size.md
 */
export function holdTime(build: AnyPredictInput, cell: CellInput): number | null {
  const { openCircuitVoltage: last, parallel, cellResistance: resistance } = build.pack;
  const charge = chargeAt(cell, last);
  if (charge === null) return null;
  const first = cellAt(cell, 1).voltage;
  if (!(first > last)) return 0;
  const voltages = [first, (first + last) / 2, last];
  const inverse = parabola(
    voltages,
    voltages.map((voltage) => inverseCurrent(build, { voltage, resistance })),
  );
  const currentAt = (voltage: number) => 1 / (parallel * inverse(voltage));
  // With one R for all charges the build's own is that of the cell.
  const standIn = (z: number) =>
    resistanceVaries(cell) ? standInVoltage(cellAt(cell, z), resistance, currentAt) : cellAt(cell, z).voltage;
  const width = 1 - charge;
  const values = Array.from({ length: INTERVALS + 1 }, (_, i) =>
    inverse(standIn(charge + (width * i) / INTERVALS)),
  );
  const time = parallel * cell.capacity * simpson(values, width);
  return time > 0 ? time : null;
}
