import type { Book } from "../../../../shared/book/resolve.ts";
import type { Column } from "../useColumn.ts";
import { limits } from "./limits.ts";
import { margins } from "./margins.ts";
import { mass } from "./mass.ts";
import { parts } from "./parts.ts";
import { point } from "./point.ts";
import type { RowGroup } from "./row.ts";
import { running } from "./running.ts";
import { standing } from "./standing.ts";

/** @returns everything that is said of builds, side by side, in the order in which a maker asks */
export function comparedRows(book: Book, columns: readonly Column[]): RowGroup[] {
  return [
    standing(book, columns),
    parts(book, columns),
    mass(book, columns),
    margins(book, columns),
    running(columns),
    point(book, columns),
    limits(book, columns),
  ].filter(({ rows }) => rows.length > 0);
}
