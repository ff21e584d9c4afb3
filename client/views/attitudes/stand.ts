import { type Mode, requiredSuction } from "../../../shared/physics/hold/holdAt.ts";
import { holdUnder } from "../../../shared/physics/hold/holdUnder.ts";
import { compileHold } from "../../../shared/physics/hold/law.ts";
import type { Pull } from "../../../shared/physics/hold/pull.ts";
import type { Vehicle } from "../../../shared/physics/hold/vehicle.ts";

export const STATES = ["parked", "driving"] as const;
export type State = (typeof STATES)[number];

/** What one state needs on one attitude. */
export interface Need {
  /** smallest pull that keeps it [N]; 0 where none is needed, infinite where none suffices */
  readonly pull: number;
  /** pull made over pull needed; null where none is needed */
  readonly margin: number | null;
  /** what lets go first; none where no pull is needed */
  readonly modes: readonly Mode[];
  /** of the lip under the load at which that lets go [m], 0: the skirt touches; null where the running gear is rigid, or no pull is needed or none suffices */
  readonly gap: number | null;
}

/** How a vehicle stands on one attitude. */
export interface Stand extends Readonly<Record<State, Need>> {
  /** [°] */
  readonly angle: number;
}

export const MODES: Readonly<Record<State, readonly Mode[]>> = {
  parked: ["liftOff", "slide", "tip"],
  driving: ["liftOff", "slide", "tip", "climb"],
};
/** Needs closer than this, relatively, tie. */
const TIE = 1e-9;

/** @returns the modes that need most pull; none where no pull is needed */
export function governing(required: Readonly<Record<Mode, number>>, modes: readonly Mode[]): Mode[] {
  const most = Math.max(...modes.map((mode) => required[mode]));
  return most > 0 ? modes.filter((mode) => required[mode] >= most * (1 - TIE)) : [];
}

/**
 * How a vehicle stands on one attitude.
 *
 * @param vehicle - SI
 * @param made - pull, rigid or giving [N]
 * @param angle - 0 floor, 90 wall, 180 ceiling [°]
 * @returns pull needed [N], margin and governing modes, parked and driving nose uphill
 */
export function standAt(vehicle: Vehicle, made: Pull, angle: number): Stand {
  const hold = holdUnder(compileHold(vehicle), made, angle);
  const pull = requiredSuction(vehicle, angle);
  const need = (state: State): Need => {
    const { margin, governs } = hold[state];
    // Rigid, what needs most pull has least margin; where the gap gives, each mode has a pull of its own.
    const modes = hold.gaps ? governs : governing(hold.required, MODES[state]);
    const [first] = governs;
    return { pull: pull[state], margin, modes, gap: (first && hold.gaps?.[first]) ?? null };
  };
  return { angle, parked: need("parked"), driving: need("driving") };
}
