import type { Book } from "../../../shared/book/resolve.ts";
import type { MapQuestion } from "../../../shared/decide/map/grid.ts";
import { offered } from "../../../shared/model/withdrawn.ts";
import { solve } from "../../state/outcome.ts";
import type { OnMap } from "./mapPlot.ts";
import { type Stands, standsOf } from "./question.ts";

/** The book's other builds on a map, and its motors where K_v is an axis. */
export function othersOn(
  book: Book,
  own: string,
  stands: Stands,
  { x, y }: Pick<MapQuestion, "x" | "y">,
): OnMap[] {
  const placed = (key: string, name: string, at: Stands): OnMap[] => {
    const [across, upwards] = [at[x.key], at[y.key]];
    return across === undefined || upwards === undefined ? [] : [{ key, name, x: across, y: upwards }];
  };
  const open = stands.gap === undefined;
  const builds = offered(book.builds, null).flatMap(({ id, data }) => {
    const there = id === own ? null : standsOf(solve(book, data));
    // A rotor in a duct and an open propeller of one diameter are no neighbours.
    return there && (there.gap === undefined) === open ? placed(`build ${id}`, data.name, there) : [];
  });
  if (x.key !== "kv" && y.key !== "kv") return builds;
  const motors = offered(book.motors, null).flatMap(({ id, data: { name, kv } }) => {
    if (kv === undefined) return [];
    return placed(`motor ${id}`, `${name}, as a winding of this frame`, { ...stands, kv });
  });
  return [...builds, ...motors];
}
