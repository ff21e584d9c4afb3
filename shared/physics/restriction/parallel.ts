import { OutOfRangeError, requireNonNegative } from "../../numeric/errors.ts";
import { findRoot } from "../../numeric/root.ts";
import type { Air } from "../air.ts";
import { type Holes, holeFlow, holePressure } from "./hole.ts";
import { gapFlow, gapPressure, type LipGap } from "./lipGap.ts";
import { type MeasuredLeak, measuredLeakFlow, measuredLeakPressure } from "./measuredLeak.ts";
import { type Opening, openingFlow, openingPressure } from "./opening.ts";

/** One path of the air: a strictly rising law Q(Δp) with Q(0) = 0. */
export type Restriction =
  | ({ readonly kind: "holes" } & Holes)
  | ({ readonly kind: "lipGap" } & LipGap)
  | ({ readonly kind: "opening" } & Opening)
  | ({ readonly kind: "measuredLeak" } & MeasuredLeak);

/** So that rounding can't put the upper end below the root [-]. */
const BRACKET_SLACK = 1e-9;

type LeakAir = Pick<Air, "density" | "viscosity" | "pressure">;

/**
 * Volume flow through one restriction.
 *
 *     Q(Δp) by its kind
 *
 * @param restriction - holes, lip gap, opening or measured leak, in SI units [-]
 * @param air - density [kg/m³], viscosity [Pa·s], ambient pressure [Pa]
 * @param pressure - Δp [Pa], ≥ 0
 * @returns flow Q [m³/s]
 * @throws {OutOfRangeError} as the relation of its kind
 *
 * Valid and source: as {@link holeFlow}, {@link gapFlow}, {@link openingFlow}, {@link measuredLeakFlow}
 */
export function restrictionFlow(restriction: Restriction, air: LeakAir, pressure: number): number {
  switch (restriction.kind) {
    case "holes":
      return holeFlow(restriction, air, pressure).flow;
    case "lipGap":
      return gapFlow(restriction, air, pressure);
    case "opening":
      return openingFlow(restriction, air, pressure);
    case "measuredLeak":
      return measuredLeakFlow(restriction, air, pressure);
  }
}

/**
 * Pressure drop across one restriction, the inverse of {@link restrictionFlow}.
 *
 *     Δp(Q) by its kind
 *
 * @param restriction - holes, lip gap, opening or measured leak, in SI units [-]
 * @param air - density [kg/m³], viscosity [Pa·s], ambient pressure [Pa]
 * @param flow - Q [m³/s], ≥ 0
 * @returns Δp [Pa]
 * @throws {OutOfRangeError} as the relation of its kind
 *
 * Valid and source: as {@link restrictionFlow}
 */
export function restrictionPressure(restriction: Restriction, air: LeakAir, flow: number): number {
  switch (restriction.kind) {
    case "holes":
      return holePressure(restriction, air, flow);
    case "lipGap":
      return gapPressure(restriction, air, flow);
    case "opening":
      return openingPressure(restriction, air, flow);
    case "measuredLeak":
      return measuredLeakPressure(restriction, air, flow);
  }
}

/**
 * Volume flow through restrictions side by side.
 *
 *     Q = Σ Qᵢ(Δp)
 *
 * @param restrictions - in SI units; none at all is a sealed skirt [-]
 * @param air - density [kg/m³], viscosity [Pa·s], ambient pressure [Pa]
 * @param pressure - Δp [Pa], ≥ 0
 * @returns flow Q [m³/s]; 0 through a sealed skirt
 * @throws {OutOfRangeError} as the relation of each kind
 *
 * Valid where the paths do not disturb each other. Source: conservation of mass
 */
export function parallelFlow(restrictions: readonly Restriction[], air: LeakAir, pressure: number): number {
  requireNonNegative("pressure", pressure);
  return restrictions.reduce((sum, one) => sum + restrictionFlow(one, air, pressure), 0);
}

/**
 * Pressure drop at which restrictions side by side pass a given flow, the inverse of {@link parallelFlow}.
 *
 *     Σ Qᵢ(Δp) = Q
 *
 * @param restrictions - in SI units; none at all is a sealed skirt [-]
 * @param air - density [kg/m³], viscosity [Pa·s], ambient pressure [Pa]
 * @param flow - Q [m³/s], ≥ 0
 * @returns Δp [Pa]; 0 at Q = 0
 * @throws {OutOfRangeError} as the relation of each kind; on a flow through a sealed skirt
 *
 * Valid as {@link parallelFlow}. Source: bracketed root; no path alone could pass the flow at a lower Δp
 */
export function parallelPressure(restrictions: readonly Restriction[], air: LeakAir, flow: number): number {
  requireNonNegative("flow", flow);
  if (flow === 0) return 0;
  const open = restrictions.filter(passesAir);
  const [only] = open;
  if (only === undefined) throw new OutOfRangeError("flow", flow, "0 through a sealed skirt");
  if (open.length === 1) return restrictionPressure(only, air, flow);
  const most = Math.min(...open.map((one) => pressureOrNone(one, air, flow)));
  if (most === Number.POSITIVE_INFINITY)
    throw new OutOfRangeError("flow", flow, "less than the paths can pass");
  const excess = (root: number) => parallelFlow(open, air, root * root) - flow;
  return findRoot(excess, 0, Math.sqrt(most) * (1 + BRACKET_SLACK)).root ** 2;
}

/**
 * Whether a restriction lets any air through at all.
 *
 *     gap height > 0, opening area > 0
 *
 * @param restriction - holes, lip gap, opening or measured leak, in SI units [-]
 * @returns true where Q > 0 at Δp > 0 [-]
 *
 * Valid for every kind; holes and measured leaks always pass air. Source: their laws
 */
export function passesAir(restriction: Restriction): boolean {
  if (restriction.kind === "lipGap") return restriction.height > 0;
  if (restriction.kind === "opening") return restriction.area > 0;
  return true;
}

/** Holes alone may be too small for the whole flow: then they set no upper end. */
function pressureOrNone(restriction: Restriction, air: LeakAir, flow: number): number {
  if (restriction.kind === "holes" && flow > holeFlow(restriction, air, air.pressure / 2).flow)
    return Number.POSITIVE_INFINITY;
  return restrictionPressure(restriction, air, flow);
}
