import { OutOfRangeError, requireNonNegative, requirePositive } from "../../numeric/errors.ts";
import { findRoot } from "../../numeric/root.ts";
import type { Fluid } from "../air.ts";
import type { Note } from "../note.ts";
import { type RestrictionLaw, slopeByDifference } from "./law.ts";

/** Equal short tubes side by side: a honeycomb, a flow straightener, a grille of bores. */
export interface Honeycomb {
  /** n [-] */
  readonly count: number;
  /** bore of one tube, D [m] */
  readonly diameter: number;
  /** of the tubes, L [m] */
  readonly length: number;
}

/** Shah's constants of the circular tube: f·Re of developed flow, K(∞), and C of the bend between short and long [-]. */
const DEVELOPED = 16;
const EXCESS = 1.25;
const BEND = 0.000212;
/** f_app·Re·√x⁺ of a tube so short that its boundary layers are thin [-]. */
const SHORT = 3.44;
/** The jet's whole velocity head is lost behind the tubes [-]. */
const EXIT_LOSS = 1;
/** Flow in a tube is laminar below it for sure [-]. */
const LAMINAR_BELOW = 2100;

/**
 * Loss of laminar flow from a room through a short tube into another, in velocity heads.
 *
 *     Δp/(½ρV²) = 1 + 4·f_app·L/D,  f_app·Re = 3.44/√x⁺ + (16 + 1.25/(4x⁺) − 3.44/√x⁺)/(1 + 0.000212/x⁺²)
 *
 * @param x - x⁺ = (L/D)/Re: how far along its entry the tube ends [-], > 0
 * @returns loss on the mean velocity [-]
 *
 * Valid for laminar flow from a smooth inlet, within ±2.4 % (Shah). Its ends: 1 + 13.76·√x⁺ of short tubes, 64·x⁺ + 2.25 of long ones.
 * Source: Shah, J. Fluids Eng. 100 (1978) 177–179; Shah & London, Laminar Flow Forced Convection in Ducts (1978); constants from memory
 */
export function tubeLoss(x: number): number {
  const root = Math.sqrt(x);
  const bent = (DEVELOPED * x + EXCESS / 4 - SHORT * root) / (x * x + BEND);
  return EXIT_LOSS + 4 * (SHORT * root + x * x * bent);
}

/**
 * Volume flow through a honeycomb.
 *
 *     Q = n·(πD²/4)·V,  Δp = ½ρV²·(1 + 4·f_app·L/D) of {@link tubeLoss}
 *
 * @param honeycomb - tubes [-], bore and length [m]
 * @param air - density [kg/m³], viscosity [Pa·s]
 * @param pressure - Δp across it [Pa], ≥ 0
 * @returns flow Q [m³/s], relative error below 1e-14; exactly 0 at Δp = 0
 * @throws {OutOfRangeError} on a negative or non-finite input, a count that is no whole number
 *
 * Valid and source: as {@link tubeLoss}, tubes with air all round their ends; {@link honeycombLaw} notes a Reynolds number above 2100
 */
export function honeycombFlow(honeycomb: Honeycomb, air: Fluid, pressure: number): number {
  checkHoneycomb(honeycomb, air);
  requireNonNegative("pressure", pressure);
  const { count, diameter } = honeycomb;
  return pressure === 0 ? 0 : ((count * Math.PI * diameter ** 2) / 4) * velocityAt(honeycomb, air, pressure);
}

/** V whose loss is Δp: below that of a lossless nozzle. */
function velocityAt({ diameter, length }: Honeycomb, air: Fluid, pressure: number): number {
  const entry = (air.viscosity * length) / (air.density * diameter ** 2);
  const excess = (v: number) => (v === 0 ? 0 : 0.5 * air.density * v * v * tubeLoss(entry / v)) - pressure;
  return findRoot(excess, 0, Math.sqrt((2 * pressure) / air.density)).root;
}

function checkHoneycomb({ count, diameter, length }: Honeycomb, air: Fluid): void {
  if (!(Number.isInteger(count) && count >= 1))
    throw new OutOfRangeError("honeycomb.count", count, "a whole number, 1 or more");
  requirePositive("honeycomb.diameter", diameter);
  requirePositive("honeycomb.length", length);
  requirePositive("air.density", air.density);
  requirePositive("air.viscosity", air.viscosity);
}

function laminarNotes(honeycomb: Honeycomb, air: Fluid, pressure: number): Note[] {
  const { diameter } = honeycomb;
  const v = pressure > 0 ? velocityAt(honeycomb, air, pressure) : 0;
  const reynolds = (air.density * v * diameter) / air.viscosity;
  if (!(reynolds > LAMINAR_BELOW)) return [];
  const message = `In the honeycomb's tubes Re is ${Math.round(reynolds)}, above ${LAMINAR_BELOW}: where the flow is turbulent it passes less than stated.`;
  return [{ code: "honeycomb-turbulent", message }];
}

/** A honeycomb, as a restriction. */
export const honeycombLaw: RestrictionLaw<Honeycomb> = {
  flow: honeycombFlow,
  slope: slopeByDifference(honeycombFlow),
  isOpen: () => true,
  underLip: null,
  air: ["density", "viscosity"],
  words: {
    name: "honeycomb",
    equation:
      "Q = n·(πD²/4)·V,  Δp = ½ρV²·(1 + 4·f_app·L/D),  f_app·Re = 3.44/√x⁺ + (16 + 1.25/(4x⁺) − 3.44/√x⁺)/(1 + 0.000212/x⁺²),  x⁺ = (L/D)/Re",
    numbers: {
      count: ["n", "tubes", ""],
      diameter: ["D", "bore of a tube", "m"],
      length: ["L", "length of a tube", "m"],
    },
    velocity: (honeycomb, air, pressure) => velocityAt(honeycomb, air, pressure),
    source: "Shah, J. Fluids Eng. 100 (1978) 177–179; docs/method/restriction.md",
  },
  notes: laminarNotes,
};
