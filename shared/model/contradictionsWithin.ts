import { formatQuantity } from "../units/format.ts";
import { rectangleText } from "../units/rectangle.ts";
import type { FieldError } from "./api/errors.ts";
import type { CollectionName } from "./collections.ts";
import { outlineOf } from "./parts/outlineOf.ts";
import type { Skirt } from "./parts/skirt.ts";
import type { DataOf } from "./record.ts";
import type { BenchTest } from "./tests/index.ts";
import { contradictionSentence, rowContradictions } from "./tests/rowContradictions.ts";

/** Length and area are often given to three digits: so far may the two be off from one another [-]. */
const ROUNDED = 0.01;

/** No closed line encloses more than a circle of its length: P² ≥ 4πA. */
function lipContradictions({ perimeter, area }: Skirt): FieldError[] {
  const enclosed = perimeter ** 2 / (4 * Math.PI);
  if (area <= enclosed * (1 + ROUNDED)) return [];
  const [length, inside] = [formatQuantity(perimeter, "length"), formatQuantity(area, "area")];
  const least = formatQuantity(Math.sqrt(4 * Math.PI * area), "length");
  const most = formatQuantity(enclosed, "area");
  return [
    {
      path: "perimeter",
      message: `Read ${length} round ${inside}; allowed: at least ${least}, the length of a circle round that area.`,
    },
    {
      path: "area",
      message: `Read ${inside} inside a lip of ${length}; allowed: at most ${most}, the area of a circle of that length.`,
    },
  ];
}

/** Figures that follow are stored with ten digits and more [-]. */
const FOLLOWS = 1e-6;

/** Length and area that stand beside an outline are the outline's own. */
function outlineContradictions({ perimeter, area, outline }: Skirt): FieldError[] {
  if (!outline) return [];
  const own = outlineOf(outline);
  const said = rectangleText(outline);
  const differs = (read: number, follows: number) => Math.abs(read - follows) > FOLLOWS * follows;
  const refusal = (path: "perimeter" | "area", read: string, follows: string): FieldError => ({
    path,
    message: `Read ${read} beside the outline ${said}; allowed: ${follows}, which follows from it, or no outline.`,
  });
  const length = (si: number) => formatQuantity(si, "length", { digits: 5 });
  const size = (si: number) => formatQuantity(si, "area", { digits: 5 });
  return [
    ...(differs(perimeter, own.perimeter)
      ? [refusal("perimeter", length(perimeter), length(own.perimeter))]
      : []),
    ...(differs(area, own.area) ? [refusal("area", size(area), size(own.area))] : []),
  ];
}

/** Rows that are not set aside and yet can't have been read so. */
function readingContradictions(test: BenchTest): FieldError[] {
  if (test.struckOut !== undefined) return [];
  return rowContradictions(test).map((found) => ({
    path: `rows.${found.row}.${found.column}`,
    message: contradictionSentence(found),
  }));
}

/**
 * What of a record can't be true together. A schema says what each field may be; this says what its fields may be beside one another.
 *
 * @param name - the record's collection
 * @param data - as the schema lets it through
 * @returns the fields to correct, each with what was read and what is allowed; empty where nothing contradicts
 */
export function contradictionsWithin<C extends CollectionName>(name: C, data: DataOf<C>): FieldError[] {
  if (name === "skirts")
    return [...lipContradictions(data as Skirt), ...outlineContradictions(data as Skirt)];
  return name === "tests" ? readingContradictions(data as BenchTest) : [];
}
