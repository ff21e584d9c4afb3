import type { Build } from "../model/build.ts";
import type { Book } from "./book.ts";
import { calibrationOf } from "./calibration.ts";
import type { Resolved } from "./resolve/resolved.ts";
import { resolveWith } from "./resolve/resolveWith.ts";

export type { Book } from "./book.ts";
export type { GapBasis } from "./gapBasis.ts";
export type { Missing } from "./missing.ts";
export type { PartialBuild, Unknown } from "./partial.ts";
export { type Resolved, solvable } from "./resolve/resolved.ts";

/**
 * Turns a build of the book into the numbers that a prediction takes, and says what each rests on.
 *
 *     gap and friction: tried in the build, else calibrated by pull and leak tests, else as {@link resolveAsSet}
 *
 * @param book - the whole bench book
 * @param build - a stored build, or one changed by what-if handles
 * @returns input for {@link predict} (null where something essential is missing), the basis of each part, the tests used
 * @throws {OutOfRangeError} on a number in the book that can't be
 *
 * @example
 * const [{ data: build }] = book.builds;
 * const { input, missing } = resolveBuild(book, build);
 * input.rotor.diameter; // → 0.044
 * missing; // → []
 * resolveBuild({ ...book, surfaces: [] }, build).input; // → null
 */
export function resolveBuild(book: Book, build: Build): Resolved {
  return resolveWith(book, build, calibrationOf(book, build));
}
