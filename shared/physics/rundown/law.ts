import { cellAt } from "../cells/cell.ts";
import type { Pull } from "../hold/pull.ts";
import { RPM } from "../motor.ts";
import type { Note } from "../note.ts";
import { packCurrent, packVoltage } from "../pack.ts";
import { packAt } from "../point/machine.ts";
import { drawOf } from "./draw.ts";
import type { RundownInput } from "./input.ts";

/** Everything that is true of a run at one moment, and how fast its state changes. */
export interface Moment {
  /** since the start [s] */
  readonly time: number;
  /** z [-] */
  readonly charge: number;
  /** ΔT of the winding over the air [K]; 0 where it has no time constant */
  readonly rise: number;
  /** dz/dt [1/s] */
  readonly chargeRate: number;
  /** dΔT/dt [K/s] */
  readonly riseRate: number;
  readonly packVoltage: number;
  /** of one cell, loaded [V] */
  readonly cellVoltage: number;
  readonly packCurrent: number;
  readonly windingTemperature: number;
  readonly rpm: number;
  /** of the cavity [Pa]; null with a propeller */
  readonly pressure: number | null;
  /** F_s, jet included, or thrust [N] */
  readonly suction: number;
  /** the same as it presses on, giving where the running gear gives [N] */
  readonly pull: Pull;
  /** the rotor turns, and its point lasts */
  readonly works: boolean;
  /** δ [-] */
  readonly duty: number;
  /** throttle that a controller has left [-]; infinite without one */
  readonly spare: number;
  /** the same moment under each load of the drive cycle, by rising current; the figures above are their mean then */
  readonly under?: readonly Moment[];
}

export interface RundownLaw {
  readonly momentAt: (time: number, charge: number, rise: number) => Moment;
  /** notes of the prediction at a charge, its winding settled [-] */
  readonly notesAt: (charge: number) => readonly Note[];
}

/** dΔT/dt = (I²·R_m·R_th − ΔT)/τ_th; null where the winding has no time constant. */
function heating({
  motor,
}: RundownInput): ((current: number, resistance: number, rise: number) => number) | null {
  const { thermalResistance, thermalTimeConstant } = motor;
  if (thermalResistance === null || thermalTimeConstant === null || thermalTimeConstant === undefined)
    return null;
  return (current, resistance, rise) =>
    (current ** 2 * resistance * thermalResistance - rise) / thermalTimeConstant;
}

/**
 * The law of a run-down under a steady load: from charge and winding temperature to everything else, and to their rates.
 *
 *     dz/dt = −I_pack/(N_p·C_cell),  τ_th·dΔT/dt = I²·R_m(T)·R_th − ΔT,  I from the operating point at V_oc(z), R_cell(z) and T
 *
 * @param input - build with its cell, all SI [-]
 * @returns the law, asked by time [s], charge [-] and winding rise [K]
 * @throws {OutOfRangeError} with the path of a number that can't be
 *
 * Valid for charges from 1 down; a trial step that overshoots the empty cell sees the curve's end there.
 * Source: docs/method/run-down.md
 */
export function steadyLaw(input: RundownInput): RundownLaw {
  const { cell, parallel } = input.pack;
  const cellOf = (charge: number) => cellAt(cell, Math.max(0, charge));
  const { circuit, at, notesAt } = drawOf(input, cellOf(1));
  const heat = heating(input);
  const momentAt = (time: number, charge: number, rise: number): Moment => {
    const state = cellOf(charge);
    const drawn = at(state, heat ? input.air.temperature + rise : undefined);
    const { speed, current, windingResistance, windingTemperature, pressure, suction, pull, works } = drawn;
    const { duty, spare } = drawn;
    const supply = { ...circuit.supply, duty, ...packAt(input.pack, state) };
    const fromPack = packCurrent(supply, current);
    return {
      time,
      charge,
      rise,
      chargeRate: -fromPack / (parallel * cell.capacity),
      riseRate: heat ? heat(current, windingResistance, rise) : 0,
      packVoltage: packVoltage(supply, current),
      cellVoltage: state.voltage - (state.resistance * fromPack) / parallel,
      packCurrent: fromPack,
      windingTemperature,
      rpm: speed / RPM,
      pressure,
      suction,
      pull,
      works,
      duty,
      spare,
    };
  };
  return { momentAt, notesAt: (charge) => notesAt(cellOf(charge)) };
}
