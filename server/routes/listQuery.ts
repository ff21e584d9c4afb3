import { z } from "zod";
import { byCollection, COLLECTION_WORDS, type CollectionName } from "../../shared/model/collections.ts";
import { REFERENCE_PLACES } from "../../shared/model/record.ts";
import { identifier } from "../../shared/model/scalar.ts";
import { COLLECTIONS } from "../../shared/model/schemas.ts";
import { kindsOf, withdrawalKeyOf } from "../../shared/model/traits.ts";
import { WRITTEN } from "../../shared/model/written.ts";
import type { ListQuery } from "../store/listing.ts";

const MOST_ON_A_PAGE = 500;

type Query = Readonly<Record<string, string | number | undefined>>;

export const paging = {
  limit: z.coerce.number().int().min(1).max(MOST_ON_A_PAGE).default(100),
  cursor: z.string().max(1000).optional().describe('the "next" of the page before'),
};
const text = z.string().trim().max(120).optional().describe("text that the name or title contains");

/** What the description of a list says of its {@link nextLink}. */
export const LINK = { Link: "address of the next page, where one follows" };
/** What the description of a list of records says of its {@link WRITTEN}. */
export const STANDING = { [WRITTEN]: "how the book stood, as GET /bench says it" };

/**
 * @param query - what was asked of this page
 * @param next - cursor of the page behind it; null on the last
 * @returns the header that has that page's address (RFC 8288)
 */
export function nextLink(base: string, query: Query, next: string | null): Readonly<Record<string, string>> {
  if (next === null) return {};
  const asked = Object.entries({ ...query, cursor: next });
  const known = asked.flatMap(([key, value]) => (value === undefined ? [] : [[key, String(value)]]));
  return { Link: `</api/v1${base}?${new URLSearchParams(known)}>; rel="next"` };
}

/** A part is asked for by the key under which records name it; where it stands deeper, by the word for one of its collection. */
function filterName(name: CollectionName, collection: CollectionName): string {
  const place = REFERENCE_PLACES[name].find(
    (each) => each.collection === collection && each.path.length === 1,
  );
  return place?.path[0] ?? COLLECTION_WORDS[collection];
}

/** By the name of their filter, the collections that records of a collection point to. */
const PARTS = byCollection((name) => {
  const collections = [...new Set(REFERENCE_PLACES[name].map((place) => place.collection))];
  return new Map(collections.map((collection) => [filterName(name, collection), collection]));
});

type Filter = readonly [string, z.ZodType<string | undefined>];

function partFilters(name: CollectionName): Filter[] {
  return [...PARTS[name]].map(([word, collection]) => [
    word,
    identifier().describe(`only ${name} that use this one of the ${collection}`).optional(),
  ]);
}

function kindFilter(name: CollectionName): Filter[] {
  const kinds = kindsOf(COLLECTIONS[name]);
  return kinds.length > 0 ? [["kind", z.enum(kinds).optional()]] : [];
}

const WITHDRAWAL = byCollection((name) => withdrawalKeyOf(COLLECTIONS[name]));

function withdrawalFilter(name: CollectionName): Filter[] {
  const key = WITHDRAWAL[name];
  const said = z.enum(["true", "false"]).optional();
  return key
    ? [[key, said.describe(`only ${name} that have a reason there, or only those that have none`)]]
    : [];
}

/** @returns how a collection's list is paged and filtered: by kind, where its records have kinds, by whether they are out of use, and by each part that they use */
export function listSchema(name: CollectionName): z.ZodType<Query> {
  const filters: Readonly<Record<string, Filter[1]>> = Object.fromEntries([
    ...kindFilter(name),
    ...withdrawalFilter(name),
    ...partFilters(name),
  ]);
  return z.strictObject({ ...paging, q: text, ...filters });
}

/** @returns the same, as the store takes it */
export function listQuery(name: CollectionName, { limit, cursor, q, kind, ...filters }: Query): ListQuery {
  const uses = [...PARTS[name]].flatMap(([word, collection]) =>
    filters[word] ? [{ collection, id: String(filters[word]) }] : [],
  );
  const withdrawn = WITHDRAWAL[name] && filters[WITHDRAWAL[name]];
  return {
    limit: Number(limit),
    ...(cursor ? { cursor: String(cursor) } : {}),
    ...(q ? { text: String(q) } : {}),
    ...(kind ? { kind: String(kind) } : {}),
    ...(withdrawn ? { withdrawn: withdrawn === "true" } : {}),
    uses,
  };
}
