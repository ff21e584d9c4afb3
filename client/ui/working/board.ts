import type { Book } from "../../../shared/book/book.ts";
import { jointsUnder } from "../../../shared/book/jointsUnder.ts";
import { originsOf } from "../../../shared/book/origins.ts";
import { solvable } from "../../../shared/book/resolve.ts";
import { crossedJoints } from "../../../shared/decide/joints/crossed.ts";
import { workingsOfAny } from "../../../shared/physics/anyWorkings.ts";
import type { AnyPrediction } from "../../../shared/physics/predictAny.ts";
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

/** @returns the workings of a solved build, margins at its own attitudes, at the worst ones and at others that are asked for [°], and where their numbers come from */
export function boardOf(book: Book, outcome: Outcome, besides: readonly number[] = []): Board {
  const { build, resolved, prediction } = outcome;
  const input = resolved && solvable(resolved);
  if (!resolved || !input || !prediction) return NO_BOARD;
  return {
    workings: workingsOfAny(input, prediction, [...new Set([...anglesOf(outcome, prediction), ...besides])]),
    origins: [...originsOf({ book, build, resolved }), ...solvedOrigins(prediction)],
  };
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
  return {
    workings: workingsOfAny(crossed.build, prediction, anglesOf(outcome, prediction)),
    origins: [...originsOf({ book, build, resolved }), ...solvedOrigins(prediction)],
  };
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
