import { NotEnoughDataError, OutOfRangeError, requirePositive } from "../numeric/errors.ts";
import { findRoot } from "../numeric/root.ts";
import type { Fluid } from "../physics/air.ts";
import type { Note } from "../physics/note.ts";
import { leakFlow } from "../physics/restriction/leak.ts";
import { type LeakingSkirt, skirtLeak } from "../physics/skirt.ts";

export interface LeakReading {
  /** depression in the cavity [Pa] */
  readonly pressure: number;
  /** [m³/s] */
  readonly flow: number;
}

export interface LipLeakTest {
  readonly points: readonly LeakReading[];
  readonly air: Fluid;
}

/** A skirt whose leak was read, with the openings that were open then; its height over the surface is what is looked for. */
export type LeakRig = Omit<LeakingSkirt, "gap" | "roughness" | "measuredLeak">;

export interface GapHeight {
  /** mean over the readings [m] */
  readonly height: number;
  /** of the mean; null on a single reading [m] */
  readonly standardError: number | null;
  /** of each reading that could be used [m] */
  readonly heights: readonly number[];
  readonly warnings: readonly Note[];
}

export interface RoughnessFit {
  /** how much more the lip stands off on the surface than on glass [m] */
  readonly roughness: number;
  /** standard; null where a test has a single reading [m] */
  readonly uncertainty: number | null;
  /** gap heights that match the tests [m] */
  readonly glass: GapHeight;
  readonly surface: GapHeight;
  readonly warnings: readonly Note[];
}

/** A difference beyond this many standard uncertainties is no chance [-]. */
const CLEAR = 2;

/**
 * Height of a lip from its leak: the height at which the skirt's leak passes the measured flow.
 *
 *     h: Q_leak(h, Δp) = Q, each reading by itself; mean and standard error over the readings
 *
 * @param rig - the skirt as it was read: lengths [m], loss [-], what was open beside the lip
 * @param test - readings: pressure [Pa], flow [m³/s]; air: density [kg/m³], viscosity [Pa·s]
 * @returns height [m], its standard error [m], the heights by reading [m]
 * @throws {OutOfRangeError} on a lip or air that can't be
 * @throws {NotEnoughDataError} where no reading has a pressure above 0 and more flow than leaks beside the lip
 *
 * Valid where the lip stands off evenly and does not move with the suction. Source: {@link skirtLeak}
 */
export function gapHeightFromLeak(rig: LeakRig, test: LipLeakTest): GapHeight {
  const heights = test.points.flatMap(({ pressure, flow }, i) => {
    if (Number.isNaN(pressure) || Number.isNaN(flow))
      throw new OutOfRangeError(`points.${i}`, Number.NaN, "numbers");
    if (!(pressure > 0)) return [];
    const height = heightFor(rig, test.air, pressure, flow);
    return height === null ? [] : [height];
  });
  if (heights.length === 0)
    throw new NotEnoughDataError(
      "No reading has a pressure above 0 and more flow than leaks beside the lip.",
      "Repeat the leak test, and check the openings' areas.",
      "points",
    );
  const n = heights.length;
  const height = heights.reduce((sum, h) => sum + h, 0) / n;
  const squares = heights.reduce((sum, h) => sum + (h - height) ** 2, 0);
  const skipped = test.points.length - n;
  return {
    height,
    standardError: n > 1 ? Math.sqrt(squares / (n - 1) / n) : null,
    heights,
    warnings: skipped > 0 ? [skippedNote(skipped)] : [],
  };
}

function skippedNote(count: number): Note {
  return {
    code: "skipped",
    message: `${count} readings without pressure, or with less flow than leaks beside the lip, were left out.`,
  };
}

/** Null where as much leaks with the lip on the surface. */
function heightFor(rig: LeakRig, air: Fluid, pressure: number, flow: number): number | null {
  const velocity = Math.sqrt((2 * pressure) / requirePositive("air.density", air.density));
  const excess = (gap: number) =>
    leakFlow(skirtLeak({ ...rig, gap, roughness: 0, measuredLeak: null }, air), air, pressure) - flow;
  if (excess(0) >= 0) return null;
  let hi = flow / (requirePositive("skirt.perimeter", rig.perimeter) * velocity);
  while (excess(hi) < 0) hi *= 2;
  return findRoot(excess, 0, hi).root;
}

/**
 * Roughness allowance of a surface from a leak test on it and one on glass with the same skirt.
 *
 *     h_rough = h(surface) − h(glass),  u² = u²(surface) + u²(glass)
 *
 * @param rig - the skirt, the same in both tests: lengths [m], loss [-], what was open beside the lip
 * @param glass - the test on glass, whose roughness counts as 0
 * @param surface - the test on the surface
 * @returns roughness allowance [m], its standard uncertainty [m], both heights [m]
 * @throws {OutOfRangeError} on a lip or air that can't be
 * @throws {NotEnoughDataError} where a test has no usable reading
 *
 * Valid where the skirt stood the same in both tests. A value below 0 is returned as it is, with a note. Source: METHOD 2
 */
export function roughnessFromLeaks(rig: LeakRig, glass: LipLeakTest, surface: LipLeakTest): RoughnessFit {
  const smooth = gapHeightFromLeak(rig, glass);
  const rough = gapHeightFromLeak(rig, surface);
  const roughness = rough.height - smooth.height;
  const known = smooth.standardError !== null && rough.standardError !== null;
  const uncertainty = known ? Math.hypot(smooth.standardError ?? 0, rough.standardError ?? 0) : null;
  return {
    roughness,
    uncertainty,
    glass: smooth,
    surface: rough,
    warnings: [...smooth.warnings, ...rough.warnings, ...roughnessNotes(roughness, uncertainty)],
  };
}

function roughnessNotes(roughness: number, uncertainty: number | null): Note[] {
  if (roughness < 0)
    return [
      {
        code: "tighter-than-glass",
        message: "The surface leaks less than glass: the skirt did not stand the same in both tests.",
      },
    ];
  if (uncertainty === null)
    return [
      {
        code: "single-reading",
        message: "A single reading in a test: the doubt of the roughness is unknown. Take three or more.",
      },
    ];
  if (roughness < CLEAR * uncertainty)
    return [
      {
        code: "not-told-apart",
        message: "The two tests differ by no more than their scatter. Take more readings in each.",
      },
    ];
  return [];
}
