export const DELIMITERS = [",", ";", "\t", "|"] as const;

/** What a meter writes where it read nothing; it says nothing of what a column is. */
const NOTHING = /^(nan|n\/?a|null|none|inf|-+|\.\.+|\?)?$/i;
const NUMBER = /^[+\-\u2212]?(\d[\d\u2009\u202f\u00a0' ]*)?([.,]\d*)*(e[+-]?\d+)?$/i;
const WITH_UNIT = /^[+\-\u2212]?\d[\d.,]*\s?[^\d\s.,;]\S{0,7}$/;
/** 0:01:23, 12:00:03.5, 2026-03-14T12:00:03Z, 14.03.2026 12:00 */
const TIME =
  /^(\d{1,4}[-./]\d{1,2}[-./]\d{1,4}[T ]?)?(\d{1,3}:\d{2}(:\d{2}([.,]\d+)?)?)?(Z|[+-]\d{2}:?\d{2})?$/;

/** @returns whether a cell reads as a number, a time or a reading with its unit, by either decimal sign */
export function looksRead(cell: string): boolean {
  const bare = cell.trim();
  if (!/\d/.test(bare)) return false;
  return NUMBER.test(bare) || TIME.test(bare) || WITH_UNIT.test(bare);
}

/** @returns whether a cell says nothing, empty or as meters write it */
export function saysNothing(cell: string): boolean {
  return NOTHING.test(cell.trim());
}

/** Cells of a line, delimiters in quotes passed over; near enough to compare delimiters. */
function roughCells(line: string, delimiter: string): string[] {
  return line.replace(/"[^"]*"/g, (quoted) => quoted.replaceAll(delimiter, "")).split(delimiter);
}

/** How well a delimiter makes a table of some lines: those of the most frequent width, by how much of each reads. */
function worth(lines: readonly string[], delimiter: string): number {
  const rows = lines.map((line) => roughCells(line, delimiter)).filter((cells) => cells.length > 1);
  const widths = new Map<number, number>();
  for (const cells of rows) widths.set(cells.length, (widths.get(cells.length) ?? 0) + 1);
  const [width] = [...widths].reduce((best, each) => (each[1] > best[1] ? each : best), [0, 0]);
  return rows
    .filter((cells) => cells.length === width)
    .reduce((sum, cells) => {
      const clean = cells.filter((cell) => looksRead(cell) || saysNothing(cell) || !/[,;\t|]/.test(cell));
      const read = cells.filter(looksRead);
      return sum + (1 + read.length) * (clean.length / cells.length);
    }, 0);
}

/** @returns the delimiter that makes the best table of some lines; a comma where none makes any */
export function guessDelimiter(lines: readonly string[]): string {
  const worths = DELIMITERS.map((delimiter) => worth(lines, delimiter));
  const most = Math.max(...worths);
  return most === 0 ? "," : DELIMITERS[worths.indexOf(most)];
}

/** @returns the decimal sign that more cells have */
export function guessDecimal(rows: readonly (readonly string[])[]): "." | "," {
  let commas = 0;
  let points = 0;
  for (const cell of rows.flat()) {
    if (/^\s*[+-]?\d*,\d+/.test(cell)) commas++;
    else if (/^\s*[+-]?\d*\.\d+/.test(cell)) points++;
  }
  return commas > points ? "," : ".";
}
