import { OutOfRangeError, requirePositive } from "../../numeric/errors.ts";
import { isOpen, skirtOf } from "./build.ts";
import { dutyOf } from "./duty.ts";
import type { SizeQuestion } from "./input.ts";
import { type SizeRow, sizeRow } from "./row.ts";
import { type Asked, askedOf } from "./wound.ts";

/** What can be had where the need can't. */
export interface Nearest {
  /** greatest that keeps every limit [N] */
  readonly pull: number;
  /** [m] */
  readonly diameter: number;
}

export interface Sizes {
  readonly rows: readonly SizeRow[];
  /** of the rows that keep every limit, the one that takes least from the pack; null: none does */
  readonly least: number | null;
  /** null where one does, or where not even a hundredth of the pull can be had */
  readonly nearest: Nearest | null;
}

/** @returns whether a winding does it and no limit is passed */
export function keepsLimits({ packPower, exceeds }: SizeRow): boolean {
  return packPower !== null && exceeds.length === 0;
}

/** @returns index [-] of the row that keeps every limit and takes least from the pack; null where none does */
export function leastOf(rows: readonly SizeRow[]): number | null {
  let least: number | null = null;
  rows.forEach((row, i) => {
    const now = least === null ? Number.POSITIVE_INFINITY : (rows[least].packPower ?? Number.NaN);
    if (keepsLimits(row) && (row.packPower ?? Number.NaN) < now) least = i;
  });
  return least;
}

/** Share of the wanted pull down to which one is looked for that can be had, and halvings on the way. */
const [SMALLEST, HALVINGS] = [0.01, 12];
/** Diameters among which it is looked for, at most. */
const LOOKED_AT = 16;

function atPull(asked: Asked, pull: number): Asked {
  const { build } = asked;
  const duty = isOpen(build.rotor) ? null : dutyOf(build, skirtOf(build), pull);
  return { ...asked, need: { pull }, pull, duty };
}

/** The greatest pull that some diameter makes within every limit, to a few thousandths. */
function nearestOf(asked: Asked, diameters: readonly number[]): Nearest | null {
  const every = Math.ceil(diameters.length / LOOKED_AT);
  const few = diameters.filter((_, i) => i % every === 0);
  const fitting = (share: number) => {
    const at = atPull(asked, share * asked.pull);
    return few.find((diameter) => keepsLimits(sizeRow(at, diameter)));
  };
  let diameter = fitting(SMALLEST);
  if (diameter === undefined) return null;
  let [has, lacks] = [SMALLEST, 1];
  for (let i = 0; i < HALVINGS; i++) {
    const share = Math.sqrt(has * lacks);
    const found = fitting(share);
    if (found === undefined) lacks = share;
    else [has, diameter] = [share, found];
  }
  return { pull: has * asked.pull, diameter };
}

/**
 * From the need back to the rotor: what each diameter of a family takes to make a pull.
 *
 *     F → Δp, Q → φ, ω, M → k_t, K_v, W;  least: min W among the rows that keep every limit
 *
 * @param question - build without its motor's winding, need [N or °, -], limits, cell, SI
 * @param diameters - D [m], each > 0
 * @returns a row each, SI (kv [rpm/V]); the index of the least; the nearest pull where none keeps its limits [N]
 * @throws {OutOfRangeError} with the path of a number that can't be, on a need that no rotor meets
 * @throws {NotEnoughDataError} on a curve that never falls to what the leak lets through
 *
 * Valid as a prediction: each row is the operating point of the build put back. Source: docs/method/size.md
 */
export function sizesOf(question: SizeQuestion, diameters: readonly number[]): Sizes {
  if (diameters.length === 0) throw new OutOfRangeError("diameters", 0, "one diameter or more");
  diameters.forEach((diameter, i) => {
    requirePositive(`diameters.${i}`, diameter);
  });
  requirePositive("motor.motorConstant", question.build.motor.motorConstant);
  const asked = askedOf(question);
  const rows = diameters.map((diameter) => sizeRow(asked, diameter));
  const least = leastOf(rows);
  return { rows, least, nearest: least === null ? nearestOf(asked, diameters) : null };
}
