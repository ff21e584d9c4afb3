import { nonDominated } from "../../shared/decide/choose/front.ts";
import { type Contest, solvePiece, uncertaintyOfSet } from "../jobs/piece.ts";
import { computedText } from "../routes/computations.ts";
import { nextTestsText } from "../routes/nextTests.ts";

/** What a thread can be asked to do: input and answer travel as structured clones, bytes of an answer without copying. */
export const TASKS = {
  /** solves a piece of a choosing */
  solve: solvePiece,
  /** finds how sure one set of a choosing is */
  doubt: uncertaintyOfSet,
  /** finds the sets that no other dominates */
  front: ({ keys, among }: Contest) => nonDominated(keys, among),
  /** answers a request from its body alone */
  compute: computedText,
  /** finds which bench tests would tell most of a stored build */
  nextTests: nextTestsText,
} as const;

export type TaskName = keyof typeof TASKS;
export type Input<N extends TaskName> = Parameters<(typeof TASKS)[N]>[0];
export type Output<N extends TaskName> = ReturnType<(typeof TASKS)[N]>;

/** Does one task on the thread that calls it. */
export const done = <N extends TaskName>(name: N, input: Input<N>): Output<N> =>
  (TASKS[name] as (input: Input<N>) => Output<N>)(input);
