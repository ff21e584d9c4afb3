import { NotEnoughDataError, OutOfRangeError, requirePositive } from "../numeric/errors.ts";
import { findRoot } from "../numeric/root.ts";
import type { Fluid } from "../physics/air.ts";
import { leakFlow } from "../physics/restriction/leak.ts";
import { type LeakingSkirt, skirtLeak } from "../physics/skirt.ts";

export interface LeakReading {
  /** suction in the cavity [Pa] */
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

/**
 * Heights of a lip from its leak: those at which the skirt's leak passes each measured flow.
 *
 *     h: Q_leak(h, Δp) = Q, each reading by itself
 *
 * @param rig - the skirt as it was read: lengths [m], loss [-], what was open beside the lip
 * @param test - readings: pressure [Pa], flow [m³/s]; air: density [kg/m³], viscosity [Pa·s]
 * @returns height of each reading that could be used [m]
 * @throws {OutOfRangeError} on a lip or air that can't be
 * @throws {NotEnoughDataError} where no reading has a pressure above 0 and more flow than leaks beside the lip
 *
 * Valid where the lip stands off evenly and does not move with the suction. Source: {@link skirtLeak}
 */
export function gapHeightsFromLeak(rig: LeakRig, test: LipLeakTest): number[] {
  const heights = test.points.flatMap(({ pressure, flow }, i) => {
    if (Number.isNaN(pressure) || Number.isNaN(flow))
      throw new OutOfRangeError(`points.${i}`, Number.NaN, "numbers");
    if (!(pressure > 0)) return [];
    const height = heightFor(rig, test.air, pressure, flow);
    return height === null ? [] : [height];
  });
  if (heights.length > 0) return heights;
  throw new NotEnoughDataError(
    "No reading has a pressure above 0 and more flow than leaks beside the lip.",
    "Repeat the leak test, and check the openings' areas.",
    "points",
  );
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
