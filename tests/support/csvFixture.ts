import { readFileSync } from "node:fs";

export type CsvRow = Readonly<Record<string, string>>;

/** Rows of a fixture by the names in its first line: `csvFixture("venturi/rows.csv")`. */
export function csvFixture(path: string): CsvRow[] {
  const text = readFileSync(new URL(`../fixtures/${path}`, import.meta.url), "utf8");
  const [head, ...lines] = text.trim().split(/\r?\n/);
  const names = head.split(",");
  return lines.map((line) => Object.fromEntries(line.split(",").map((cell, i) => [names[i], cell])));
}

/** The same with every cell as a number. */
export function numberFixture(path: string): Readonly<Record<string, number>>[] {
  return csvFixture(path).map((row) =>
    Object.fromEntries(Object.entries(row).map(([name, cell]) => [name, Number(cell)])),
  );
}

/** Value that a share of the sorted values lies below, by linear interpolation [unit of the values]. */
export function quantileOf(values: readonly number[], share: number): number {
  const sorted = [...values].sort((a, b) => a - b);
  const place = share * (sorted.length - 1);
  const below = Math.floor(place);
  return sorted[below] + (place - below) * (sorted[Math.ceil(place)] - sorted[below]);
}

export function rootMeanSquare(values: readonly number[]): number {
  return Math.sqrt(values.reduce((sum, value) => sum + value ** 2, 0) / values.length);
}
