import { SAME_ANGLE, worstName } from "../../../../shared/decide/verdict/attitudeWords.ts";
import { type Answer, asProblem } from "../../../../shared/numeric/errors.ts";
import { powerCut } from "../../../../shared/physics/powerCut.ts";
import type { Question } from "./question.ts";

/** When an attitude lets go. */
export interface LetsGo {
  readonly name: string;
  /** parked, after the cut [s] */
  readonly after: number;
}

export interface Answered {
  /** attitudes that hold while it runs and need a pull, the first to let go first */
  readonly held: readonly LetsGo[];
  /** those that aren't held even while it runs */
  readonly notHeld: readonly string[];
  /** from switching on until every one of them holds [s]; null: never */
  readonly toHold: number | null;
}

export type Reply = Answer<Answered>;

/** @returns when each attitude lets go; the worst joins the named ones @throws as {@link powerCut} */
export function answerTo({ input, named }: Question): Answered {
  const { attitudes, toHold } = powerCut(
    input,
    named.map(({ angle }) => angle),
  );
  const nameOf = (angle: number) =>
    named.find((each) => Math.abs(each.angle - angle) < SAME_ANGLE)?.name ?? worstName(angle);
  const once = new Map(
    attitudes.flatMap(({ angle, parked }) => (parked === null ? [] : [[nameOf(angle), parked] as const])),
  );
  const each = [...once].map(([name, after]) => ({ name, after }));
  return {
    held: each.filter(({ after }) => after > 0).sort((a, b) => a.after - b.after),
    notHeld: each.filter(({ after }) => after === 0).map(({ name }) => name),
    toHold,
  };
}

/** @returns the power cut, or in words why there is none */
export function replyTo(question: Question): Reply {
  return asProblem(() => answerTo(question));
}
