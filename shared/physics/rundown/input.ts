import { NotEnoughDataError, OutOfRangeError, requirePositive } from "../../numeric/errors.ts";
import type { ByCharge } from "../cells/cell.ts";
import type { MotorInput, RotorInput } from "../point/machine.ts";
import type { PredictInput } from "../predict.ts";
import type { PropellerInput } from "../propeller.ts";
import type { SkirtInput } from "../skirt.ts";
import { type CycleSegment, checkCycle } from "./cycle.ts";

export interface CellInput {
  /** C_cell [C] */
  readonly capacity: number;
  /** loaded [V] */
  readonly minimumVoltage: number;
  /** R_cell, the same at every charge where no curve says more [Ω] */
  readonly resistance: number;
  /** R_cell by charge, as discharges showed it, by rising charge [-, Ω]; absent or null: one for all charges */
  readonly resistanceCurve?: ByCharge | null;
  /** points [charge, open-circuit voltage], by rising charge, from 0 to 1 [-, V] */
  readonly curve: readonly (readonly [number, number])[];
  /** greatest current of one cell that its maker allows [A] */
  readonly maxCurrent?: number;
}

export interface RundownInput extends Pick<PredictInput, "air" | "supply" | "vehicle"> {
  /** ducted, or an open propeller */
  readonly rotor: RotorInput | PropellerInput;
  /** needed by a ducted rotor */
  readonly skirt?: SkirtInput | null;
  readonly motor: MotorInput & {
    /** τ_th of the winding [s]; without it the winding settles at once */
    readonly thermalTimeConstant?: number | null;
  };
  readonly pack: {
    readonly series: number;
    readonly parallel: number;
    /** [Ω] */
    readonly wireResistance: number;
    readonly cell: CellInput;
  };
  /** z₀, 1 unless given [-] */
  readonly startCharge?: number;
  /** 1.5 unless given [-] */
  readonly targetMargin?: number;
  /** 1 unless given, at most 1 [s] */
  readonly step?: number;
  /** attitudes to answer for; wall, ceiling and the worst one unless given [°] */
  readonly angles?: readonly number[];
  /** what the drive draws, by share of the time; a steady load unless given */
  readonly cycle?: readonly CycleSegment[];
  /** a controller keeps this suction or thrust while it can, up to full throttle; the throttle as it is unless given */
  readonly keep?: Keep | null;
}

/** What a controller keeps: Δp of the cavity [Pa], or the thrust of an open propeller [N]. */
export type Keep = { readonly pressure: number } | { readonly thrust: number };

export const DEFAULT_TARGET_MARGIN = 1.5;
/** Longest step [s]. */
const MOST_STEP = 1;
/** Steps in one time constant of the winding, at least. */
const STEPS_PER_TIME_CONSTANT = 10;

/**
 * Stops at a run-down that can't be.
 *
 *     C, V_min, τ_th, target, kept Δp or T > 0; 0 < z₀ ≤ 1; the curve from 0 to 1; a time constant needs a thermal resistance; the cycle as {@link checkCycle}
 *
 * @param input - build with its cell, all SI [-]
 * @returns nothing
 * @throws {OutOfRangeError} with the path of a number that can't be
 * @throws {NotEnoughDataError} on a thermal time constant without a thermal resistance, a curve that stops short
 *
 * Valid for any input. Source: definitions
 */
export function checkRundown(input: RundownInput): void {
  const { cell } = input.pack;
  requirePositive("pack.cell.capacity", cell.capacity);
  requirePositive("pack.cell.minimumVoltage", cell.minimumVoltage);
  requirePositive("targetMargin", input.targetMargin ?? DEFAULT_TARGET_MARGIN);
  requireShare("startCharge", input.startCharge ?? 1, 1);
  requireShare("step", input.step ?? MOST_STEP, MOST_STEP);
  for (const angle of input.angles ?? [])
    if (!(angle >= 0 && angle <= 180)) throw new OutOfRangeError("angles", angle, "0 to 180");
  checkWinding(input.motor);
  checkKeep(input);
  if (input.cycle && input.cycle.length > 0) checkCycle(input.cycle);
  if (!(cell.curve[0]?.[0] === 0 && cell.curve[cell.curve.length - 1]?.[0] === 1))
    throw new NotEnoughDataError(
      "The cell's curve does not run from empty to full.",
      "Give its voltage at charge 0 and at charge 1.",
      "pack.cell.curve",
    );
}

function checkKeep({ keep, rotor }: RundownInput): void {
  if (!keep) return;
  const isOpen = "thrust" in rotor;
  if ("thrust" in keep) {
    requirePositive("keep.thrust", keep.thrust);
    if (!isOpen)
      throw new OutOfRangeError("keep.thrust", keep.thrust, "no thrust: a rotor in a duct keeps a suction");
    return;
  }
  requirePositive("keep.pressure", keep.pressure);
  if (isOpen)
    throw new OutOfRangeError(
      "keep.pressure",
      keep.pressure,
      "no suction: an open propeller has no cavity to keep it in; give keep.thrust",
    );
}

function checkWinding({ thermalTimeConstant, thermalResistance }: RundownInput["motor"]): void {
  if (thermalTimeConstant === undefined || thermalTimeConstant === null) return;
  requirePositive("motor.thermalTimeConstant", thermalTimeConstant);
  if (thermalResistance === null)
    throw new NotEnoughDataError(
      "The winding has a time constant but no thermal resistance.",
      "Give the motor's thermal resistance, or leave the time constant out.",
      "motor.thermalResistance",
    );
}

function requireShare(quantity: string, value: number, most: number): void {
  if (!(value > 0 && value <= most)) throw new OutOfRangeError(quantity, value, `above 0, up to ${most}`);
}

/** @returns the step that a run is made in: as asked, shorter where the winding warms faster [s] */
export function stepOf({ step = MOST_STEP, motor }: RundownInput): number {
  return Math.min(step, (motor.thermalTimeConstant ?? Number.POSITIVE_INFINITY) / STEPS_PER_TIME_CONSTANT);
}
