import { requireNonNegative, requirePositive } from "../../numeric/errors.ts";
import type { Air } from "../../physics/air.ts";
import { asFastCase, type FastCase } from "../../physics/point/fastCase.ts";
import { isSealed, type Leak } from "../../physics/restriction/leak.ts";
import { type SkirtInput, skirtLeak } from "../../physics/skirt.ts";
import { type HoldNeeds, holdNeeds } from "./holdNeeds.ts";
import { skirtAt } from "./input.ts";
import type { AdmittedSkirt, Problem } from "./problem.ts";

/** A skirt at one gap: how it leaks, how it pulls, what it makes the wanted attitudes need. */
export interface FittedSkirt {
  readonly skirt: SkirtInput;
  readonly leak: Leak;
  /** the leak as the fast solvers take it; null: every set with it is scanned */
  readonly fast: FastCase | null;
  /** a lip whose flow the fast solvers find by its velocity */
  readonly lip: boolean;
  readonly sealed: boolean;
  /** κ [-] */
  readonly pullFactor: number;
  /** A_inside and P·ℓ [m²] */
  readonly area: number;
  readonly lipArea: number;
  readonly parked: HoldNeeds;
  readonly driving: HoldNeeds;
}

/**
 * A skirt at one gap, made ready.
 *
 *     its leak by {@link skirtLeak}, as a fast case where it is one
 *
 * @param problem - vehicle and wanted attitudes, SI
 * @param admitted - skirt, share and friction, SI
 * @param standOff - h_set [m]
 * @param air - density [kg/m³], viscosity [Pa·s], pressure [Pa]
 * @returns the skirt at that gap, SI
 * @throws {OutOfRangeError} on a skirt that can't be
 *
 * Valid as its parts. Source: docs/method/restriction.md
 */
export function fittedSkirtOf(
  problem: Problem,
  admitted: AdmittedSkirt,
  standOff: number,
  air: Air,
): FittedSkirt {
  requireNonNegative("skirt.gap", standOff);
  requireNonNegative("skirt.roughness", admitted.roughness);
  const skirt = skirtAt(admitted, standOff);
  const { perimeter, land, area } = skirt;
  const { share, wheelFriction, skirtFriction, pullFactor = 1 } = admitted;
  const leak = skirtLeak(skirt, air);
  const fast = asFastCase(leak, air);
  const vehicle = { ...problem.fixed.vehicle, skirtShare: share, wheelFriction, skirtFriction };
  const { attitudes } = problem.wants;
  return {
    skirt,
    leak,
    fast,
    lip: fast !== null && fast.gapArea > 0,
    sealed: isSealed(leak),
    pullFactor: requirePositive("skirt.pullFactor", pullFactor),
    area: requireNonNegative("skirt.area", area),
    lipArea: requirePositive("skirt.perimeter", perimeter) * requireNonNegative("skirt.land", land),
    parked: holdNeeds(vehicle, attitudes, "parked"),
    driving: holdNeeds(vehicle, attitudes, "driving"),
  };
}
