import { scrambledSobol } from "../numeric/sobol.ts";
import { type Quantiles, quantilesOf } from "./spread.ts";
import { type Uncertainties, uncertainInputs } from "./uncertainInput.ts";

/** Of a spread that is kept and not shown while it is dragged. */
const SAMPLES = 512;
const SEED = 1;

/**
 * What the uncertainties of some numbers make of any one figure.
 *
 *     as {@link uncertaintyOf}: scrambled Sobol points through all of it, quantiles
 *
 * @param input - the numbers as stated [SI]
 * @param asked - what is uncertain among them [unit of each number]
 * @param figure - makes the law of the figure on the samples' own copy of the input, asked again after each sample [any unit]
 * @returns 5, 50 and 95 % [unit of the figure]
 * @throws {OutOfRangeError} as {@link uncertainInputs}, and whatever the figure throws
 *
 * Valid for numbers and groups independent of each other. Source: docs/method/uncertainty.md
 */
export function figureSpread<T extends object>(
  input: T,
  asked: Uncertainties,
  figure: (copy: T) => () => number,
): Quantiles {
  const copy = structuredClone(input);
  const inputs = uncertainInputs(copy, asked);
  const dimensions = inputs.reduce((sum, each) => sum + each.dimensions, 0);
  const uniform = scrambledSobol(SAMPLES, Math.max(1, dimensions), SEED);
  const independent = new Float64Array(Math.max(1, dimensions));
  const now = figure(copy);
  const values = new Float64Array(SAMPLES);
  for (let i = 0; i < SAMPLES; i++) {
    let place = i * dimensions;
    for (const each of inputs) {
      each.write(uniform, place, independent);
      place += each.dimensions;
    }
    values[i] = now();
  }
  return quantilesOf(values);
}
