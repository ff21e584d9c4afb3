import { cosineOfDegrees, sineOfDegrees } from "../../physics/hold/angle.ts";
import {
  CONDITION_COUNT,
  CONDITIONS,
  compileHold,
  type HoldLaw,
  NUMBERS_PER_CONDITION,
  neededSuction,
  weightIn,
} from "../../physics/hold/law.ts";
import type { Vehicle } from "../../physics/hold/vehicle.ts";
import type { WantedAttitude } from "./problem.ts";

const MODES = ["liftOff", "slide", "tip", "climb"] as const;
export const MODE_COUNT = MODES.length;
/** Parked modes come first. */
const COUNTS = { parked: 3, driving: 4 } as const;
export const LIFT_OFF = 0;

/** Step of the attitudes in search of the worst [°]. */
export const SCAN_STEP = 3;
const CEILING = 180;
export const SCANNED = CEILING / SCAN_STEP + 1;

/** What the wanted attitudes of one mode need on running gear that gives, per mass. */
export interface StateNeeds {
  /** F_required and N_lim = F_required + W cos θ of each attitude and mode that needs suction, in pairs [N/kg] */
  readonly fixed: Float64Array;
  /** the same over all attitudes, mode by mode, 0 where none is needed; null: the worst one is no wish */
  readonly scanned: readonly Float64Array[] | null;
}

/** What combinations that share all but the mass need on running gear that gives. */
export interface GivingNeeds {
  /** the vehicle's holding conditions at 1 kg */
  readonly unit: HoldLaw;
  readonly parked: StateNeeds;
  readonly driving: StateNeeds;
  /** least and greatest N_lim of all of them [N/kg]; null where none needs suction */
  readonly loads: readonly [number, number] | null;
}

/**
 * F_required of one mode on one attitude.
 *
 *     as {@link neededSuction}
 *
 * @param unit - conditions at 1 kg
 * @param mode - by place: lift-off, slide, tip, climb [-]
 * @param sine - sin θ [-]
 * @param cosine - cos θ [-]
 * @returns F_required per mass [N/kg]; 0 where none is needed
 *
 * Valid where suction helps every condition; allocates nothing. Source: docs/method/holding.md
 */
export function neededBy(unit: HoldLaw, mode: number, sine: number, cosine: number): number {
  const [from, to] = CONDITIONS[MODES[mode]];
  return neededSuction(unit, from, to, 0, sine, cosine);
}

function helpsAll(unit: HoldLaw, conditions: number): boolean {
  for (let i = 0; i < conditions; i++) if (!(unit[i * NUMBERS_PER_CONDITION] > 0)) return false;
  return true;
}

function pairAt(unit: HoldLaw, mode: number, angle: number): [number, number] {
  const [sine, cosine] = [sineOfDegrees(angle), cosineOfDegrees(angle)];
  const required = neededBy(unit, mode, sine, cosine);
  return [required, required + weightIn(unit) * cosine];
}

function stateNeeds(
  unit: HoldLaw,
  wanted: readonly WantedAttitude[],
  state: WantedAttitude["mode"],
): StateNeeds {
  const angles = wanted.filter(({ mode }) => mode === state).map(({ angle }) => angle);
  const modes = Array.from({ length: COUNTS[state] }, (_, mode) => mode);
  const fixed = angles.flatMap((angle) =>
    angle === "worst" ? [] : modes.map((mode) => pairAt(unit, mode, angle)).filter(([needed]) => needed > 0),
  );
  const over = (mode: number) =>
    Float64Array.from(Array.from({ length: SCANNED }, (_, i) => pairAt(unit, mode, i * SCAN_STEP)).flat());
  return {
    fixed: Float64Array.from(fixed.flat()),
    scanned: angles.includes("worst") ? modes.map(over) : null,
  };
}

function loadsOf(states: readonly StateNeeds[]): readonly [number, number] | null {
  let [least, most] = [Number.POSITIVE_INFINITY, Number.NEGATIVE_INFINITY];
  for (const pairs of states.flatMap(({ fixed, scanned }) => [fixed, ...(scanned ?? [])]))
    for (let i = 0; i < pairs.length; i += 2) {
      if (!(pairs[i] > 0)) continue;
      least = Math.min(least, pairs[i + 1]);
      most = Math.max(most, pairs[i + 1]);
    }
  return most > Number.NEGATIVE_INFINITY ? [least, most] : null;
}

/**
 * What the wanted attitudes need on running gear that gives, per mass.
 *
 *     F_required/m and N_lim/m: conditions are linear in the weight
 *
 * @param vehicle - of any mass, its skirt's share included, SI
 * @param wanted - attitudes [°]
 * @returns needs [N/kg]; null where a condition of a wanted state is one that no suction helps: then ask the general solver
 * @throws {OutOfRangeError} on a vehicle that can't be
 *
 * Valid for combinations that share all but the mass. Source: docs/method/holding.md
 */
export function givingNeeds(vehicle: Vehicle, wanted: readonly WantedAttitude[]): GivingNeeds | null {
  const unit = compileHold({ ...vehicle, mass: 1 });
  const drives = wanted.some(({ mode }) => mode === "driving");
  if (!helpsAll(unit, drives ? CONDITION_COUNT : CONDITIONS.tip[1])) return null;
  const [parked, driving] = [stateNeeds(unit, wanted, "parked"), stateNeeds(unit, wanted, "driving")];
  return { unit, parked, driving, loads: loadsOf([parked, driving]) };
}
