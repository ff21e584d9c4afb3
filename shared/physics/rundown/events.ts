import { findRoot } from "../../numeric/root.ts";
import { cosineOfDegrees, sineOfDegrees } from "../hold/angle.ts";
import { CONDITION_COUNT, type HoldLaw, marginOver, neededSuction } from "../hold/law.ts";
import type { Moment, RundownLaw } from "./law.ts";
import { stepped } from "./step.ts";

/** Digits to which a moment inside a step is located, relative to the step's part before it [-]. */
const TOLERANCE = 1e-10;

/** Driving margin on one attitude at a moment of the run [-]; infinite where no suction is needed. */
export type MarginAt = (moment: Moment) => number;

/**
 * Driving margin of a vehicle on one attitude, by the moment of a run.
 *
 *     F/F_required over all holding conditions
 *
 * @param hold - from {@link compileHold} [-, N, N]
 * @param angle - θ of the surface [°]
 * @returns function from a moment to its margin [-]
 *
 * Valid as {@link neededSuction}. Source: as there
 */
export function marginLaw(hold: HoldLaw, angle: number): MarginAt {
  const [sine, cosine] = [sineOfDegrees(angle), cosineOfDegrees(angle)];
  return (moment) => {
    const pulling = Math.max(0, moment.suction);
    return marginOver(pulling, neededSuction(hold, 0, CONDITION_COUNT, pulling, sine, cosine));
  };
}

/** @returns part of the step after which a quantity passes 0 that is not above it at the step's end [s] */
function passing(law: RundownLaw, from: Moment, to: Moment, excess: (moment: Moment) => number): number {
  const h = to.time - from.time;
  const [first, last] = [excess(from), excess(to)];
  if (!(first > 0)) return 0;
  // The ends as they were found: solved anew they could differ by a rounding, and with it in sign.
  const inside = (s: number) => {
    if (s === 0) return first;
    return s === h ? last : excess(stepped(law, from, s));
  };
  return findRoot(inside, 0, h, { tolerance: TOLERANCE }).root;
}

/** When a margin passed its level, and where the pack stood then. */
export interface Fall {
  /** [s]; null where it never passed */
  readonly time: number | null;
  /** loaded [V]; null where it never passed */
  readonly packVoltage: number | null;
  readonly state: "falls" | "holds-to-the-end" | "never-held";
}

/** Watches one margin through a run. */
export interface Watch {
  readonly see: (from: Moment, to: Moment) => void;
  readonly answer: () => Fall;
}

/**
 * Watches a margin through a run until it falls below a level.
 *
 *     margin(t) = level, located inside the step
 *
 * @param law - of the run-down [-]
 * @param marginAt - margin by moment [-]
 * @param level - 1, or the target [-]
 * @param start - the first moment of the run [-]
 * @returns the watch, shown each step in turn; its answer: time [s] and pack voltage [V] of the first fall, and the state
 *
 * Valid for steps in which the margin passes the level once. Source: docs/method/run-down.md
 */
export function watch(law: RundownLaw, marginAt: MarginAt, level: number, start: Moment): Watch {
  const held = marginAt(start) >= level;
  let fall: Moment | null = null;
  return {
    see: (from, to) => {
      if (!held || fall || marginAt(to) >= level) return;
      const after = passing(law, from, to, (moment) => marginAt(moment) - level);
      fall = stepped(law, from, after);
    },
    answer: () => {
      if (fall) return { time: fall.time, packVoltage: fall.packVoltage, state: "falls" };
      return { time: null, packVoltage: null, state: held ? "holds-to-the-end" : "never-held" };
    },
  };
}

export type EndReason = "minimum-voltage" | "empty";

export interface End {
  readonly moment: Moment;
  readonly reason: EndReason;
}

/**
 * The end of a run, where one lies in this step.
 *
 *     V_oc(z) − R_cell·I_pack/N_p = V_min, or z = 0, whichever comes first
 *
 * @param law - of the run-down [-]
 * @param from - moment before the step [-]
 * @param to - moment after it [-]
 * @param minimumVoltage - V_min of the loaded cell [V]
 * @returns the last moment and why it is the last; null where the run goes on [-]
 *
 * Valid for steps in which voltage and charge fall. Source: docs/method/run-down.md
 */
export function endInside(law: RundownLaw, from: Moment, to: Moment, minimumVoltage: number): End | null {
  const whenLow =
    to.cellVoltage <= minimumVoltage
      ? passing(law, from, to, (moment) => moment.cellVoltage - minimumVoltage)
      : Number.POSITIVE_INFINITY;
  const whenEmpty =
    to.charge <= 0 ? passing(law, from, to, (moment) => moment.charge) : Number.POSITIVE_INFINITY;
  if (Math.min(whenLow, whenEmpty) === Number.POSITIVE_INFINITY) return null;
  if (whenLow <= whenEmpty) return { moment: stepped(law, from, whenLow), reason: "minimum-voltage" };
  return { moment: { ...stepped(law, from, whenEmpty), charge: 0 }, reason: "empty" };
}
