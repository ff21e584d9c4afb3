import { NotEnoughDataError } from "../numeric/errors.ts";
import { gapHeightsFromLeak, type LeakRig, type LipLeakTest } from "./gapHeight.ts";

/** Leak tests of one skirt set to one gap, on a surface and on a smooth one. */
export interface RoughnessSet {
  readonly rig: LeakRig;
  readonly surface: readonly LipLeakTest[];
  readonly smooth: readonly LipLeakTest[];
}

/** Mean height of a lip over several tests. */
export interface MeanHeight {
  /** [m] */
  readonly height: number;
  /** standard [m] */
  readonly error: number;
}

/** What one skirt at one gap tells. */
export interface SetDifference {
  readonly rough: MeanHeight;
  readonly smooth: MeanHeight;
  /** [m] */
  readonly difference: number;
  /** of the difference [m²] */
  readonly variance: number;
}

export interface JointRoughness {
  /** how much more the lip stands off on the surface than on the smooth one [m] */
  readonly difference: number;
  /** standard [m] */
  readonly uncertainty: number;
  /** as the readings' own scatter alone would have it [m] */
  readonly withinTests: number;
  /** tests whose height counts */
  readonly tests: number;
  /** by how much the tests scatter more than their readings say; 1 where they don't [-] */
  readonly inflation: number;
  /** what each set that counts tells by itself */
  readonly sets: readonly SetDifference[];
}

/** No two readings of a leak agree better than this: a test without scatter isn't known without end [-]. */
const FINEST = 1e-6;

type Heights = readonly number[];

/**
 * Roughness from all leak tests that can be compared: those of one skirt at one gap, on the surface and on a smooth one.
 *
 *     h = H_set (+ r on the surface), weights 1/u²(h), u(h) = s·h/√n, s the relative scatter of readings pooled over all tests:  r = Σ dₖ/vₖ / Σ 1/vₖ, dₖ the difference of set k's mean heights;  u²(r) = max(1, χ²/ν)/Σ(1/vₖ)
 *
 * @param sets - rig: the skirt as it was read [m, -]; tests: readings [Pa, m³/s] at their own air [kg/m³, Pa·s]
 * @returns r and its standard uncertainty [m], and how the tests agree [-]
 * @throws {NotEnoughDataError} where no set has tests on both, or every test is a single reading
 * @throws {OutOfRangeError} on a lip or air that can't be
 *
 * Valid where each skirt stood the same in all of its tests. One pair of tests can't show how well the skirt is set anew.
 * Source: weighted least squares with the Birge ratio, Birge, Phys. Rev. 40 (1932) 207; {@link gapHeightsFromLeak}
 */
export function jointRoughness(sets: readonly RoughnessSet[]): JointRoughness {
  const read = sets.flatMap((set) => {
    const [surface, smooth] = [set.surface, set.smooth].map((tests) => heightsOf(set.rig, tests));
    return surface.length > 0 && smooth.length > 0 ? [{ surface, smooth }] : [];
  });
  const scatter = pooledScatter(read.flatMap(({ surface, smooth }) => [...surface, ...smooth]));
  const told = read.map(({ surface, smooth }) => ({
    surface: surface.map((heights) => judged(heights, scatter)),
    smooth: smooth.map((heights) => judged(heights, scatter)),
  }));
  const parts = told.map(partOf);
  const weight = parts.reduce((sum, { variance }) => sum + 1 / variance, 0);
  const difference = parts.reduce((sum, part) => sum + part.difference / part.variance, 0) / weight;
  const tests = told.reduce((sum, set) => sum + set.surface.length + set.smooth.length, 0);
  const free = tests - told.length - 1;
  const chiSquare = told.reduce((sum, set, k) => {
    const off = (parts[k].difference - difference) ** 2 / parts[k].variance;
    return sum + spread(set.surface, parts[k].rough) + spread(set.smooth, parts[k].smooth) + off;
  }, 0);
  const inflation = free > 0 ? Math.max(1, Math.sqrt(chiSquare / free)) : 1;
  const withinTests = 1 / Math.sqrt(weight);
  return { difference, uncertainty: inflation * withinTests, withinTests, tests, inflation, sets: parts };
}

function partOf(set: {
  readonly surface: readonly MeanHeight[];
  readonly smooth: readonly MeanHeight[];
}): SetDifference {
  const [rough, smooth] = [meanOf(set.surface), meanOf(set.smooth)];
  const difference = rough.height - smooth.height;
  return { rough, smooth, difference, variance: rough.error ** 2 + smooth.error ** 2 };
}

/** The gap heights of each test's readings; tests without a usable one are left out. */
function heightsOf(rig: LeakRig, tests: readonly LipLeakTest[]): Heights[] {
  return tests.flatMap((test) => {
    try {
      return [gapHeightsFromLeak(rig, test)];
    } catch (error) {
      if (error instanceof NotEnoughDataError) return [];
      throw error;
    }
  });
}

const average = (values: Heights) => values.reduce((sum, value) => sum + value, 0) / values.length;

/** Relative scatter of single readings: one rig made all of them, and three or four readings alone say little of their own. */
function pooledScatter(tests: readonly Heights[]): number {
  const squares = tests.reduce((sum, heights) => {
    const middle = average(heights);
    return sum + heights.reduce((own, height) => own + (height / middle - 1) ** 2, 0);
  }, 0);
  const free = tests.reduce((sum, heights) => sum + heights.length - 1, 0);
  if (free > 0) return Math.max(FINEST, Math.sqrt(squares / free));
  throw new NotEnoughDataError(
    "No skirt has leak tests on both surfaces at one gap with two readings or more.",
    "Take three readings or more on each, with the skirt set the same.",
    "tests",
  );
}

function judged(heights: Heights, scatter: number): MeanHeight {
  const height = average(heights);
  return { height, error: (scatter * height) / Math.sqrt(heights.length) };
}

function meanOf(heights: readonly MeanHeight[]): MeanHeight {
  const weight = heights.reduce((sum, { error }) => sum + 1 / error ** 2, 0);
  const height = heights.reduce((sum, each) => sum + each.height / each.error ** 2, 0) / weight;
  return { height, error: 1 / Math.sqrt(weight) };
}

const spread = (heights: readonly MeanHeight[], mean: MeanHeight): number =>
  heights.reduce((sum, { height, error }) => sum + ((height - mean.height) / error) ** 2, 0);
