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
  const builds = offered(book.builds, null).flatMap(({ id, data }) => {
    const there = id === own ? null : standsOf(solve(book, data));
    return there ? [{ key: `build ${id}`, name: data.name, x: there[x.key], y: there[y.key] }] : [];
  });
  if (x.key !== "kv" && y.key !== "kv") return builds;
  const motors = offered(book.motors, null).flatMap(({ id, data: { name, kv } }) => {
    if (kv === undefined) return [];
    const at = { ...stands, kv };
    return [{ key: `motor ${id}`, name: `${name}, as a winding of this frame`, x: at[x.key], y: at[y.key] }];
  });
  return [...builds, ...motors];
}
