import { describe, expect, it } from "vitest";
import { uncertainInputs } from "#shared/decide/uncertainInput.ts";
import { scrambledSobol } from "#shared/numeric/sobol.ts";

/**
 * Resistance, reactance and impedance from five simultaneous readings of voltage, current and phase: inputs that go together,
 * as one instrument's readings do. Source: JCGM 100:2008 (GUM), H.2, tables H.2 to H.4; readings and results from memory, the
 * means and standard uncertainties that it prints follow from the readings.
 */
const READINGS = [
  [5.007, 19.663e-3, 1.0456],
  [4.994, 19.639e-3, 1.0438],
  [5.005, 19.64e-3, 1.0468],
  [4.99, 19.685e-3, 1.0428],
  [4.999, 19.678e-3, 1.0433],
];
const COUNT = 4096;

const mean = (values: readonly number[]) => values.reduce((sum, value) => sum + value, 0) / values.length;
const covariance = (a: readonly number[], b: readonly number[]) => {
  const [middleA, middleB] = [mean(a), mean(b)];
  return mean(a.map((value, i) => (value - middleA) * (b[i] - middleB)));
};
const column = (i: number) => READINGS.map((row) => row[i]);
const [V, I, PHI] = [0, 1, 2];

/** Of the mean of five: their covariance over n − 1. */
const ofMeans = [V, I, PHI].map((i) =>
  [V, I, PHI].map((j) => covariance(column(i), column(j)) / (READINGS.length - 1)),
);

function sampled(): { readonly R: number[]; readonly X: number[]; readonly Z: number[] } {
  const copy = { read: [V, I, PHI].map((i) => mean(column(i))) };
  const paths = [V, I, PHI].map((i) => `read.${i}`);
  const inputs = uncertainInputs(copy, { uncertainty: {}, correlated: [{ paths, covariance: ofMeans }] });
  const dimensions = inputs.reduce((sum, each) => sum + each.dimensions, 0);
  const uniform = scrambledSobol(COUNT, dimensions, 1);
  const out = { R: [] as number[], X: [] as number[], Z: [] as number[] };
  for (let i = 0; i < COUNT; i++) {
    for (const { write } of inputs) write(uniform, i * dimensions, new Float64Array(dimensions));
    const [v, current, phi] = copy.read;
    out.R.push((v / current) * Math.cos(phi));
    out.X.push((v / current) * Math.sin(phi));
    out.Z.push(v / current);
  }
  return out;
}

describe("impedance from readings that go together", () => {
  const { R, X, Z } = sampled();
  const sd = (values: readonly number[]) => Math.sqrt(covariance(values, values));
  const correlation = (a: readonly number[], b: readonly number[]) => covariance(a, b) / (sd(a) * sd(b));

  it("has the printed means and standard uncertainties of the readings", () => {
    // table H.3, to its printed digits
    expect(mean(column(V))).toBeCloseTo(4.999, 4);
    expect(Math.sqrt(ofMeans[V][V])).toBeCloseTo(0.0032, 4);
    expect(Math.sqrt(ofMeans[I][I])).toBeCloseTo(9.5e-6, 7);
    expect(Math.sqrt(ofMeans[PHI][PHI])).toBeCloseTo(0.00075, 5);
  });

  // Table H.4: values to their printed digits, uncertainties to theirs and 2 % of sampling.
  it.each([
    ["R", R, 127.732, 0.071],
    ["X", X, 219.847, 0.295],
    ["Z", Z, 254.26, 0.236],
  ])("%s: as printed", (_, values, value, uncertainty) => {
    expect(Math.abs(mean(values) - value)).toBeLessThan(0.002);
    expect(Math.abs(sd(values) / uncertainty - 1)).toBeLessThan(0.02);
  });

  it.each([
    ["R, X", R, X, -0.588],
    ["R, Z", R, Z, -0.485],
    ["X, Z", X, Z, 0.993],
  ])("%s: go together as printed", (_, a, b, printed) => {
    expect(Math.abs(correlation(a, b) - printed)).toBeLessThan(0.01);
  });
});
