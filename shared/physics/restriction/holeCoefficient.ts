import { NoConvergenceError, requireNonNegative } from "../../numeric/errors.ts";
import { createPchip } from "../../numeric/pchip.ts";

/** How the hole's inlet was made: drilled clean, or with its edge rounded over. */
export type HoleEdge = "sharp" | "rounded";

export interface HoleShape {
  /** wall thickness over bore, t/d [-] */
  readonly thicknessRatio: number;
  readonly edge: HoleEdge;
  /** radius of a rounded inlet over bore, r/d; see {@link defaultRadiusRatio} [-] */
  readonly radiusRatio?: number;
}

/** Idelchik, Handbook of Hydraulic Resistance, 3rd ed., diagrams 4-12 and 4-15: τ of a thick-edged hole by t/d. */
const THICK_EDGE = createPchip(
  [0, 0.2, 0.4, 0.6, 0.8, 1, 1.4, 2, 3],
  [1.35, 1.22, 1.1, 0.84, 0.42, 0.24, 0.1, 0.02, 0],
);
/** Idelchik (1966), inlet rounded flush with a wall: K by r/d. */
const ROUNDED_INLET = createPchip(
  [0, 0.01, 0.02, 0.03, 0.04, 0.05, 0.06, 0.08, 0.12, 0.16, 0.2],
  [0.5, 0.44, 0.37, 0.31, 0.26, 0.22, 0.2, 0.15, 0.09, 0.06, 0.03],
);
const SHARP_INLET_LOSS = 0.5;
/** A rounding above 0.2 d brings no more in Idelchik's table. */
const FULLY_ROUNDED = 0.2;
/** Above it Idelchik's τ is 0. */
const REATTACHED = 3;
/** Lichtarowicz, Duggins & Markland hold from here on; between `BEND_IN` and it their 0.810 and Idelchik's 0.811 are joined. */
const LICHTAROWICZ_FROM = 2;
const BEND_IN = 1.4;
/** Below it a hole counts as thin (Reynolds term of ISO 5167-2), above `THICK` as thick (that of Lichtarowicz et al.), between them in proportion. */
const THIN = 0.5;
const THICK = 1;
/** ISO 5167-2 with β → 0: C − C∞ = 0.000521 (10⁶/Re_d)^0.7. */
const ISO_TERM = { factor: 0.000521, reynolds: 1e6, power: 0.7 } as const;
/** Below this Re_d the ISO term is held: it would grow without bound, where a real hole's coefficient falls (choice; sources in docs/method/restriction.md). */
export const ISO_TERM_HELD_BELOW = 500;
/** Creeping flow through a hole in a thin wall, Q = d³Δp/(24μ): C_d² = Re_d/(12π). Exact. Sampson, Phil. Trans. R. Soc. A 182 (1891) 449. */
const CREEPING = 12 * Math.PI;
/** Newton steps rise towards the root from below; three or four suffice. */
const MAX_STEPS = 60;

/**
 * Discharge coefficient of a hole between two large rooms, friction left out.
 *
 *     sharp: 1/√(1.5 + τ(t/d)), from t/d = 2 on 0.827 − 0.0085 t/d;  rounded: 1/√(1 + K(r/d) + τ(t/d)·√(2K))
 *
 * @param shape - wall over bore [-], edge, radius of the rounding over bore [-]
 * @returns C∞ [-]
 * @throws {OutOfRangeError} on a negative or non-finite ratio
 *
 * Valid for t/d ≤ 10. The rounded form gives the jet's own contraction, 1/(1 + √K), behind a thin wall; for K = 0.5 it is the sharp form.
 * Source: Idelchik, Handbook of Hydraulic Resistance; Lichtarowicz, Duggins & Markland, J. Mech. Eng. Sci. 7 (1965) 210–219
 */
export function frictionlessCoefficient(shape: HoleShape): number {
  const ratio = requireNonNegative("hole.thickness/diameter", shape.thicknessRatio);
  if (shape.edge === "rounded") {
    const loss = roundedInletLoss(shape.radiusRatio ?? defaultRadiusRatio(ratio));
    return 1 / Math.sqrt(1 + loss + thickEdgeLoss(ratio) * Math.sqrt(loss / SHARP_INLET_LOSS));
  }
  if (ratio >= LICHTAROWICZ_FROM) return lichtarowiczUltimate(ratio);
  const table = idelchikCoefficient(ratio);
  if (ratio <= BEND_IN) return table;
  const share = (ratio - BEND_IN) / (LICHTAROWICZ_FROM - BEND_IN);
  const step = lichtarowiczUltimate(LICHTAROWICZ_FROM) / idelchikCoefficient(LICHTAROWICZ_FROM) - 1;
  return table * (1 + share * step);
}

/**
 * Discharge coefficient of a sharp-edged hole by Idelchik's table alone.
 *
 *     C∞ = 1/√(1.5 + τ(t/d))
 *
 * @param thicknessRatio - wall over bore, t/d ≥ 0 [-]
 * @returns C∞ [-]
 * @throws {OutOfRangeError} on a negative or non-finite ratio
 *
 * Valid for t/d ≤ 3; τ = 0 beyond. Source: Idelchik, Handbook of Hydraulic Resistance, 3rd ed., diagrams 4-12 and 4-15, by a monotone cubic
 */
export function idelchikCoefficient(thicknessRatio: number): number {
  requireNonNegative("hole.thickness/diameter", thicknessRatio);
  return 1 / Math.sqrt(1 + SHARP_INLET_LOSS + thickEdgeLoss(thicknessRatio));
}

/**
 * Loss coefficient of a rounded inlet flush with a wall.
 *
 *     K(r/d) by table, 0.5 at r = 0, 0.03 from r/d = 0.2 on
 *
 * @param radiusRatio - radius of the rounding over bore, r/d ≥ 0 [-]
 * @returns K [-]
 * @throws {OutOfRangeError} on a negative or non-finite ratio
 *
 * Valid for r/d ≤ 0.2, constant beyond. Other handbooks differ by a factor of two. Source: Idelchik (1966)
 */
export function roundedInletLoss(radiusRatio: number): number {
  const ratio = requireNonNegative("hole.radius/diameter", radiusRatio);
  return ROUNDED_INLET.value(Math.min(ratio, FULLY_ROUNDED));
}

/**
 * Radius of a rounding whose size was not given.
 *
 *     r/d = the smaller of 0.2 and t/d
 *
 * @param thicknessRatio - wall over bore, t/d ≥ 0 [-]
 * @returns r/d [-]
 *
 * Valid for an edge rounded over in full: no deeper than the wall, no larger than helps. Common practice, no source.
 */
export function defaultRadiusRatio(thicknessRatio: number): number {
  return Math.min(FULLY_ROUNDED, thicknessRatio);
}

/**
 * Discharge coefficient of a long hole at its Reynolds number of the theoretical velocity.
 *
 *     1/C_d = 1/C∞ + (20/Re_h)(1 + 2.25 t/d) − 0.005 (t/d)/(1 + 7.5 [log₁₀(0.00015 Re_h)]²),  Re_h = d·√(2Δp/ρ)/ν
 *
 * @param ultimate - C∞, 0.827 − 0.0085 t/d in the source [-]
 * @param thicknessRatio - wall over bore, t/d [-]
 * @param theoreticalReynolds - Re_h = Re_d/C_d, > 0 [-]
 * @returns C_d [-]
 *
 * Valid for 2 ≤ t/d ≤ 10 and 10 ≤ Re_h ≤ 2·10⁴; above, it tends to C∞. Not the bore's own Reynolds number.
 * Source: Lichtarowicz, Duggins & Markland, J. Mech. Eng. Sci. 7 (1965) 210–219
 */
export function lichtarowiczCoefficient(
  ultimate: number,
  thicknessRatio: number,
  theoreticalReynolds: number,
): number {
  const viscous = (20 / theoreticalReynolds) * (1 + 2.25 * thicknessRatio);
  const hump = (0.005 * thicknessRatio) / (1 + 7.5 * Math.log10(0.000_15 * theoreticalReynolds) ** 2);
  return 1 / (1 / ultimate + viscous - hump);
}

/**
 * Ultimate discharge coefficient of a long hole.
 *
 *     C∞ = 0.827 − 0.0085 t/d
 *
 * @param thicknessRatio - wall over bore, t/d [-]
 * @returns C∞ [-]
 *
 * Valid for 2 ≤ t/d ≤ 10. Source: Lichtarowicz, Duggins & Markland, J. Mech. Eng. Sci. 7 (1965) 210–219
 */
export function lichtarowiczUltimate(thicknessRatio: number): number {
  return 0.827 - 0.0085 * thicknessRatio;
}

/**
 * What the Reynolds number adds to the coefficient of a thin hole.
 *
 *     0.000521 (10⁶/Re_d)^0.7
 *
 * @param reynolds - of the bore, Re_d > 0 [-]
 * @returns addition to C_d [-]
 *
 * Valid for d ≥ 12.5 mm and Re_d ≥ 5000 by its source; an extrapolation for smaller holes.
 * Source: limit β → 0 of ISO 5167-2:2003, 5.3.2.1, without the term for pipes under 71.12 mm
 */
export function isoReynoldsTerm(reynolds: number): number {
  return ISO_TERM.factor * (ISO_TERM.reynolds / reynolds) ** ISO_TERM.power;
}

/**
 * Discharge coefficient of a thin hole at its Reynolds number of the theoretical velocity.
 *
 *     Re_d ≥ 500: C_d = C∞ + 0.000521 (10⁶/Re_d)^0.7;  below: 1/C_d² = 1/C_d(500)² + (12π/Re_d)(1 − Re_d/500);  Re_d = C_d·Re_h
 *
 * @param ultimate - C∞ [-]
 * @param theoreticalReynolds - Re_h = d·√(2Δp/ρ)/ν, > 0 [-]
 * @returns C_d [-]
 * @throws {NoConvergenceError} never seen: when the steps for Re_d do not settle
 *
 * Valid as {@link isoReynoldsTerm}; below Re_d = 500 a bridge to Sampson's exact creeping flow, ±15 %.
 * Source: ISO 5167-2:2003; Sampson (1891); the bridge is ours
 */
export function thinHoleCoefficient(ultimate: number, theoreticalReynolds: number): number {
  const held = ultimate + isoReynoldsTerm(ISO_TERM_HELD_BELOW);
  if (theoreticalReynolds * held >= ISO_TERM_HELD_BELOW)
    return boreReynolds(ultimate, theoreticalReynolds) / theoreticalReynolds;
  const square = held ** -2 - CREEPING / ISO_TERM_HELD_BELOW;
  const root = Math.sqrt(CREEPING ** 2 + 4 * square * theoreticalReynolds ** 2);
  return (2 * theoreticalReynolds) / (CREEPING + root);
}

/** Re_d of Re_d = Re_h·(C∞ + term(Re_d)): Newton from below on a rising, concave function. */
function boreReynolds(ultimate: number, theoreticalReynolds: number): number {
  let reynolds = ultimate * theoreticalReynolds;
  for (let step = 0; step < MAX_STEPS; step += 1) {
    const added = theoreticalReynolds * isoReynoldsTerm(reynolds);
    const excess = reynolds - ultimate * theoreticalReynolds - added;
    const next = reynolds - excess / (1 + (ISO_TERM.power * added) / reynolds);
    if (next <= reynolds * (1 + 4 * Number.EPSILON)) return next;
    reynolds = next;
  }
  throw new NoConvergenceError("the Reynolds number of the hole did not settle", MAX_STEPS);
}

/**
 * Discharge coefficient of a hole between two large rooms.
 *
 *     thin (t/d ≤ 0.5): ISO term;  thick (t/d ≥ 1): Lichtarowicz term;  between: (1 − w)·thin + w·thick, w = (t/d − 0.5)/0.5;  rounded: Lichtarowicz term
 *
 * @param shape - wall over bore [-], edge, radius of the rounding over bore [-]
 * @param theoreticalReynolds - Re_h = d·√(2Δp/ρ)/ν, > 0 [-]
 * @returns C_d [-]
 * @throws {OutOfRangeError} on a ratio that is negative or not finite
 *
 * Valid for t/d ≤ 10; ±3 %, ±6 % for Re_d < 2000, 0.4 < t/d < 1 and rounded edges. Continuous in both arguments.
 * Source: {@link frictionlessCoefficient}, {@link thinHoleCoefficient}, {@link lichtarowiczCoefficient}; the blend is ours
 */
export function holeDischargeCoefficient(shape: HoleShape, theoreticalReynolds: number): number {
  const ultimate = frictionlessCoefficient(shape);
  const ratio = shape.thicknessRatio;
  if (shape.edge === "rounded") return lichtarowiczCoefficient(ultimate, ratio, theoreticalReynolds);
  if (ratio <= THIN) return thinHoleCoefficient(ultimate, theoreticalReynolds);
  const thick = lichtarowiczCoefficient(ultimate, ratio, theoreticalReynolds);
  if (ratio >= THICK) return thick;
  const share = (ratio - THIN) / (THICK - THIN);
  return (1 - share) * thinHoleCoefficient(ultimate, theoreticalReynolds) + share * thick;
}

function thickEdgeLoss(thicknessRatio: number): number {
  return THICK_EDGE.value(Math.min(thicknessRatio, REATTACHED));
}
