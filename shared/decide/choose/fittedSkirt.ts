import { requireNonNegative, requirePositive } from "../../numeric/errors.ts";
import type { Fluid } from "../../physics/air.ts";
import { leakLaw } from "../../physics/point/leakLaw.ts";
import { WARM } from "../../physics/point/newtonWarm.ts";
import {
  CROSSING_REYNOLDS,
  EDGE_LOSS,
  gapFrictionPressure,
  type LipGap,
} from "../../physics/restriction/lipGap.ts";
import { type HoldNeeds, holdNeeds } from "./holdNeeds.ts";
import type { AdmittedSkirt, Problem } from "./problem.ts";

/** A skirt at one gap: how it leaks, how it pulls, what it makes the wanted attitudes need. */
export interface FittedSkirt {
  /** a lip whose flow is solved by its velocity */
  readonly lip: boolean;
  readonly sealed: boolean;
  /** numbers of a case from WARM.gapArea to WARM.leakExponent */
  readonly leak: Float64Array;
  /** A_inside and P·ℓ [m²] */
  readonly area: number;
  readonly lipArea: number;
  readonly parked: HoldNeeds;
  readonly driving: HoldNeeds;
}

function lipNumbers(gap: LipGap, { density, viscosity }: Fluid): number[] {
  const { perimeter, height, lossSum } = gap;
  const air = { density, viscosity };
  const crossing = (CROSSING_REYNOLDS * viscosity) / (density * 2 * height);
  const frictionDrop = (v: number) => gapFrictionPressure(gap, air, v * perimeter * height);
  const [slow, fast] = [crossing / 2, crossing * 2];
  return [
    perimeter * height,
    0.5 * density * lossSum,
    frictionDrop(slow) / slow,
    frictionDrop(fast) / fast ** 1.75,
    crossing,
  ];
}

/**
 * A skirt at one gap, made ready.
 *
 *     h = h_set + h_rough;  Δp = ½ρK·v² + (b·v or c·v^1.75), C_L·Δp^x in its place, openings beside
 *
 * @param problem - vehicle and wanted attitudes, SI
 * @param skirt - lip, openings, share, SI
 * @param standOff - h_set [m]
 * @param air - density [kg/m³], viscosity [Pa·s]
 * @returns the seal
 * @throws {OutOfRangeError} on a skirt that can't be
 *
 * Valid as its parts. Source: docs/method/restriction.md
 */
export function fittedSkirtOf(
  problem: Problem,
  skirt: AdmittedSkirt,
  standOff: number,
  air: Fluid,
): FittedSkirt {
  const { perimeter, land, openings, measuredLeak, share, wheelFriction, skirtFriction } = skirt;
  const height =
    requireNonNegative("skirt.gap", standOff) + requireNonNegative("skirt.roughness", skirt.roughness);
  const lossSum = skirt.lossSum ?? EDGE_LOSS[skirt.edge ?? "square"];
  const law = leakLaw({ gap: { perimeter, height, land, lossSum }, openings, measuredLeak }, air);
  const { gap, measured, openArea } = law;
  const lip = gap ? lipNumbers(gap, air) : [0, 0, 0, 0, 0];
  const opening = openArea * Math.sqrt(2 / air.density);
  const vehicle = { ...problem.fixed.vehicle, skirtShare: share, wheelFriction, skirtFriction };
  const { attitudes } = problem.wants;
  const leak = [...lip, opening, measured?.coefficient ?? 0, measured?.exponent ?? 1];
  return {
    lip: gap !== null,
    sealed: !gap && !measured && openArea === 0,
    leak: Float64Array.from(leak.slice(0, WARM.leakExponent - WARM.gapArea + 1)),
    area: requireNonNegative("skirt.area", skirt.area),
    lipArea: requirePositive("skirt.perimeter", perimeter) * requireNonNegative("skirt.land", land),
    parked: holdNeeds(vehicle, attitudes, "parked"),
    driving: holdNeeds(vehicle, attitudes, "driving"),
  };
}
