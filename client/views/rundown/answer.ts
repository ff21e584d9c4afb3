import { SAME_ANGLE, worstName } from "../../../shared/decide/verdict/attitudeWords.ts";
import { type Answer, asProblem } from "../../../shared/numeric/errors.ts";
import { worstAttitudeUnder } from "../../../shared/physics/hold/holdUnder.ts";
import { CONDITION_COUNT, compileHold } from "../../../shared/physics/hold/law.ts";
import type { RundownInput } from "../../../shared/physics/rundown.ts";
import {
  type AttitudeFalls,
  type Fall,
  followRun,
  type Rundown,
  rundownLaw,
  type Sample,
} from "../../../shared/physics/rundown.ts";
import { coursesOf } from "./keep/courses.ts";
import type { KeptRun } from "./keep/keepWords.ts";
import { keepFor } from "./keep/wish.ts";
import { type OverJoint, overHardest, tracksOf } from "./over.ts";
import type { Named, Question } from "./question.ts";

/** One attitude through the run. */
export interface Track extends Named {
  readonly holds: Fall;
  readonly target: Fall;
  /** driving margin by sample, parked where the cycle only parks it there [-]; null where no pull is needed */
  readonly margins: readonly (number | null)[];
  /** under which part of the drive cycle, where there is one */
  readonly judged?: AttitudeFalls["judged"];
}

export interface Answered {
  readonly end: Rundown["end"];
  readonly samples: readonly Sample[];
  readonly warnings: Rundown["warnings"];
  readonly tracks: readonly Track[];
  /** the same over the hardest joint of the surface; null: it has none */
  readonly over: OverJoint | null;
  /** of one loaded cell [V] */
  readonly minimumVoltage: number;
  /** C of one cell [C], cells in parallel [-] */
  readonly pack: { readonly capacity: number; readonly parallel: number };
  /** it drives a cycle; each attitude is judged under its own part of it */
  readonly cycled: boolean;
  readonly targetMargin: number;
  /** null: the winding was taken cold; "settled": without a time constant */
  readonly winding: "followed" | "settled" | null;
  /** its thermal figures are guesses or a maker's */
  readonly windingEstimated: boolean;
  /** null: the throttle is steady */
  readonly kept: KeptRun | null;
}

export type Reply = Answer<Answered>;

/** The worst attitude at the start, where none of the named ones is it. */
function worstOf(input: RundownInput, named: readonly Named[]): Named[] {
  const start = rundownLaw(input).momentAt(0, input.startCharge ?? 1, 0);
  const angle = worstAttitudeUnder(compileHold(input.vehicle), CONDITION_COUNT, start.pull);
  if (!(angle > 0) || named.some((each) => Math.abs(each.angle - angle) < SAME_ANGLE)) return [];
  const name = worstName(angle);
  const own = name === "the overhang" || name === "the slope";
  return [{ key: "worst", title: "Worst", name: own ? `the worst ${name.slice(4)}` : name, angle }];
}

function windingOf({ motor }: RundownInput): Answered["winding"] {
  if (motor.thermalResistance === null) return null;
  return motor.thermalTimeConstant ? "followed" : "settled";
}

/** @returns the run with the margins of every attitude along it @throws as {@link runDown} */
export function answerTo(question: Question): Answered {
  const { input: build, named, windingEstimated, keep: wish, units, joints } = question;
  const keep = wish && keepFor(build, wish);
  const all = [...named, ...worstOf({ ...build, keep }, named)];
  const input = { ...build, keep, angles: all.map((each) => each.angle) };
  const run = followRun(input);
  return {
    end: run.end,
    samples: run.samples,
    warnings: run.warnings,
    tracks: tracksOf(run, all),
    over: overHardest(input, joints, all),
    minimumVoltage: input.pack.cell.minimumVoltage,
    pack: { capacity: input.pack.cell.capacity, parallel: input.pack.parallel },
    cycled: (input.cycle ?? []).length > 0,
    targetMargin: input.targetMargin ?? 1,
    winding: windingOf(input),
    windingEstimated,
    kept:
      wish && keep && run.keep ? { wish, keep, units, ...run.keep, courses: coursesOf(input, run) } : null,
  };
}

/** @returns the run, or in words why there is none */
export function replyTo(question: Question): Reply {
  return asProblem(() => answerTo(question));
}
