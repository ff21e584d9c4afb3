import type { CellState } from "../cells/cell.ts";
import type { Pull } from "../hold/pull.ts";
import type { Note } from "../note.ts";
import type { Circuit } from "../point/machine.ts";
import type { Balance } from "../point/speed.ts";

/** What a build draws and how it pulls at one voltage and winding temperature. */
export interface Drawn extends Balance {
  /** of the cavity [Pa]; null with a propeller */
  readonly pressure: number | null;
  /** F_s, jet included, or thrust [N] */
  readonly suction: number;
  /** the same as it presses on, giving where the running gear gives [N] */
  readonly pull: Pull;
  /** the rotor turns, and its point lasts */
  readonly works: boolean;
  /** δ at this moment [-] */
  readonly duty: number;
  /** throttle that a controller has left, 1 − δ; below 0 where even full throttle is too little; infinite without one [-] */
  readonly spare: number;
}

/** A build, asked again and again while its cell empties. */
export interface Draw {
  /** the circuit at the full cell that it was put together with */
  readonly circuit: Circuit;
  /** at a state of the cells and a winding temperature, settled unless given [K] */
  readonly at: (cell: CellState, winding: number | undefined) => Drawn;
  /** notes of the prediction at a state of the cells */
  readonly notesAt: (cell: CellState) => readonly Note[];
}
