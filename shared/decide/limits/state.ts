import { OutOfRangeError } from "../../numeric/errors.ts";
import { type CellState, cellAt } from "../../physics/cells/cell.ts";
import { packCurrent, packVoltage } from "../../physics/pack.ts";
import { packAt } from "../../physics/point/machine.ts";
import { drawOf } from "../../physics/rundown/draw.ts";
import type { Draw, Drawn } from "../../physics/rundown/drawn.ts";
import type { RundownInput } from "../../physics/rundown.ts";

/** A build at constant charge. */
export interface State extends Drawn {
  readonly draw: Draw;
  /** one cell at the build's charge */
  readonly openCell: CellState;
  /** one cell, full */
  readonly fullCell: CellState;
  /** δ·V_b, at the driver's output [V] */
  readonly motorVoltage: number;
  /** of one cell [A] */
  readonly cellCurrent: number;
  /** of one cell, loaded [V] */
  readonly cellVoltage: number;
}

/** A build, asked at one charge after the other. */
export type StateAt = (charge: number, winding?: number) => State;

/**
 * Makes a build ready to be asked where it runs.
 *
 *     as {@link stateOf}, each operating point looked for next to the one before
 *
 * @param build - with its cell, all SI [-]
 * @returns where it runs at a charge [-] and a winding's temperature, settled unless given [K]
 * @throws {OutOfRangeError} with the path of a number that can't be
 *
 * Valid and source: as {@link stateOf}
 */
export function statesOf(build: RundownInput): StateAt {
  const { cell, parallel } = build.pack;
  const full = cellAt(cell, 1);
  const draw = drawOf(build, full);
  return (charge, winding) => {
    if (!(charge >= 0 && charge <= 1)) throw new OutOfRangeError("startCharge", charge, "0 to 1");
    const state = cellAt(cell, charge);
    const drawn = draw.at(state, winding);
    const supply = { ...build.supply, ...packAt(build.pack, state) };
    const cellCurrent = packCurrent(supply, drawn.current) / parallel;
    return {
      ...drawn,
      draw,
      openCell: state,
      fullCell: full,
      motorVoltage: build.supply.duty * packVoltage(supply, drawn.current),
      cellCurrent,
      cellVoltage: state.voltage - state.resistance * cellCurrent,
    };
  };
}

/**
 * Where a build runs at its charge.
 *
 *     V_m = δ·V_b,  I_cell = (δI + I_aux)/N_p,  V_cell = V_oc − R_cell·I_cell
 *
 * @param build - with its cell and start charge, all SI [-]
 * @param winding - temperature of the winding at this moment; settled unless given [K]
 * @returns speed [rad/s], currents [A], voltages [V], temperature [K]
 * @throws {OutOfRangeError} with the path of a number that can't be
 *
 * Valid once speed and pressure are steady, which they are long before the winding is warm. Source: docs/method/motor.md
 */
export function stateOf(build: RundownInput, winding?: number): State {
  return statesOf(build)(build.startCharge ?? 1, winding);
}
