import { requireFinite, requirePositive } from "../../numeric/errors.ts";
import { CELSIUS_ZERO } from "../constants.ts";
import type { Note } from "../note.ts";

/** What the motor and its cells are doing, against what their makers allow; a limit that isn't known is null. */
export interface ElectricalState {
  /** at the motor, δ·V_b [V] */
  readonly motorVoltage: number;
  readonly ratedVoltage: number | null;
  /** of the winding [A] */
  readonly motorCurrent: number;
  readonly ratedCurrent: number | null;
  /** [K] */
  readonly windingTemperature: number;
  readonly windingLimit: number | null;
  /** of one cell, pack current over strings [A] */
  readonly cellCurrent: number;
  readonly cellCurrentLimit: number | null;
  /** of one cell under load [V] */
  readonly cellVoltage: number;
  readonly cellMinimumVoltage: number | null;
}

/**
 * What a voltage over the rated one does to a motor with a rotor on it.
 *
 *     pressure ∝ V²,  heat in the winding ∝ V³ or worse
 *
 * @param voltage - at the motor [V], > 0
 * @param rated - rated voltage [V], > 0
 * @returns voltage, pressure and least heat over those at the rated voltage [-]
 * @throws {OutOfRangeError} on a voltage that is not finite and above 0
 *
 * Valid as a rule of thumb near the rated voltage. Source: fan laws for the pressure; the heat is common practice, no source
 */
export function overVoltage(
  voltage: number,
  rated: number,
): { readonly ratio: number; readonly pressureRatio: number; readonly heatRatio: number } {
  const ratio = requirePositive("motor.voltage", voltage) / requirePositive("motor.ratedVoltage", rated);
  return { ratio, pressureRatio: ratio ** 2, heatRatio: ratio ** 3 };
}

/**
 * Which of the makers' limits a build passes.
 *
 *     a note where V, I, T, I_cell are above their limit or V_cell is below its own
 *
 * @param state - voltages [V], currents [A], temperatures [K] and their limits or null
 * @returns the notes, none within all limits [-]
 * @throws {OutOfRangeError} on a state that is not finite, a limit that is not above 0
 *
 * Valid for the limits that the makers state. Source: the makers' sheets
 */
export function electricalNotes(state: ElectricalState): Note[] {
  return [...motorNotes(state), ...cellNotes(state)];
}

function motorNotes(state: ElectricalState): Note[] {
  const { motorVoltage, ratedVoltage, motorCurrent, ratedCurrent, windingTemperature, windingLimit } = state;
  const notes: Note[] = [];
  if (exceeds("motor.voltage", motorVoltage, ratedVoltage)) {
    const { ratio, pressureRatio, heatRatio } = overVoltage(motorVoltage, ratedVoltage);
    notes.push({
      code: "motor-over-voltage",
      message: `The motor gets ${percent(ratio)} of its rated voltage: ${percent(pressureRatio)} of the pressure, ${percent(heatRatio)} of the heat or more.`,
    });
  }
  if (exceeds("motor.current", motorCurrent, ratedCurrent))
    notes.push({
      code: "motor-over-current",
      message: `The motor draws ${motorCurrent.toFixed(2)} A, its maker allows ${ratedCurrent.toFixed(2)} A.`,
    });
  if (exceeds("winding.temperature", windingTemperature, windingLimit))
    notes.push({
      code: "winding-too-hot",
      message: `The winding reaches ${celsius(windingTemperature)}, its limit is ${celsius(windingLimit)}.`,
    });
  return notes;
}

function cellNotes(state: ElectricalState): Note[] {
  const { cellCurrent, cellCurrentLimit, cellVoltage, cellMinimumVoltage } = state;
  const notes: Note[] = [];
  if (exceeds("cell.current", cellCurrent, cellCurrentLimit))
    notes.push({
      code: "cell-over-current",
      message: `Each cell gives ${cellCurrent.toFixed(1)} A, its maker allows ${cellCurrentLimit.toFixed(1)} A.`,
    });
  requireFinite("cell.voltage", cellVoltage);
  if (cellMinimumVoltage !== null && cellVoltage < requirePositive("cell.minimumVoltage", cellMinimumVoltage))
    notes.push({
      code: "cell-under-voltage",
      message: `A cell is at ${cellVoltage.toFixed(2)} V under load, below its minimum of ${cellMinimumVoltage.toFixed(2)} V.`,
    });
  return notes;
}

/** Whether a value passes a known limit; then the limit is known to be a number. */
function exceeds(quantity: string, value: number, limit: number | null): limit is number {
  requireFinite(quantity, value);
  return limit !== null && value > requirePositive(`${quantity} limit`, limit);
}

function percent(ratio: number): string {
  return `${(100 * ratio).toFixed(0)} %`;
}

function celsius(temperature: number): string {
  return `${(temperature - CELSIUS_ZERO).toFixed(0)} °C`;
}
