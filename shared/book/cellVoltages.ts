import type { Build } from "../model/build.ts";
import { answerOrNull } from "../numeric/errors.ts";
import { findRoot } from "../numeric/root.ts";
import { assemble } from "../physics/assembly.ts";
import { type CellState, cellAt, cellAtVoltage } from "../physics/cells/cell.ts";
import { crossingNear } from "../physics/operatingPoint.ts";
import type { PredictInput } from "../physics/predict.ts";
import { type AnyPredictInput, atCell, isPropeller } from "../physics/predictAny.ts";
import { type PropellerPredictInput, predictPropeller } from "../physics/propeller.ts";
import type { CellInput } from "../physics/rundown.ts";
import { type Resolved, solvable } from "./resolve/resolved.ts";

/** Open-circuit voltages of one cell at the states that Match draws [V]. */
export interface CellVoltages {
  readonly full: number;
  readonly rest: number;
  /** where the loaded cell reaches its minimum, or the empty cell's, whichever comes first */
  readonly cutOff: number;
}

/** Digits to which the cut-off is worth knowing [-]. */
const TOLERANCE = 1e-6;

/** Pack current by the cells' state, each crossing looked for next to the one before. */
function packCurrentLaw(input: PredictInput): (cell: CellState) => number {
  let phi = 0;
  return (cell) => {
    const { machine, leak } = assemble(atCell(input, cell));
    const point = crossingNear(machine, leak, phi);
    phi = point?.phi ?? phi;
    return input.supply.duty * (point?.current ?? 0) + input.supply.auxCurrent;
  };
}

function propellerCurrentLaw(input: PropellerPredictInput): (cell: CellState) => number {
  return (cell) => predictPropeller(atCell(input, cell), []).point?.packCurrent ?? input.supply.auxCurrent;
}

/**
 * Open-circuit voltage at which a cell under the build's own load reaches its minimum.
 *
 *     V_oc − R_cell·I_pack/N_p = V_min
 *
 * @param input - build, all SI
 * @param cell - minimum voltage [V], open-circuit curve [-, V], resistance [Ω]
 * @returns V_oc of one cell [V], within its curve
 */
export function cutOffVoltage(
  input: AnyPredictInput,
  cell: Pick<CellInput, "curve" | "minimumVoltage" | "resistance" | "resistanceCurve">,
): number {
  const [empty, full] = [cellAt(cell, 0).voltage, cellAt(cell, 1).voltage];
  const packCurrent = isPropeller(input) ? propellerCurrentLaw(input) : packCurrentLaw(input);
  const excess = (voltage: number) => {
    const state = cellAtVoltage(cell, voltage);
    return voltage - (state.resistance * packCurrent(state)) / input.pack.parallel - cell.minimumVoltage;
  };
  if (excess(empty) >= 0) return empty;
  if (excess(full) <= 0) return full;
  return findRoot(excess, empty, full, { tolerance: TOLERANCE }).root;
}

/**
 * Voltages of a cell at the states that Match draws; worked out where they are drawn, since no other figure asks.
 *
 * @param build - a stored build, or one changed by what-if handles
 * @param resolved - the same build made into numbers
 * @returns open-circuit voltages of one cell [V]; null where the build has no numbers, or none of them has an answer
 */
export function cellVoltages({ charge }: Pick<Build, "charge">, resolved: Resolved): CellVoltages | null {
  const [input, cell] = [solvable(resolved), resolved.pack?.cell];
  if (!input || !cell) return null;
  return answerOrNull(() => ({
    full: cellAt(cell, 1).voltage,
    rest: cellAt(cell, charge).voltage,
    cutOff: cutOffVoltage(input, cell),
  }));
}
