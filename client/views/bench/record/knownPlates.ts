import type { Book } from "../../../../shared/book/book.ts";
import { asPlate } from "../../../../shared/book/named.ts";
import type { DraftHole } from "./draft.ts";
import { holeOf, writeDraft } from "./writeDraft.ts";

/** A bleed plate that an earlier test had. */
export interface KnownPlate {
  readonly key: string;
  /** "8 × 3 mm, 4 × 0.25 in; 2 mm thick" */
  readonly label: string;
  readonly holes: readonly DraftHole[];
}

const keyOf = (holes: readonly DraftHole[]): string =>
  JSON.stringify(holes.map(({ key: _, ...hole }) => hole));

function labelOf(holes: readonly DraftHole[]): string {
  const kinds = holes.map(({ count, diameter, edge, dischargeCoefficient: own }) => {
    const how = [edge === "sharp" ? "" : edge, own ? `discharge coefficient ${own}` : ""]
      .filter(Boolean)
      .join(", ");
    return `${count} × ${diameter}${how && ` (${how})`}`;
  });
  const thicknesses = [...new Set(holes.map(({ thickness }) => thickness))].join(" and ");
  return `${kinds.join(", ")}; ${thicknesses} thick`;
}

/** @returns the different plates that a book's tests describe themselves, the newest test's first */
export function knownPlates(book: Book): KnownPlate[] {
  const newest = [...book.tests].sort((a, b) =>
    `${b.data.date} ${b.createdAt}`.localeCompare(`${a.data.date} ${a.createdAt}`),
  );
  const plates = newest.flatMap(({ data }) => {
    if (!("plate" in data) || !data.plate || typeof data.plate === "string") return [];
    const { holes } = writeDraft(data);
    return [{ key: keyOf(holes), label: labelOf(holes), holes }];
  });
  return [...new Map(plates.toReversed().map((plate) => [plate.key, plate])).values()].toReversed();
}

/** @returns the plates that stand in the book as parts, by their identifiers */
export const platesOfBook = ({ plates }: Book): KnownPlate[] =>
  plates.map(({ id, data }) => {
    const holes = asPlate(data).holes.map((hole, key) => holeOf(hole, key));
    return { key: id, label: `${data.name}: ${labelOf(holes)}`, holes };
  });

/** @returns which of the known plates is described by holes as typed; null where none is */
export function plateOf(holes: readonly DraftHole[], known: readonly KnownPlate[]): KnownPlate | null {
  const key = keyOf(holes);
  return known.find((plate) => plate.key === key) ?? null;
}
