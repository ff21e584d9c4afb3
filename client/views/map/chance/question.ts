import type { Book } from "../../../../shared/book/book.ts";
import { bookOfBuild } from "../../../../shared/book/bookOfBuild.ts";
import type { MapQuestion } from "../../../../shared/decide/map/grid.ts";
import { rotorAt } from "../../../../shared/decide/map/place.ts";
import type { Build } from "../../../../shared/model/build.ts";
import { HANDLES } from "../../../state/handles.ts";
import type { Outcome } from "../../../state/outcome.ts";
import type { Asked } from "../asked.ts";
import { questionOf } from "../question.ts";

/** What is asked of the other thread, all of it plain data. */
export interface ChanceAsked {
  /** what the build rests on, no more */
  readonly book: Book;
  /** moved as the map's question is, with what its axes move as its own: of this build the uncertainties are told */
  readonly build: Build;
  readonly question: MapQuestion;
  readonly samples: number;
}

/** How closely the spread of the margin is sampled: places along each axis, samples at each. */
export interface Closeness {
  readonly places: number;
  readonly samples: number;
}

/** While something is dragged, and once nothing moves. */
export const CLOSENESS: Readonly<Record<"dragged" | "settled", Closeness>> = {
  dragged: { places: 5, samples: 128 },
  settled: { places: 9, samples: 256 },
};

/** The build as Match would try it: what was told of a gap or a friction that is moved no longer counts. */
function triedBuild(build: Build, { of, x, y }: MapQuestion, moved: Asked["moved"]): Build {
  const { skirt, vehicle } = { skirt: null, ...of.input };
  const own = { gap: skirt?.gap, wheelFriction: vehicle.wheelFriction };
  const along = [x.key, y.key].flatMap((key) => (key === "gap" || key === "wheelFriction" ? [key] : []));
  const values = { ...moved, ...Object.fromEntries(along.map((key) => [key, own[key]])) };
  const put = HANDLES.reduce((to, handle) => {
    const value = handle.key in values ? values[handle.key as keyof typeof values] : undefined;
    return value === undefined ? to : handle.put(to, value);
  }, build);
  // A size that was never tested has a doubt more, which those that were leave out again.
  const carried = [x, y]
    .flatMap(({ key, values: sizes }) => (key === "diameter" ? sizes : []))
    .find((diameter) => rotorAt(of, diameter).sizeCorrection !== null);
  return carried === undefined ? put : { ...put, diameter: carried };
}

/**
 * What a map's chance of holding is to be worked out from.
 *
 * @param book - the whole bench book
 * @param outcome - the build as it is stored, solved
 * @param asked - axes and what is moved
 * @param closeness - places and samples [-]
 * @returns the question; null where the build has no numbers
 * @throws {OutOfRangeError} on a place that can't be
 */
export function chanceQuestion(
  book: Book,
  outcome: Outcome,
  asked: Asked,
  { places, samples }: Closeness,
): ChanceAsked | null {
  const question = questionOf(book, outcome, asked, places);
  if (!question) return null;
  const { [question.x.key]: _x, [question.y.key]: _y, ...moved } = asked.moved;
  const build = triedBuild(outcome.build, question, moved);
  return { book: bookOfBuild(book, build), build, question, samples };
}
