import { normalQuantile } from "./normalQuantile.ts";
import { scrambledSobol } from "./sobol.ts";

/**
 * Quasi-random standard normal samples.
 *
 *     z = Φ⁻¹(u), u scrambled Sobol points
 *
 * @param count - number of samples, best a power of 2 [-]
 * @param dimensions - independent normal values in each sample, 1 to 64 [-]
 * @param seed - any whole number from 0 to 2³² − 1; the same seed gives the same samples [-]
 * @returns the samples one after another: value j of sample i at i·dimensions + j [-]
 * @throws {OutOfRangeError} on another count, more dimensions, another seed
 *
 * Valid for |z| < 6.4, where 32 bits end. Source: {@link scrambledSobol}, {@link normalQuantile}
 */
export function standardNormalSamples(count: number, dimensions: number, seed: number): Float64Array {
  return scrambledSobol(count, dimensions, seed).map(normalQuantile);
}
