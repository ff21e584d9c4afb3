import type { Skirt } from "../../../model/parts/skirt.ts";

/** What a need is made of as numbers, SI. */
export interface NeedNumbers {
  /** everything on board [kg] */
  readonly mass: number;
  readonly wheelbase: number;
  readonly track: number;
  /** over the surface [m] */
  readonly cgHeight: number;
  /** of a typed surface [-], [m] */
  readonly wheelFriction: number;
  readonly roughness: number;
  /** of a typed skirt [m], [m²] */
  readonly perimeter: number;
  readonly area: number;
  readonly land: number;
  readonly gap: number;
  readonly skirtFriction: number;
  /** of a typed pack [-], [C], [V], [Ω] */
  readonly series: number;
  readonly capacity: number;
  readonly minimumVoltage: number;
  readonly cellResistance: number;
  readonly wireResistance: number;
  /** of a typed motor [rpm/V], [Ω], [A], [K/W] */
  readonly kv: number;
  readonly resistance: number;
  readonly noLoadCurrent: number;
  readonly thermalResistance: number;
}

/** Parts that a need takes from the book, by identifier; null: its own numbers. */
export interface NeedParts {
  readonly surface: string | null;
  readonly skirt: string | null;
  readonly pack: string | null;
  readonly motor: string | null;
}

/** A vehicle that is not in the book: what it weighs, what it clings with, what drives it. */
export interface TypedNeed {
  readonly numbers: NeedNumbers;
  readonly parts: NeedParts;
  readonly edge: Skirt["edge"];
}

/** A rotor of which only the drawing is known, in proportion to its diameter. */
export interface DrawnRotor {
  readonly blades: number;
  /** β₂ from the tangent [°] */
  readonly exitAngle: number;
  /** inlet diameter and exit width over the diameter [-] */
  readonly inletRatio: number;
  readonly widthRatio: number;
}

export type PartKey = keyof NeedParts;
export const PART_KEYS: readonly PartKey[] = ["surface", "skirt", "pack", "motor"];
