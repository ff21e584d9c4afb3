import type { Fluid } from "../air.ts";
import { gapFlow, gapFrictionPressure, gapPressure, type LipGap } from "../restriction/lipGap.ts";
import { leakCoefficientAt, type MeasuredLeak } from "../restriction/measuredLeak.ts";
import { DEFAULT_DISCHARGE_COEFFICIENT, type Opening } from "../restriction/opening.ts";

/** All that the air leaks through beside the rotor, at one state of the air. */
export interface LeakLaw {
  readonly air: Fluid;
  /** null: sealed, or replaced by a measured leak */
  readonly gap: LipGap | null;
  /** C_L at this air and x, in the gap's place */
  readonly measured: { readonly coefficient: number; readonly exponent: number } | null;
  /** Σ C_d·A [m²] */
  readonly openArea: number;
}

/**
 * Puts a skirt's leaks together.
 *
 *     Q(Δp) = Q_gap or C_L·Δp^x, plus Σ C_d·A·√(2Δp/ρ)
 *
 * @param skirt - lip gap [m, -], openings [m²], measured leak in the gap's place
 * @param air - density [kg/m³], viscosity [Pa·s]
 * @returns the law, asked by {@link leakFlow}
 * @throws {OutOfRangeError} on an exponent beyond 0.5…1
 *
 * Valid as its parts. Source: docs/method/restriction.md
 */
export function leakLaw(
  skirt: {
    readonly gap: LipGap;
    readonly openings: readonly Opening[];
    readonly measuredLeak: MeasuredLeak | null;
  },
  air: Fluid,
): LeakLaw {
  const { gap, openings, measuredLeak } = skirt;
  const coefficientOf = (opening: Opening) => opening.dischargeCoefficient ?? DEFAULT_DISCHARGE_COEFFICIENT;
  return {
    air,
    gap: measuredLeak || gap.height === 0 ? null : gap,
    measured: measuredLeak && {
      coefficient: leakCoefficientAt(measuredLeak, air),
      exponent: measuredLeak.exponent,
    },
    openArea: openings.reduce((sum, opening) => sum + coefficientOf(opening) * opening.area, 0),
  };
}

/** @returns whether nothing leaks at any pressure */
export function isSealed(law: LeakLaw): boolean {
  return !law.gap && !law.measured && law.openArea === 0;
}

/**
 * Flow through everything that leaks.
 *
 *     Q(Δp), the parts in parallel
 *
 * @param law - from {@link leakLaw}
 * @param pressure - Δp of the cavity [Pa], ≥ 0
 * @returns Q [m³/s]
 * @throws {OutOfRangeError} on a negative pressure
 *
 * Valid as its parts. Source: docs/method/restriction.md
 */
export function leakFlow(law: LeakLaw, pressure: number): number {
  const { air, gap, measured, openArea } = law;
  const throughGap = gap ? gapFlow(gap, air, pressure) : 0;
  const throughMeasured = measured ? measured.coefficient * pressure ** measured.exponent : 0;
  return throughGap + throughMeasured + openArea * Math.sqrt((2 * pressure) / air.density);
}

/** Step, relative to the flow, of the slope of a lip gap's law. */
const SLOPE_STEP = 1e-6;

function gapConductance(gap: LipGap, air: Fluid, pressure: number): number {
  const flow = gapFlow(gap, air, pressure);
  const step = SLOPE_STEP * flow;
  return (2 * step) / (gapPressure(gap, air, flow + step) - gapPressure(gap, air, flow - step));
}

/**
 * Slope of the leak's law.
 *
 *     dQ/dΔp, the parts added
 *
 * @param law - from {@link leakLaw}
 * @param pressure - Δp [Pa], > 0
 * @returns dQ/dΔp [m³/(s·Pa)]; 0 for a sealed skirt
 * @throws {OutOfRangeError} on a negative pressure
 *
 * Valid as its parts. Source: docs/method/restriction.md
 */
export function leakConductance(law: LeakLaw, pressure: number): number {
  const { air, gap, measured, openArea } = law;
  const ofGap = gap ? gapConductance(gap, air, pressure) : 0;
  const ofMeasured = measured
    ? measured.exponent * measured.coefficient * pressure ** (measured.exponent - 1)
    : 0;
  return ofGap + ofMeasured + openArea / Math.sqrt(2 * pressure * air.density);
}

/**
 * Friction part of the pressure drop under the lip's land.
 *
 *     of the lip's law; of a measured leak, Δp = aQ² + bQ with the local exponent x: bQ = (2 − 1/x)·Δp
 *
 * @param law - from {@link leakLaw}
 * @param pressure - Δp of the cavity [Pa], ≥ 0
 * @returns its friction part [Pa]; null where nothing passes under the lip
 * @throws {OutOfRangeError} on a negative pressure
 *
 * Valid for a measured leak whose x is that of the pressures asked for. Source: d ln Δp/d ln Q = 1/x of aQ² + bQ; docs/method/holding.md
 */
export function landFriction(law: LeakLaw, pressure: number): number | null {
  if (law.measured) return (2 - 1 / law.measured.exponent) * pressure;
  if (!law.gap) return null;
  return gapFrictionPressure(law.gap, law.air, gapFlow(law.gap, law.air, pressure));
}
