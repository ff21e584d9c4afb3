import type { JointsUnder } from "../decide/joints/crossed.ts";
import type { StatedUncertainty } from "../decide/uncertainty.ts";
import { STANDARD_ANGLES } from "../physics/predict.ts";
import type { AnyPredictInput } from "../physics/predictAny.ts";
import type { Book } from "./book.ts";
import { type BuildUncertainty, uncertaintySteps } from "./buildUncertainty.ts";
import { jointsUnder } from "./jointsUnder.ts";
import type { Solved } from "./marks.ts";
import { solvable } from "./resolve/resolved.ts";
import { atOnce, type Steps } from "./steps.ts";
import { jointSources } from "./uncertainty/jointSources.ts";

/** What is to be sampled of a build; plain data, fit for another thread. */
export interface UncertaintyAsked {
  readonly input: AnyPredictInput;
  readonly asked: StatedUncertainty;
  /** of the surface; null: none */
  readonly joints: JointsUnder | null;
  readonly sources: BuildUncertainty["sources"];
}

/** Floor, wall, ceiling and the user's own, then the worst parked and the worst driving: the last two always. */
function anglesOf({ build, prediction }: Solved): number[] {
  const named = new Set([...STANDARD_ANGLES, ...build.attitudes.map((each) => each.angle)]);
  const worst = prediction ? [prediction.worst.parked.angle, prediction.worst.driving.angle] : [];
  return [...named, ...worst];
}

/** @returns what is to be sampled of a solved build; null where it has no numbers */
export function uncertaintyAsked(book: Book, solved: Solved): UncertaintyAsked | null {
  return atOnce(askedSteps(book, solved));
}

/** {@link uncertaintyAsked}, the costly parts of it a step each. */
export function* askedSteps(book: Book, solved: Solved): Steps<UncertaintyAsked | null> {
  const { build, resolved, prediction } = solved;
  const input = resolved && solvable(resolved);
  if (!input || !prediction) return null;
  const { sources, ...doubts } = yield* uncertaintySteps(book, build, resolved);
  const joints = resolved.input ? jointsUnder(book, build) : null;
  const over = joints ? jointSources(book, build) : {};
  return { input, joints, asked: { ...doubts, angles: anglesOf(solved) }, sources: { ...over, ...sources } };
}

/** @returns whether anything at all is uncertain in it */
export function statesUncertainty({ sources }: Pick<UncertaintyAsked, "sources">): boolean {
  return Object.keys(sources).length > 0;
}
