import { type InertiaBasis, inertiaBasis } from "../../../../shared/book/inertiaBasis.ts";
import { type Book, solvable } from "../../../../shared/book/resolve.ts";
import type { PowerCutInput } from "../../../../shared/physics/powerCut.ts";
import { attitudeRows, type Outcome } from "../../../state/outcome.ts";

/** What is asked of the other thread, all of it plain data. */
export interface Question {
  readonly input: PowerCutInput;
  /** attitudes that must hold, as a sentence names them [°] */
  readonly named: readonly { readonly name: string; readonly angle: number }[];
}

/** @returns the power cut to follow; null where the build has no numbers, or its inertia isn't known */
export function questionOf(inertia: InertiaBasis, outcome: Outcome): Question | null {
  const input = outcome.resolved && solvable(outcome.resolved);
  if (!input || !outcome.prediction?.point || inertia.basis === "missing") return null;
  const named = attitudeRows(outcome).map(({ name, angle }) => ({ name, angle }));
  return { input: { ...input, inertia: inertia.value }, named };
}

/** @returns the inertia of a build */
export function inertiaOf(book: Book, { build }: Outcome): InertiaBasis {
  return inertiaBasis(book, build);
}
