import { readFileSync } from "node:fs";

export interface NistLinearSet {
  readonly coefficients: number[];
  readonly standardErrors: number[];
  readonly residualSd: number;
  readonly rSquared: number;
  readonly rss: number;
  /** first column of the data */
  readonly y: number[];
  /** further columns of the data, one list a row */
  readonly x: number[][];
}

/** Reads a linear set of the NIST Statistical Reference Datasets, certified values and data, from tests/fixtures/nist. */
export function readNistLinearSet(name: string): NistLinearSet {
  const lines = readFileSync(new URL(`../fixtures/nist/${name}.dat`, import.meta.url), "utf8").split(/\r?\n/);
  const table = (heading: RegExp): string[] => {
    const [, from, to] = lines.map((line) => heading.exec(line)).find((match) => match !== null) ?? [];
    return lines.slice(Number(from) - 1, Number(to));
  };
  const certified = table(/Certified Values\s+\(lines (\d+) to (\d+)\)/);
  const only = (pattern: RegExp): number =>
    Number(certified.map((line) => pattern.exec(line)?.[1]).find((value) => value !== undefined));
  const parameters = certified
    .filter((line) => /^\s+B\d+\s/.test(line))
    .map((line) => numbers(line).slice(1));
  const data = table(/\bData\s+\(lines (\d+) to (\d+)\)/).map(numbers);
  return {
    coefficients: parameters.map(([estimate]) => estimate),
    standardErrors: parameters.map(([, sd]) => sd),
    residualSd: only(/Standard Deviation\s+(\S+)/),
    rSquared: only(/R-Squared\s+(\S+)/),
    rss: only(/Residual\s+\d+\s+(\S+)/),
    y: data.map(([y]) => y),
    x: data.map(([, ...x]) => x),
  };
}

function numbers(line: string): number[] {
  return line.trim().split(/\s+/).map(Number);
}

/** Matched digits: −log₁₀ of the relative error (of the absolute one where 0 is certified), 15 where nothing differs. Least of a list. */
export function matchedDigits(found: readonly number[], certified: readonly number[]): number {
  if (found.length !== certified.length) return Number.NaN;
  const digits = found.map((value, i) => {
    const error = Math.abs(value - certified[i]) / (Math.abs(certified[i]) || 1);
    return error === 0 ? 15 : Math.min(15, -Math.log10(error));
  });
  return Math.min(...digits);
}
