import type { MapQuestion } from "#shared/decide/map/grid.ts";
import { type MapField, mapOf, mapPart, partsOf } from "#shared/decide/map/solve.ts";

/** @returns a whole map, solved in one thread */
export function mapField(question: MapQuestion): MapField {
  return mapOf(
    question,
    partsOf(question, 1).map((range) => mapPart(question, range)),
  );
}
