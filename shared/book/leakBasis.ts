import { fitLeak, type LeakFit } from "../bench/leakFit.ts";
import { NotEnoughDataError } from "../numeric/errors.ts";
import type { MeasuredLeak } from "../physics/restriction/measuredLeak.ts";
import { toSI } from "../units/parse.ts";
import { type Bench, findById, oncePerBench, testsOf } from "./bench.ts";
import { airOfDay, inUse, leakPoints } from "./readings.ts";

export interface LeakBasis {
  readonly leak: MeasuredLeak;
  readonly fit: LeakFit;
  readonly testIds: readonly string[];
}

/** Shims closer than this to the gap asked for count as that gap [m]. */
const SAME_GAP = 1e-6;

function mean(values: readonly number[]): number {
  return values.reduce((sum, value) => sum + value, 0) / values.length;
}

function answerFor(bench: Bench, skirtId: string, surfaceId: string, gap: number): LeakBasis | null {
  const skirt = findById(bench.skirts, skirtId);
  const tests = testsOf(bench, "leak").filter(({ data }) => {
    const shim = data.gap ? toSI(data.gap, "length") : skirt?.data.gap;
    const sameGap = shim !== undefined && Math.abs(shim - gap) < SAME_GAP;
    return data.skirt === skirtId && data.surface === surfaceId && sameGap;
  });
  const points = tests.flatMap((test) => inUse(leakPoints(test.data)));
  if (points.length === 0) return null;
  const airs = tests.map((test) => airOfDay(test.data.air));
  const density = mean(airs.map((air) => air.density));
  const viscosity = mean(airs.map((air) => air.viscosity));
  try {
    const fit = fitLeak({ points });
    const leak = { coefficient: fit.coefficient, exponent: fit.exponent, density, viscosity };
    return { leak, fit, testIds: tests.map((test) => test.id) };
  } catch (error) {
    if (error instanceof NotEnoughDataError) return null;
    throw error;
  }
}

/** @returns the leak measured with this skirt on this surface at this gap [m]; null where no leak test says it */
export function leakBasis(bench: Bench, skirtId: string, surfaceId: string, gap: number): LeakBasis | null {
  return oncePerBench(bench, `leak ${skirtId} ${surfaceId} ${gap}`, () =>
    answerFor(bench, skirtId, surfaceId, gap),
  );
}
