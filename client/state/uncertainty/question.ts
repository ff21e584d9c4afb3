import { type BuildUncertainty, buildUncertainty } from "../../../shared/book/buildUncertainty.ts";
import { type Book, solvable } from "../../../shared/book/resolve.ts";
import type { StatedUncertainty } from "../../../shared/decide/uncertainty.ts";
import { STANDARD_ANGLES } from "../../../shared/physics/predict.ts";
import type { AnyPredictInput } from "../../../shared/physics/predictAny.ts";
import type { Outcome } from "../outcome.ts";

/** What the thread is asked, plain data. */
export interface UncertaintyQuestion {
  readonly input: AnyPredictInput;
  readonly asked: StatedUncertainty;
  readonly sources: BuildUncertainty["sources"];
}

/** Floor, wall, ceiling and the user's own, then the worst parked and the worst driving: the last two always. */
function anglesOf({ build, prediction }: Outcome): number[] {
  const named = new Set([...STANDARD_ANGLES, ...build.attitudes.map((each) => each.angle)]);
  const worst = prediction ? [prediction.worst.parked.angle, prediction.worst.driving.angle] : [];
  return [...named, ...worst];
}

/** @returns what is to be sampled of a solved build; null where it has no numbers */
export function uncertaintyQuestion(book: Book, outcome: Outcome): UncertaintyQuestion | null {
  const { build, resolved, prediction } = outcome;
  const input = resolved && solvable(resolved);
  if (!input || !prediction) return null;
  const { sources, ...doubts } = buildUncertainty(book, build, resolved);
  return { input, asked: { ...doubts, angles: anglesOf(outcome) }, sources };
}

/** @returns whether anything at all is uncertain in it */
export function statesUncertainty({ sources }: UncertaintyQuestion): boolean {
  return Object.keys(sources).length > 0;
}
