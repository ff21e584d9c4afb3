import type { LeakAir } from "../restriction/law.ts";
import type { Leak } from "../restriction/leak.ts";
import { blasiusFactor, CROSSING_REYNOLDS, type LipGap } from "../restriction/lipGap.ts";
import { leakCoefficientAt } from "../restriction/measuredLeak.ts";
import { effectiveArea } from "../restriction/opening.ts";
import { lawOf } from "../restriction/restriction.ts";
import { WARM } from "./newtonWarm.ts";

/** A leak as the fast solvers take it: one lip by its velocity, or one power law in its place, a joint and openings beside. Named as the slots of {@link WARM}. */
export interface FastCase {
  /** P·h; 0: no lip [m²] */
  readonly gapArea: number;
  readonly gapInertia: number;
  readonly gapLaminar: number;
  readonly gapTurbulent: number;
  readonly gapCrossing: number;
  readonly openingConductance: number;
  /** 0: no measured leak [m³/(s·Pa^x)] */
  readonly leakCoefficient: number;
  readonly leakExponent: number;
  /** s·(h + d) of the lip over a joint; 0: none [m²] */
  readonly jointArea: number;
  readonly jointInertia: number;
  readonly jointLaminar: number;
  readonly jointTurbulent: number;
  readonly jointCrossing: number;
}

/** The case of a skirt that is shut all round. */
export const NOTHING_LEAKS: FastCase = {
  gapArea: 0,
  gapInertia: 0,
  gapLaminar: 0,
  gapTurbulent: 0,
  gapCrossing: 0,
  openingConductance: 0,
  leakCoefficient: 0,
  leakExponent: 1,
  jointArea: 0,
  jointInertia: 0,
  jointLaminar: 0,
  jointTurbulent: 0,
  jointCrossing: 0,
};

function withJoint(lip: LipGap, air: LeakAir): Partial<FastCase> {
  const { gapArea, gapInertia, gapLaminar, gapTurbulent, gapCrossing } = withLip(lip, air);
  return {
    jointArea: gapArea,
    jointInertia: gapInertia,
    jointLaminar: gapLaminar,
    jointTurbulent: gapTurbulent,
    jointCrossing: gapCrossing,
  };
}

function withLip(gap: LipGap, air: LeakAir) {
  const { perimeter, height, land, lossSum } = gap;
  return {
    gapArea: perimeter * height,
    gapInertia: 0.5 * air.density * lossSum,
    gapLaminar: (12 * air.viscosity * land) / height ** 2,
    gapTurbulent: blasiusFactor(gap, air),
    gapCrossing: (CROSSING_REYNOLDS * air.viscosity) / (air.density * 2 * height),
  };
}

/**
 * The leak as the fast solvers take it.
 *
 *     one lip gap or one measured leak, one joint, and openings: Δp = ½ρK·v² + (b·v or c·v^1.75), C_L·Δp^x in its place, Σ C_d·A·√(2Δp/ρ) beside
 *
 * @param leak - the restrictions, SI
 * @param air - density [kg/m³], viscosity [Pa·s]
 * @returns numbers of the case, SI; null where another kind is among them, two lips or two joints: then ask the general solver
 * @throws {OutOfRangeError} on an opening or a measured leak that can't be
 *
 * Valid for any leak; what passes no air is left out. Source: docs/method/operating-point.md
 */
export function asFastCase(leak: Leak, air: LeakAir): FastCase | null {
  let fast = NOTHING_LEAKS;
  for (const each of leak) {
    if (!lawOf(each).isOpen(each)) continue;
    const taken = fast.gapArea > 0 || fast.leakCoefficient > 0;
    if (each.kind === "opening") {
      const more = effectiveArea(each) * Math.sqrt(2 / air.density);
      fast = { ...fast, openingConductance: fast.openingConductance + more };
    } else if (each.kind === "lipGap" && !taken) fast = { ...fast, ...withLip(each, air) };
    else if (each.kind === "measuredLeak" && !taken)
      fast = { ...fast, leakCoefficient: leakCoefficientAt(each, air), leakExponent: each.exponent };
    else if (each.kind === "joint" && fast.jointArea === 0)
      fast = { ...fast, ...withJoint({ ...each, height: each.height + each.depth }, air) };
    else return null;
  }
  return fast;
}

/** Writes the leak's numbers into a case laid out as {@link WARM}; allocates nothing. */
export function writeFastCase(c: Float64Array, fast: FastCase): void {
  c[WARM.gapArea] = fast.gapArea;
  c[WARM.gapInertia] = fast.gapInertia;
  c[WARM.gapLaminar] = fast.gapLaminar;
  c[WARM.gapTurbulent] = fast.gapTurbulent;
  c[WARM.gapCrossing] = fast.gapCrossing;
  c[WARM.openingConductance] = fast.openingConductance;
  c[WARM.leakCoefficient] = fast.leakCoefficient;
  c[WARM.leakExponent] = fast.leakExponent;
  c[WARM.jointArea] = fast.jointArea;
  c[WARM.jointInertia] = fast.jointInertia;
  c[WARM.jointLaminar] = fast.jointLaminar;
  c[WARM.jointTurbulent] = fast.jointTurbulent;
  c[WARM.jointCrossing] = fast.jointCrossing;
}
