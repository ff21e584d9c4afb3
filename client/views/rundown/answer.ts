import { SAME_ANGLE, worstName } from "../../../shared/decide/verdict/attitudeWords.ts";
import { NotEnoughDataError, OutOfRangeError } from "../../../shared/numeric/errors.ts";
import { holdOf } from "../../../shared/physics/hold/holdAt.ts";
import { CONDITION_COUNT, compileHold, type HoldLaw } from "../../../shared/physics/hold/law.ts";
import { worstAttitude } from "../../../shared/physics/hold/worst.ts";
import type { RundownInput } from "../../../shared/physics/rundown.ts";
import {
  type AttitudeFalls,
  type Fall,
  type Rundown,
  runDown,
  rundownLaw,
  type Sample,
} from "../../../shared/physics/rundown.ts";
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
  /** of one loaded cell [V] */
  readonly minimumVoltage: number;
  /** it drives a cycle; each attitude is judged under its own part of it */
  readonly cycled: boolean;
  readonly targetMargin: number;
  /** null: the winding was taken cold; "settled": without a time constant */
  readonly winding: "followed" | "settled" | null;
  /** its thermal figures are guesses or a maker's */
  readonly windingEstimated: boolean;
}

export type Reply = { readonly answered: Answered } | { readonly problem: string };

/** The worst attitude at the start, where none of the named ones is it. */
function worstOf(input: RundownInput, hold: HoldLaw, named: readonly Named[]): Named[] {
  const start = rundownLaw(input).momentAt(0, input.startCharge ?? 1, 0);
  const angle = worstAttitude(hold, CONDITION_COUNT, Math.max(0, start.suction));
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
export function answerTo({ input, named, windingEstimated }: Question): Answered {
  const hold = compileHold(input.vehicle);
  const all = [...named, ...worstOf(input, hold, named)];
  const run = runDown({ ...input, angles: all.map((each) => each.angle) });
  const marginAt = (sample: Sample, { angle, judged }: AttitudeFalls) => {
    const load = sample.loads?.find(({ driveCurrent }) => driveCurrent === judged?.driveCurrent) ?? sample;
    const held = holdOf(hold, Math.max(0, load.suction), angle);
    return (judged?.parked ? held.parked : held.driving).margin;
  };
  return {
    end: run.end,
    samples: run.samples,
    warnings: run.warnings,
    tracks: all.flatMap((each) => {
      const falls = run.attitudes.find(({ angle }) => angle === each.angle);
      if (!falls) return [];
      const margins = run.samples.map((sample) => marginAt(sample, falls));
      const { holds, target, judged } = falls;
      return [{ ...each, holds, target, margins, ...(judged ? { judged } : {}) }];
    }),
    minimumVoltage: input.pack.cell.minimumVoltage,
    cycled: (input.cycle ?? []).length > 0,
    targetMargin: input.targetMargin ?? 1,
    winding: windingOf(input),
    windingEstimated,
  };
}

/** @returns the run, or in words why there is none */
export function replyTo(question: Question): Reply {
  try {
    return { answered: answerTo(question) };
  } catch (error) {
    if (!(error instanceof OutOfRangeError || error instanceof NotEnoughDataError)) throw error;
    return { problem: `${error.message}.`.replace(/\.\.$/, ".") };
  }
}
