import type { Book } from "../../../shared/book/book.ts";
import { originsOf } from "../../../shared/book/origins.ts";
import type { MapQuestion } from "../../../shared/decide/map/grid.ts";
import { buildAt } from "../../../shared/decide/map/place.ts";
import { workingsOfAny } from "../../../shared/physics/anyWorkings.ts";
import { predictAny } from "../../../shared/physics/predictAny.ts";
import type { Board } from "../../../shared/physics/working.ts";
import type { Outcome } from "../../state/outcome.ts";
import { NO_BOARD, solvedOrigins } from "../../ui/working/board.ts";

/**
 * How the margins of a build came about at a place of its map.
 *
 * @param book - the whole bench book
 * @param outcome - the build as it is stored, solved: where its numbers come from that the map leaves alone
 * @param question - of the map
 * @param place - along its axes [SI]
 * @returns the workings of the build there, at its worst attitudes [SI]
 * @throws {OutOfRangeError} {NotEnoughDataError} where it can't be solved
 */
export function placeBoard(
  book: Book,
  { build, resolved }: Outcome,
  { of, x, y }: Pick<MapQuestion, "of" | "x" | "y">,
  place: { readonly x: number; readonly y: number },
): Board {
  if (!resolved) return NO_BOARD;
  const input = buildAt(of, { [x.key]: place.x, [y.key]: place.y });
  const prediction = predictAny(input, []);
  const { parked, driving } = prediction.worst;
  return {
    workings: workingsOfAny(input, prediction, [...new Set([parked.angle, driving.angle])]),
    origins: [...originsOf({ book, build, resolved }), ...solvedOrigins(prediction)],
  };
}
