import { z } from "zod";
import { coreOf, layersOf } from "./api/schemaAt.ts";
import { COLLECTION_WORDS, type CollectionName } from "./collections.ts";
import { identifier } from "./scalar.ts";

/** Schemas of identifiers that point to a record, with where they point to; copies of a schema inherit it. */
const targets = z.registry<{ readonly collection: CollectionName }>();

/** The identifier of a record of a collection: it must be there, and can't be deleted while this points to it. */
export const reference = (collection: CollectionName) =>
  identifier()
    .register(targets, { collection })
    .describe(`identifier of a stored ${COLLECTION_WORDS[collection]}`);

/** Where in a record's data a reference may stand, "*" for each place of a list. */
export interface ReferencePlace {
  readonly path: readonly string[];
  readonly collection: CollectionName;
}

function targetOf(schema: z.core.$ZodType): CollectionName | undefined {
  for (const layer of layersOf(schema)) {
    const target = targets.get(layer);
    if (target) return target.collection;
  }
  return undefined;
}

function placesUnder(schema: z.core.$ZodType, path: readonly string[]): ReferencePlace[] {
  const collection = targetOf(schema);
  if (collection) return [{ path, collection }];
  const core = coreOf(schema);
  if (core instanceof z.ZodObject)
    return Object.entries(core.shape).flatMap(([key, inner]) => placesUnder(inner, [...path, key]));
  if (core instanceof z.ZodUnion) return core.options.flatMap((option) => placesUnder(option, path));
  if (core instanceof z.ZodArray) return placesUnder(core.element, [...path, "*"]);
  return [];
}

/** @returns every place of a schema where a reference may stand, each once */
export function referencePlaces(schema: z.core.$ZodType): ReferencePlace[] {
  const byKey = new Map(
    placesUnder(schema, []).map((place) => [`${place.path.join(".")} ${place.collection}`, place]),
  );
  return [...byKey.values()];
}

export interface Reference {
  /** where it stands: "rotor", "instruments.pressure" */
  readonly path: string;
  readonly collection: CollectionName;
  readonly id: string;
}

type Found = readonly (readonly [path: string, value: unknown])[];

/** One step of a path into all values that a place can mean. */
function step(found: Found, key: string): Found {
  return found.flatMap(([path, value]): Found => {
    if (typeof value !== "object" || value === null) return [];
    if (key === "*")
      return Object.entries(value).map(([place, inner]) => [`${path}.${place}`, inner] as const);
    const inner: unknown = Object.hasOwn(value, key) ? (value as Record<string, unknown>)[key] : undefined;
    return [[path === "" ? key : `${path}.${key}`, inner] as const];
  });
}

/** @returns what a record's data points to, in the schema's order */
export function referencesIn(places: readonly ReferencePlace[], data: object): Reference[] {
  return places.flatMap(({ path, collection }) =>
    path
      .reduce<Found>(step, [["", data]])
      .flatMap(([at, id]) => (typeof id === "string" ? [{ path: at, collection, id }] : [])),
  );
}
