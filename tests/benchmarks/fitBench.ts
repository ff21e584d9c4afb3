import { fitRotor } from "#shared/fit/rotorFit.ts";
import { readingAt } from "#tests/support/rotorReadings.ts";
import { type Repeated, repeated } from "./timing.ts";

const POINTS = 5000;
const RUNS = 25;
/** An invented rotor, and readings that miss it by up to a hundredth. */
const TRUTH = { psi: [1.05, -1.5, -32], lambda: [0.022, 1.1], phiMax: 0.16 };
const MISS = 0.01;
const GOLDEN = 0.618033988749895;

const polynomial = (powers: readonly number[], x: number) => powers.reduceRight((sum, c) => sum * x + c, 0);

/** The i-th reading: flows spread evenly, misses by the golden section's fractional parts. */
function reading(i: number) {
  const phi = (TRUTH.phiMax * i) / (POINTS - 1);
  const miss = 1 + MISS * (2 * ((i * GOLDEN) % 1) - 1);
  const psi = polynomial(TRUTH.psi, phi) * miss;
  return readingAt({ phi, psi, lambda: polynomial(TRUTH.lambda, phi) * miss, rpm: 12_000 + (i % 7) * 3000 });
}

export interface FitTimes extends Repeated {
  readonly points: number;
  readonly degree: number;
}

/** Fit of a rotor's two curves through 5 000 readings, their degrees chosen. */
export function timedFit(): FitTimes {
  const points = Array.from({ length: POINTS }, (_, i) => reading(i));
  let degree = 0;
  const times = repeated(() => {
    ({ degree } = fitRotor({ diameter: 0.05, points }));
  }, RUNS);
  return { ...times, points: POINTS, degree };
}
