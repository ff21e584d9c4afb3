import { type Book, findById } from "../../../shared/book/book.ts";
import { jointsUnder } from "../../../shared/book/jointsUnder.ts";
import { originsOf } from "../../../shared/book/origins.ts";
import { solvable } from "../../../shared/book/resolve.ts";
import { clearanceBoard } from "../../../shared/book/roughnessWorkings.ts";
import { crossedJoints } from "../../../shared/decide/joints/crossed.ts";
import { workingsOfAny } from "../../../shared/physics/anyWorkings.ts";
import type { AnyPredictInput, AnyPrediction } from "../../../shared/physics/predictAny.ts";
import type { Board, Origin } from "../../../shared/physics/working.ts";
import { currentBook } from "../../state/book.ts";
import { shownOutcome } from "../../state/onScreen.ts";
import { attitudeRows, type Outcome } from "../../state/outcome.ts";

export const NO_BOARD: Board = { workings: [], origins: [] };

/** What the solver found: no equation gives it in one step. */
export function solvedOrigins({ point }: Pick<AnyPrediction, "point">): Origin[] {
  if (!point || point.pressure === null) return [];
  const what = "Found by the solver: the flow at which rotor and leak have one pressure.";
  return [{ symbol: "φ", value: point.phi, what, tests: [] }];
}

const anglesOf = (outcome: Outcome, { worst }: Pick<AnyPrediction, "worst">): number[] => [
  ...new Set([...attitudeRows(outcome).map(({ angle }) => angle), worst.parked.angle, worst.driving.angle]),
];

/** What is predicted, beside a joint or over it, and the answer. */
interface Predicted {
  readonly input: AnyPredictInput;
  readonly prediction: AnyPrediction;
}

/** The margins of a build at some attitudes [°], and all that they lead down to: how the build's own numbers came about. */
function boardAt(book: Book, { build, resolved }: Outcome, at: Predicted, angles: readonly number[]): Board {
  if (!resolved) return NO_BOARD;
  const { input, prediction } = at;
  const surface = findById(book.surfaces, build.surface)?.data.name ?? "the surface";
  const below = clearanceBoard(resolved, surface);
  return {
    workings: [...workingsOfAny(input, prediction, angles), ...below.workings],
    origins: [...originsOf({ book, build, resolved }), ...below.origins, ...solvedOrigins(prediction)],
  };
}

/** @returns the workings of a solved build, margins at its own attitudes, at the worst ones and at others that are asked for [°], and where their numbers come from */
export function boardOf(book: Book, outcome: Outcome, besides: readonly number[] = []): Board {
  const { resolved, prediction } = outcome;
  const input = resolved && solvable(resolved);
  if (!input || !prediction) return NO_BOARD;
  const angles = [...new Set([...anglesOf(outcome, prediction), ...besides])];
  return boardAt(book, outcome, { input, prediction }, angles);
}

/** @returns the same while the build stands over one joint of its surface */
export function boardOver(book: Book, outcome: Outcome, joint: string): Board {
  const { build, resolved } = outcome;
  const under = jointsUnder(book, build);
  if (!resolved?.input || !under) return NO_BOARD;
  const own = attitudeRows(outcome).map(({ angle }) => angle);
  const crossed = crossedJoints(resolved.input, under, own).find((each) => each.joint.name === joint);
  if (!crossed) return NO_BOARD;
  const { prediction } = crossed;
  return boardAt(book, outcome, { input: crossed.build, prediction }, anglesOf(outcome, prediction));
}

/** @returns the workings of the build on the screen, as it is tried */
export function boardNow(): Board {
  const [book, outcome] = [currentBook.value, shownOutcome.value];
  return book && outcome ? boardOf(book, outcome) : NO_BOARD;
}

/** @returns the same while it stands over one joint of its surface */
export function boardNowOver(joint: string): Board {
  const [book, outcome] = [currentBook.value, shownOutcome.value];
  return book && outcome ? boardOver(book, outcome, joint) : NO_BOARD;
}
