import { findRoot } from "../../numeric/root.ts";
import { cosineOfDegrees, sineOfDegrees } from "../hold/angle.ts";
import { leastMarginUnder } from "../hold/holdUnder.ts";
import { CONDITION_COUNT, CONDITIONS, type HoldLaw } from "../hold/law.ts";
import type { Judged } from "./cycle.ts";
import type { Moment, RundownLaw } from "./law.ts";
import { stepped } from "./step.ts";

/** Digits to which a moment inside a step is located, relative to the step's part before it [-]. */
const TOLERANCE = 1e-10;

/** Margin on one attitude at a moment of the run [-]; infinite where no suction is needed. */
export type MarginAt = (moment: Moment) => number;

/** @returns the moment under the load that an attitude is judged by, the moment itself where there is no cycle */
export function judgedMoment(moment: Moment, judged: Judged | null): Moment {
  return judged && moment.under ? moment.under[judged.load] : moment;
}

/**
 * Margin of a vehicle on one attitude, by the moment of a run: driving, or parked where a cycle only ever parks it there.
 *
 *     F/F_required over the holding modes, each at its own limit where the gap gives; the last moment's is kept
 *
 * @param hold - from {@link compileHold} [-, N, N]
 * @param angle - θ of the surface [°]
 * @param judged - load of the cycle, and whether parked; null without a cycle [-]
 * @returns function from a moment to its margin [-]
 *
 * Valid as {@link leastMarginUnder}. Source: as there
 */
export function marginLaw(hold: HoldLaw, angle: number, judged: Judged | null): MarginAt {
  const [sine, cosine] = [sineOfDegrees(angle), cosineOfDegrees(angle)];
  const conditions = judged?.parked ? CONDITIONS.tip[1] : CONDITION_COUNT;
  let [asked, margin]: [Moment | null, number] = [null, Number.NaN];
  return (moment) => {
    if (moment !== asked) {
      const { pull } = judgedMoment(moment, judged);
      [asked, margin] = [moment, leastMarginUnder(hold, conditions, pull, sine, cosine)];
    }
    return margin;
  };
}

/** @returns part of the step after which a quantity passes 0 that is not above it at the step's end [s] */
export function passing(
  law: RundownLaw,
  from: Moment,
  to: Moment,
  excess: (moment: Moment) => number,
): number {
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
  /** of one cell, loaded [V]; null where it never passed; only with a drive cycle */
  readonly cellVoltage?: number | null;
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
 * @param judged - load of the cycle; null without a cycle [-]
 * @returns the watch, shown each step in turn; its answer: time [s] and pack voltage [V] of the first fall, and the state
 *
 * Valid for steps in which the margin passes the level once. Source: docs/method/run-down.md
 */
export function watch(
  law: RundownLaw,
  marginAt: MarginAt,
  level: number,
  start: Moment,
  judged: Judged | null,
): Watch {
  const held = marginAt(start) >= level;
  let fall: Moment | null = null;
  return {
    see: (from, to) => {
      if (!held || fall || marginAt(to) >= level) return;
      const after = passing(law, from, to, (moment) => marginAt(moment) - level);
      fall = stepped(law, from, after);
    },
    answer: () => {
      const at = fall && judgedMoment(fall, judged);
      const cell = judged ? { cellVoltage: at ? at.cellVoltage : null } : {};
      if (at) return { time: at.time, packVoltage: at.packVoltage, state: "falls", ...cell };
      const state = held ? "holds-to-the-end" : "never-held";
      return { time: null, packVoltage: null, state, ...cell };
    },
  };
}

export type EndReason = "minimum-voltage" | "empty";

export interface End {
  readonly moment: Moment;
  readonly reason: EndReason;
}

/** @returns voltage of one cell under the heaviest load of the moment [V] */
export function lowestCell(moment: Moment): number {
  const all = moment.under ?? [moment];
  return all.reduce((least, { cellVoltage }) => Math.min(least, cellVoltage), Number.POSITIVE_INFINITY);
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
 * Valid for steps in which voltage and charge fall; with a cycle the load that takes the cell lowest counts. Source: docs/method/run-down.md
 */
export function endInside(law: RundownLaw, from: Moment, to: Moment, minimumVoltage: number): End | null {
  const whenLow =
    lowestCell(to) <= minimumVoltage
      ? passing(law, from, to, (moment) => lowestCell(moment) - minimumVoltage)
      : Number.POSITIVE_INFINITY;
  const whenEmpty =
    to.charge <= 0 ? passing(law, from, to, (moment) => moment.charge) : Number.POSITIVE_INFINITY;
  if (Math.min(whenLow, whenEmpty) === Number.POSITIVE_INFINITY) return null;
  if (whenLow <= whenEmpty) return { moment: stepped(law, from, whenLow), reason: "minimum-voltage" };
  return { moment: { ...stepped(law, from, whenEmpty), charge: 0 }, reason: "empty" };
}
