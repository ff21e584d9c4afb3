import { readFileSync } from "node:fs";

export interface NistNonlinearSet {
  readonly starts: readonly [number[], number[]];
  readonly coefficients: number[];
  readonly standardErrors: number[];
  readonly residualSd: number;
  readonly rss: number;
  readonly y: number[];
  readonly x: number[];
}

/** Reads a nonlinear set of the NIST Statistical Reference Datasets, starts, certified values and data, from tests/fixtures/nist. */
export function readNistNonlinearSet(name: string): NistNonlinearSet {
  const lines = readFileSync(new URL(`../fixtures/nist/${name}.dat`, import.meta.url), "utf8").split(/\r?\n/);
  const after = (heading: string): number =>
    Number(lines.find((line) => line.startsWith(heading))?.slice(heading.length));
  const parameters = lines
    .filter((line) => /^\s+b\d+\s+=/.test(line))
    .map((line) => line.replace(/^.*=/, "").trim().split(/\s+/).map(Number));
  const data = lines
    .slice(lines.findLastIndex((line) => line.startsWith("Data:")) + 1)
    .filter((line) => line.trim() !== "")
    .map((line) => line.trim().split(/\s+/).map(Number));
  if (data.length !== after("Number of Observations:")) throw new Error(`${name}: rows are missing`);
  return {
    starts: [parameters.map(([first]) => first), parameters.map(([, second]) => second)],
    coefficients: parameters.map(([, , estimate]) => estimate),
    standardErrors: parameters.map(([, , , sd]) => sd),
    residualSd: after("Residual Standard Deviation:"),
    rss: after("Residual Sum of Squares:"),
    y: data.map(([y]) => y),
    x: data.map(([, x]) => x),
  };
}
