import { formatDigits, formatFixed, formatPlain, formatQuantity } from "../../units/format.ts";
import type { Note } from "../note.ts";
import { WINDING_ALARM } from "../point/notes.ts";
import { lowestCell } from "./events.ts";
import type { RundownInput } from "./input.ts";
import type { Moment, RundownLaw } from "./law.ts";

const MINUTE = 60;
const minutes = (time: number): string => `${formatFixed(time / MINUTE, 1)} min`;

/** The prediction's own, each once; its winding is settled, the run's need not be. */
function settledNotes(law: RundownLaw, start: Moment, end: Moment): Note[] {
  const all = [start, end].flatMap(({ charge }) => law.notesAt(charge));
  const first = (note: Note, i: number) => all.findIndex(({ code }) => code === note.code) === i;
  return all.filter((note, i) => first(note, i) && note.code !== "winding-too-hot");
}

const warm = (kelvin: number) => formatQuantity(kelvin, "temperature", { decimals: 0 });

function windingNotes(rows: readonly Moment[]): Note[] {
  const hot = rows.find(({ windingTemperature }) => windingTemperature > WINDING_ALARM);
  if (!hot) return [];
  const hottest = rows.reduce((most, { windingTemperature }) => Math.max(most, windingTemperature), 0);
  const message = `The winding passes ${warm(WINDING_ALARM)}, the class of common enamelled wire, after ${minutes(hot.time)} and reaches ${warm(hottest)}.`;
  return [{ code: "winding-too-hot", message }];
}

function pointNotes(rows: readonly Moment[]): Note[] {
  const lost = rows[0].works ? rows.find(({ works }) => !works) : undefined;
  if (!lost) return [];
  const message = `From ${minutes(lost.time)} on the rotor has no operating point that lasts: nothing is held any more.`;
  return [{ code: "point-lost", message }];
}

/** @returns pack current under the heaviest load of the moment [A] */
function mostCurrent(moment: Moment): number {
  return (moment.under ?? [moment]).reduce((most, { packCurrent }) => Math.max(most, packCurrent), 0);
}

function cellNotes(input: RundownInput, rows: readonly Moment[]): Note[] {
  const { cell, parallel } = input.pack;
  const notes: Note[] = [];
  const most = rows.reduce((sum, row) => Math.max(sum, mostCurrent(row)), 0) / parallel;
  const { maxCurrent = Number.POSITIVE_INFINITY } = cell;
  if (most > maxCurrent) {
    const message = `A cell gives up to ${formatDigits(most, 3)} A, above the ${formatPlain(maxCurrent)} A that its maker allows.`;
    notes.push({ code: "cell-current-high", message });
  }
  if (rows.length === 1) {
    const message = `Under this load the cell is at ${formatFixed(lowestCell(rows[0]), 2)} V from the start, not above its minimum of ${formatPlain(cell.minimumVoltage)} V: there is no run.`;
    notes.push({ code: "below-minimum-at-start", message });
  }
  return notes;
}

/**
 * What a reader should know about a run-down.
 *
 *     the prediction's notes at start and end; winding, point and cell along the run
 *
 * @param input - build with its cell, all SI [-]
 * @param law - of the run-down [-]
 * @param rows - every moment of the run [-]
 * @returns notes, each once [-]
 * @throws {NotEnoughDataError} as {@link predict}
 *
 * Valid for any run. Source: docs/method/run-down.md
 */
export function rundownNotes(input: RundownInput, law: RundownLaw, rows: readonly Moment[]): Note[] {
  return [
    ...settledNotes(law, rows[0], rows[rows.length - 1]),
    ...windingNotes(rows),
    ...pointNotes(rows),
    ...cellNotes(input, rows),
  ];
}
