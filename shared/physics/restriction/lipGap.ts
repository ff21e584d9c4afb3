import {
  NoConvergenceError,
  OutOfRangeError,
  requireNonNegative,
  requirePositive,
} from "../../numeric/errors.ts";
import type { Fluid } from "../air.ts";
import type { RestrictionLaw } from "./law.ts";

export interface LipGap {
  /** length of the lip along the seal, P [m] */
  readonly perimeter: number;
  /** clearance between lip and surface, stand-off and roughness together, h [m] */
  readonly height: number;
  /** length of the lip along the flow, ℓ [m] */
  readonly land: number;
  /** entry and exit losses on the velocity in the gap, K [-] */
  readonly lossSum: number;
}

/** Kirchhoff's contraction of the jet behind a thin edge, C_c = π/(π + 2) [-]. */
const KIRCHHOFF_CONTRACTION = Math.PI / (Math.PI + 2);
/** Loss of the jet's whole velocity head at the exit [-]. */
const EXIT_LOSS = 1;

/** Loss sum K of a lip by its edge [-]: thin (Kirchhoff 1869; Lamb, Hydrodynamics, art. 75), square and rounded (Idelchik: entry 0.5 and 0.05). */
export const EDGE_LOSS = {
  thin: KIRCHHOFF_CONTRACTION ** -2,
  square: 0.5 + EXIT_LOSS,
  rounded: 0.05 + EXIT_LOSS,
} as const;

/** f·Re of laminar flow between parallel plates, on the hydraulic diameter 2h [-]. Exact. */
const PLATES_LAMINAR = 96;
/** Blasius' law f = 0.3164 Re^(−1/4) [-]. Measured. */
const BLASIUS = 0.3164;
/** Power of the velocity in Blasius' drop [-]. */
const BLASIUS_POWER = 1.75;
/** Reynolds number where the two laws of f cross, about 2039 [-]. */
export const CROSSING_REYNOLDS = (PLATES_LAMINAR / BLASIUS) ** (4 / 3);
/** The Newton steps fall from above and end when they stop falling; five or six suffice. */
const MAX_STEPS = 60;
/** A step of this size, relative to the velocity, is rounding. */
const SETTLED = 4 * Number.EPSILON;

/**
 * The part of a lip gap's pressure drop that is lost by friction along the land.
 *
 *     Δp_f = ½ρv²·f·ℓ/(2h);  laminar: 12·μ·ℓ·v/h²
 *
 * @param gap - perimeter, height, land [m]; loss sum [-]
 * @param air - density [kg/m³], viscosity [Pa·s]
 * @param flow - volume flow through the gap [m³/s], ≥ 0
 * @returns friction part of Δp [Pa]; exactly 0 at Q = 0
 * @throws {OutOfRangeError} as {@link gapFlow}, on a flow through a gap of height 0
 *
 * Valid and source: as {@link gapFlow}
 */
export function gapFrictionPressure(gap: LipGap, air: Fluid, flow: number): number {
  checkGap(gap, air);
  requireNonNegative("flow", flow);
  return flow === 0 ? 0 : frictionAt(gap, air, gapVelocity(gap, flow));
}

/**
 * Volume flow through one lip gap at a given suction.
 *
 *     Δp = ½ρv²·[K + f·ℓ/(2h)],  f = max(96/Re, 0.3164/Re^0.25),  Q = v·P·h
 *
 * @param gap - perimeter, height, land [m]; loss sum [-]
 * @param air - density [kg/m³], viscosity [Pa·s]
 * @param pressure - Δp across the lip [Pa], ≥ 0
 * @returns flow Q [m³/s], relative error below 1e-13; exactly 0 at Δp = 0 or h = 0
 * @throws {OutOfRangeError} on a negative or non-finite input
 * @throws {NoConvergenceError} never seen: when the Newton steps do not settle
 *
 * Valid for Mach < 0.3 in the gap. The source of f gives no range for short lands (ℓ < 10 h).
 * Source: plane Poiseuille flow (White, Viscous Fluid Flow); Blasius (1913); docs/method/restriction.md
 */
export function gapFlow(gap: LipGap, air: Fluid, pressure: number): number {
  checkGap(gap, air);
  requireNonNegative("pressure", pressure);
  if (pressure === 0 || gap.height === 0) return 0;
  const laminar = laminarVelocity(gap, air, pressure);
  const crossing = (CROSSING_REYNOLDS * air.viscosity) / (air.density * 2 * gap.height);
  const v = laminar <= crossing || gap.land === 0 ? laminar : turbulentVelocity(gap, air, pressure, laminar);
  return v * gap.perimeter * gap.height;
}

/**
 * Slope of a lip gap's law.
 *
 *     dQ/dΔp = P·h/(dΔp/dv),  dΔp/dv = ρ·K·v + (12μℓ/h² or 1.75·Δp_f/v)
 *
 * @param gap - perimeter, height, land [m]; loss sum [-]
 * @param air - density [kg/m³], viscosity [Pa·s]
 * @param pressure - Δp across the lip [Pa], > 0
 * @returns dQ/dΔp [m³/(s·Pa)]; 0 at h = 0
 * @throws {OutOfRangeError} as {@link gapFlow}
 *
 * Valid and source: as {@link gapFlow}
 */
export function gapSlope(gap: LipGap, air: Fluid, pressure: number): number {
  const flow = gapFlow(gap, air, pressure);
  if (flow === 0) return 0;
  const v = gapVelocity(gap, flow);
  const reynolds = (air.density * v * 2 * gap.height) / air.viscosity;
  const power = reynolds <= CROSSING_REYNOLDS ? 1 : BLASIUS_POWER;
  const byVelocity = air.density * gap.lossSum * v + (power * frictionAt(gap, air, v)) / v;
  return (gap.perimeter * gap.height) / byVelocity;
}

/** A lip at one height over the surface, as a restriction. */
export const lipGapLaw: RestrictionLaw<LipGap> = {
  flow: gapFlow,
  slope: gapSlope,
  isOpen: ({ height }) => height > 0,
  underLip: {
    length: ({ perimeter }) => perimeter,
    frictionDrop: (gap, air, pressure) =>
      gap.height > 0 ? gapFrictionPressure(gap, air, gapFlow(gap, air, pressure)) : null,
    shareWords: () => "σ = 1 − ½Δp_friction/Δp",
  },
  air: ["density", "viscosity"],
  words: {
    name: "lip gap",
    equation: "Q = P·h·v;  Δp = ½ρv²·[K + f·ℓ/(2h)],  f = max(96/Re, 0.3164/Re^¼),  Re = 2ρvh/μ",
    numbers: {
      perimeter: ["P", "length of the lip", "m"],
      height: ["h", "gap and roughness together", "m"],
      land: ["ℓ", "width of the lip", "m"],
      lossSum: ["K", "losses at entry and exit", ""],
    },
    velocity: (gap, air, pressure) => gapFlow(gap, air, pressure) / (gap.perimeter * gap.height),
    source: "plane Poiseuille flow (White, Viscous Fluid Flow); Blasius (1913); docs/method/restriction.md",
  },
  notes: null,
};

function checkGap(gap: LipGap, air: Fluid): void {
  requirePositive("gap.perimeter", gap.perimeter);
  requireNonNegative("gap.height", gap.height);
  requireNonNegative("gap.land", gap.land);
  requireNonNegative("gap.lossSum", gap.lossSum);
  if (!(gap.land > 0 || gap.lossSum > 0))
    throw new OutOfRangeError("skirt.lossSum", gap.lossSum, "greater than 0 where the land is 0");
  requirePositive("air.density", air.density);
  requirePositive("air.viscosity", air.viscosity);
}

function gapVelocity(gap: LipGap, flow: number): number {
  if (gap.height === 0) throw new OutOfRangeError("flow", flow, "0 where the gap is closed");
  return flow / (gap.perimeter * gap.height);
}

function frictionAt(gap: LipGap, air: Fluid, v: number): number {
  const reynolds = (air.density * v * 2 * gap.height) / air.viscosity;
  if (reynolds <= CROSSING_REYNOLDS) return (12 * air.viscosity * gap.land * v) / gap.height ** 2;
  return blasiusFactor(gap, air) * v * v * quarterRoot(1 / v);
}

/** @returns c in Δp_f = c·v^1.75 on Blasius' branch [Pa·(s/m)^1.75] */
export function blasiusFactor(gap: LipGap, air: Fluid): number {
  const atUnitVelocity = BLASIUS * quarterRoot(air.viscosity / (air.density * 2 * gap.height));
  return 0.5 * air.density * atUnitVelocity * (gap.land / (2 * gap.height));
}

function quarterRoot(x: number): number {
  return Math.sqrt(Math.sqrt(x));
}

/** Positive root of ½ρK·v² + b·v = Δp, in the form that loses no digits. */
function laminarVelocity(gap: LipGap, air: Fluid, pressure: number): number {
  const b = (12 * air.viscosity * gap.land) / gap.height ** 2;
  return (2 * pressure) / (b + Math.sqrt(b * b + 2 * air.density * gap.lossSum * pressure));
}

/** Newton from above on a rising, convex function: every step falls towards the root and none passes it. */
function turbulentVelocity(gap: LipGap, air: Fluid, pressure: number, above: number): number {
  const inertia = 0.5 * air.density * gap.lossSum;
  const friction = blasiusFactor(gap, air);
  let v = above;
  for (let step = 0; step < MAX_STEPS; step += 1) {
    const frictionDrop = friction * v * v * quarterRoot(1 / v);
    const excess = inertia * v * v + frictionDrop - pressure;
    const next = v - (excess * v) / (2 * inertia * v * v + BLASIUS_POWER * frictionDrop);
    if (next >= v * (1 - SETTLED)) return next;
    v = next;
  }
  throw new NoConvergenceError("the flow on Blasius' branch of the gap did not settle", MAX_STEPS);
}
