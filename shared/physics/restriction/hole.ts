import { OutOfRangeError, requireNonNegative, requirePositive } from "../../numeric/errors.ts";
import { formatDigits, formatFixed } from "../../units/format.ts";
import { HEAT_CAPACITY_RATIO } from "../constants.ts";
import type { Note } from "../note.ts";
import { type HoleEdge, holeDischargeCoefficient, ISO_TERM_HELD_BELOW } from "./holeCoefficient.ts";
import { type LeakAir, type RestrictionLaw, slopeByDifference } from "./law.ts";

/** Round holes of one size through a wall between two large rooms: a bleed plate, or vents. */
export interface Holes {
  /** bore d [m] */
  readonly diameter: number;
  /** wall t [m] */
  readonly thickness: number;
  /** N_h [-] */
  readonly count: number;
  /** "sharp" unless given */
  readonly edge?: HoleEdge;
  /** radius of a rounded inlet, the smaller of 0.2 d and t unless given [m] */
  readonly inletRadius?: number;
  /** of a plate that was calibrated, in place of the computed one [-] */
  readonly dischargeCoefficient?: number;
}

export interface HoleFlow {
  /** through all holes, at the upstream air [m³/s] */
  readonly flow: number;
  /** C_d [-]; 0 at Δp = 0, where the flow creeps, unless the caller gave C_d */
  readonly dischargeCoefficient: number;
  /** relative, of C_d; 0 where the caller gave C_d, whose uncertainty the caller knows [-] */
  readonly uncertainty: number;
  /** of the bore, Re_d = C_d·d·√(2Δp/ρ)/ν [-] */
  readonly reynolds: number;
}

/** ISO 5167-2:2003, 5.3.2.2 with β → 0. */
const EXPANSIBILITY = 0.351;
/** ISO 5167-2 holds for p₂/p₁ of this and above. */
const LEAST_PRESSURE_RATIO = 0.75;
/** Judgement on millimetre holes outside the standard's range. */
const UNCERTAINTY = { usual: 0.03, doubtful: 0.06, creeping: 0.15 } as const;
const DOUBTFUL_REYNOLDS = 2000;
const DOUBTFUL_RATIO = { from: 0.4, to: 1 } as const;
const LONGEST = 10;
/** Lichtarowicz's line reaches 0 near 97 bores; well before it the hole is a tube, of which it says nothing (choice). */
const NO_HOLE_FROM = 50;

/**
 * Volume flow through holes at a given suction.
 *
 *     Q = N_h·C_d·ε·(πd²/4)·√(2Δp/ρ),  ε = 1 − 0.351[1 − (p₂/p₁)^(1/κ)]
 *
 * @param holes - bore, wall, rounding [m], count [-], edge, own C_d [-]
 * @param air - density [kg/m³], viscosity [Pa·s], ambient pressure p₁ [Pa]
 * @param pressure - Δp across the wall [Pa], ≥ 0 and below the ambient pressure
 * @param path - of the holes in what the caller was given, "hole" unless given [-]
 * @returns flow [m³/s], C_d [-], its relative uncertainty [-], Re_d [-]
 * @throws {OutOfRangeError} on a negative or non-finite input, a count that is no whole number, Δp ≥ p₁, a wall of more than 50 bores without its own C_d
 *
 * Valid for t/d ≤ 10, holes several bores apart; p₂/p₁ ≥ 0.75. {@link holeNotes} says what lies outside.
 * Source: {@link holeDischargeCoefficient}; ISO 5167-2:2003, 5.3.2.2 (β → 0); docs/method/restriction.md
 */
export function holeFlow(holes: Holes, air: LeakAir, pressure: number, path = "hole"): HoleFlow {
  checkHoles(holes, air, path);
  requireNonNegative("pressure", pressure);
  const ambient = ambientOf(air);
  if (!(pressure < ambient))
    throw new OutOfRangeError("pressure", pressure, `below the ambient pressure, ${ambient}`);
  const velocity = Math.sqrt((2 * pressure) / air.density);
  const theoretical = (air.density * holes.diameter * velocity) / air.viscosity;
  const coefficient = holes.dischargeCoefficient ?? computedCoefficient(holes, theoretical);
  const reynolds = coefficient * theoretical;
  const area = (holes.count * Math.PI * holes.diameter ** 2) / 4;
  return {
    flow: area * coefficient * holeExpansibility(pressure, ambient) * velocity,
    dischargeCoefficient: coefficient,
    uncertainty: holes.dischargeCoefficient === undefined ? uncertaintyOf(holes, reynolds) : 0,
    reynolds,
  };
}

/**
 * Expansibility of air through a hole in a large wall.
 *
 *     ε = 1 − 0.351[1 − (p₂/p₁)^(1/κ)],  p₂ = p₁ − Δp
 *
 * @param pressure - Δp [Pa], 0 ≤ Δp < p₁
 * @param ambient - p₁ [Pa]
 * @returns ε [-]
 *
 * Valid for p₂/p₁ ≥ 0.75. Source: ISO 5167-2:2003, 5.3.2.2 with β → 0
 */
export function holeExpansibility(pressure: number, ambient: number): number {
  return 1 - EXPANSIBILITY * (1 - (1 - pressure / ambient) ** (1 / HEAT_CAPACITY_RATIO));
}

/**
 * What to know about a hole's flow outside the range of its sources.
 *
 *     notes on t/d > 10, Re_d < 500, p₂/p₁ < 0.75
 *
 * @param holes - bore, wall, rounding [m], count [-], edge, own C_d [-]
 * @param air - density [kg/m³], viscosity [Pa·s], ambient pressure [Pa]
 * @param pressure - Δp across the wall [Pa], ≥ 0
 * @returns the notes, none inside the ranges [-]
 * @throws {OutOfRangeError} as {@link holeFlow}
 *
 * Valid for any holes that {@link holeFlow} takes. Source: ranges of the sources named there
 */
export function holeNotes(holes: Holes, air: LeakAir, pressure: number): Note[] {
  const { reynolds } = holeFlow(holes, air, pressure);
  const notes: Note[] = [];
  const computed = holes.dischargeCoefficient === undefined;
  if (computed && holes.thickness / holes.diameter > LONGEST)
    notes.push({
      code: "hole-too-long",
      message: `The hole is ${formatFixed(holes.thickness / holes.diameter, 1)} bores long; its coefficient is known up to ${LONGEST}.`,
    });
  if (computed && pressure > 0 && reynolds < ISO_TERM_HELD_BELOW)
    notes.push({
      code: "hole-reynolds-low",
      message: `At Re ${reynolds.toFixed(0)} the hole's coefficient is an estimate, ±15 %: use larger or fewer holes.`,
    });
  if (1 - pressure / ambientOf(air) < LEAST_PRESSURE_RATIO)
    notes.push({
      code: "hole-compressible",
      message:
        "The suction is more than a quarter of the ambient pressure; the expansibility is extrapolated.",
    });
  return notes;
}

const flowThrough = (holes: Holes, air: LeakAir, pressure: number): number =>
  holeFlow(holes, air, pressure).flow;

/** Holes of one size, as a restriction. */
export const holesLaw: RestrictionLaw<Holes> = {
  flow: flowThrough,
  slope: slopeByDifference(flowThrough),
  isOpen: () => true,
  underLip: null,
  air: ["density", "viscosity", "pressure"],
  words: {
    name: "holes",
    equation: "Q = N·C_d·ε·(πd²/4)·√(2Δp/ρ),  C_d(t/d, Re),  ε = 1 − 0.351[1 − (p₂/p₁)^(1/1.4)]",
    numbers: {
      count: ["N", "holes", ""],
      diameter: ["d", "bore", "m"],
      thickness: ["t", "wall", "m"],
    },
    velocity: null,
    source: "Idelchik; Lichtarowicz, Duggins & Markland (1965); ISO 5167-2; docs/method/restriction.md",
  },
  notes: holeNotes,
};

function checkHoles(holes: Holes, air: LeakAir, path = "hole"): void {
  requirePositive(`${path}.diameter`, holes.diameter);
  requireNonNegative(`${path}.thickness`, holes.thickness);
  if (!(Number.isInteger(holes.count) && holes.count >= 1))
    throw new OutOfRangeError(`${path}.count`, holes.count, "a whole number, 1 or more");
  if (holes.inletRadius !== undefined) requireNonNegative(`${path}.inletRadius`, holes.inletRadius);
  if (holes.dischargeCoefficient !== undefined)
    requirePositive(`${path}.dischargeCoefficient`, holes.dischargeCoefficient);
  else if (!(holes.thickness <= NO_HOLE_FROM * holes.diameter))
    throw new OutOfRangeError(
      `${path}.thickness`,
      holes.thickness,
      `at most ${NO_HOLE_FROM} bores, ${formatDigits(NO_HOLE_FROM * holes.diameter, 3)} m; a longer one is a tube and needs its own discharge coefficient`,
    );
  requirePositive("air.density", air.density);
  requirePositive("air.viscosity", air.viscosity);
}

function ambientOf({ pressure }: LeakAir): number {
  return requirePositive("air.pressure", pressure ?? Number.NaN);
}

function computedCoefficient(holes: Holes, theoreticalReynolds: number): number {
  if (theoreticalReynolds === 0) return 0;
  const { diameter, thickness, edge = "sharp", inletRadius } = holes;
  const shape = { thicknessRatio: thickness / diameter, edge };
  if (inletRadius === undefined) return holeDischargeCoefficient(shape, theoreticalReynolds);
  return holeDischargeCoefficient({ ...shape, radiusRatio: inletRadius / diameter }, theoreticalReynolds);
}

function uncertaintyOf(holes: Holes, reynolds: number): number {
  const ratio = holes.thickness / holes.diameter;
  if (reynolds < ISO_TERM_HELD_BELOW) return UNCERTAINTY.creeping;
  const between = ratio > DOUBTFUL_RATIO.from && ratio < DOUBTFUL_RATIO.to;
  const doubtful = reynolds < DOUBTFUL_REYNOLDS || between || holes.edge === "rounded";
  return doubtful ? UNCERTAINTY.doubtful : UNCERTAINTY.usual;
}
