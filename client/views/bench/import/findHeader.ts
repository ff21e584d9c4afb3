import { looksRead, saysNothing } from "./sniff.ts";

/** Where a table stands among rows. */
export interface TablePlace {
  /** index of the row with the columns' names; null where none has them */
  readonly header: number | null;
  /** index of a row under it that has units alone; null where none does */
  readonly units: number | null;
  /** index of the first row with readings */
  readonly first: number;
}

type Cells = readonly string[];

const isBlank = (cells: Cells): boolean => cells.every((cell) => cell.trim() === "");
const filled = (cells: Cells): number => cells.filter((cell) => cell.trim() !== "").length;

/** Half of what a row says is read. */
function mayBeReadings(cells: Cells): boolean {
  const said = cells.filter((cell) => !saysNothing(cell));
  return said.length > 0 && said.filter(looksRead).length * 2 >= said.length;
}

/** Indices of the rows of one width that read most together: the table's readings, ragged and spoilt ones apart. */
function readingsOf(rows: readonly Cells[]): number[] {
  const byWidth = new Map<number, { indices: number[]; read: number }>();
  for (const [i, cells] of rows.entries()) {
    if (!mayBeReadings(cells)) continue;
    const group = byWidth.get(cells.length) ?? { indices: [], read: 0 };
    byWidth.set(cells.length, group);
    group.indices.push(i);
    group.read += cells.filter(looksRead).length;
  }
  const most = [...byWidth.values()].reduce((best, each) => (each.read > best.read ? each : best), {
    indices: [],
    read: 0,
  });
  return most.indices;
}

/** Above the readings a preamble may have their width: what hardly reads in their lower half is none of them. */
function firstReading(rows: readonly Cells[], readings: readonly number[]): number {
  const lower = readings.slice(Math.floor(readings.length / 2));
  const columns = rows[readings[0]].map((_, column) => {
    const said = lower.filter((i) => !saysNothing(rows[i][column]));
    return said.filter((i) => looksRead(rows[i][column])).length * 2 > said.length;
  });
  const belongs = (i: number) =>
    columns.every((reads, column) => !reads || looksRead(rows[i][column]) || saysNothing(rows[i][column]));
  return readings.find(belongs) ?? readings[0];
}

/** A unit is short, has no digits in front, and may stand in brackets. */
const UNIT = /^[[(]?\s*[\p{L}°%µΩ/][\p{L}\d°%µΩ/·²³^* -]{0,9}\s*[\])]?$/u;

const isNames = (cells: Cells): boolean => !isBlank(cells) && !mayBeReadings(cells);
const isUnits = (cells: Cells): boolean =>
  !isBlank(cells) && cells.every((cell) => saysNothing(cell) || UNIT.test(cell.trim()));

/** Names reach as far as the readings under them. */
const reaches = (names: Cells, readings: Cells): boolean =>
  names.length === readings.length || filled(names) >= readings.length;

/**
 * Finds the table below whatever a meter wrote above it.
 *
 * @param rows - the first rows of a file, blank ones among them
 * @param isUnit - whether a text is a unit of anything
 * @returns where its names, units and readings begin
 */
export function findHeader(rows: readonly Cells[], isUnit: (text: string) => boolean): TablePlace {
  const readings = readingsOf(rows);
  if (readings.length === 0) {
    const top = Math.max(
      0,
      rows.findIndex((cells) => !isBlank(cells)),
    );
    return { header: top, units: null, first: top + 1 };
  }
  const first = firstReading(rows, readings);
  const textual = rows.map((_, i) => i).filter((i) => i < first && isNames(rows[i]));
  const reaching = textual.filter((i) => reaches(rows[i], rows[first]));
  // where every line is ragged, none fits its names
  const named = reaching.length > 0 ? reaching : textual.filter((i) => filled(rows[i]) > 1);
  const nearest = named.at(-1);
  const next = named.at(-2);
  if (nearest === undefined) return { header: null, units: null, first };
  const hasUnits = isUnits(rows[nearest]) && rows[nearest].some((cell) => isUnit(bare(cell)));
  const namesEach = (i: number) =>
    rows[nearest].every((unit, column) => saysNothing(unit) || rows[i][column]?.trim());
  return hasUnits && next !== undefined && namesEach(next)
    ? { header: next, units: nearest, first: nearest + 1 }
    : { header: nearest, units: null, first: nearest + 1 };
}

const bare = (cell: string): string => cell.replace(/[[\]()]/g, "").trim();

/** @returns the names of the columns with the units of the row under them, "Time [s]" */
export function namesOf(rows: readonly Cells[], { header, units, first }: TablePlace): string[] {
  if (header === null) return rows[first].map((_, i) => `column ${i + 1}`);
  return rows[header].map((name, i) => {
    const unit = units === null ? "" : bare(rows[units][i] ?? "");
    return unit === "" || /[[(]/.test(name) ? name.trim() : `${name.trim()} [${unit}]`;
  });
}
