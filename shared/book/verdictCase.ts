import type { Case } from "../decide/verdict/judge.ts";
import type { Build } from "../model/build.ts";
import type { Note } from "../physics/note.ts";
import { namedAttitudes } from "./attitudes.ts";
import type { Book } from "./book.ts";
import { jointsUnder } from "./jointsUnder.ts";
import { limitsInput } from "./limitsInput.ts";
import { type Resolved, solvable } from "./resolve/resolved.ts";
import { runInput } from "./runInput.ts";

/** @returns notes of one kind of a calibration in use, none where it isn't in use */
export function calibrationNotes(
  { gap, friction, pullFactor, calibration }: Resolved,
  wanted: string,
): readonly Note[] {
  const used = [gap, friction, pullFactor].some((each) => each?.basis === "calibrated");
  return (used ? (calibration?.answer?.warnings ?? []) : []).filter(({ code }) => code === wanted);
}

/**
 * A build of the book as a case for its verdict.
 *
 * @param book - the whole bench book
 * @param build - a stored build, or one changed by what-if handles
 * @param resolved - the same build made into numbers
 * @param full - charge that its runs begin at: 1, a full pack, unless given [-]
 * @returns the case, SI; null where the build has no numbers yet
 */
export function verdictCase(book: Book, build: Build, resolved: Resolved, full = 1): Case | null {
  const input = solvable(resolved);
  const run = runInput(build, resolved);
  if (!input || !run) return null;
  return {
    build: input,
    limits: limitsInput(book, build, run),
    full,
    attitudes: namedAttitudes(build).map(({ name, angle }) => ({ name, angle })),
    joints: resolved.input ? jointsUnder(book, build) : null,
    target: build.targetMargin,
    contradictions: calibrationNotes(resolved, "conflict").map(({ message }) => message),
  };
}
