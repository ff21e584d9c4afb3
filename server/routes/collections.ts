import { z } from "zod";
import { page, stored } from "../../shared/model/api/book.ts";
import { COLLECTION_NAMES, type CollectionName } from "../../shared/model/collections.ts";
import { contradictionsWithin } from "../../shared/model/contradictionsWithin.ts";
import type { DataOf, Stored } from "../../shared/model/record.ts";
import { COLLECTIONS } from "../../shared/model/schemas.ts";
import { WRITTEN } from "../../shared/model/written.ts";
import { Refusal } from "../refusal.ts";
import type { Collection, Precondition, Written } from "../store/collection.ts";
import { ChangedMeanwhileError } from "../store/errors.ts";
import type { Data } from "../store/rows.ts";
import { listBytes } from "./jsonBytes.ts";
import { LINK, listQuery, listSchema, nextLink, STANDING } from "./listQuery.ts";
import { type Answer, type Route, route } from "./route.ts";
import type { Service } from "./service.ts";

export const etagOf = (revision: number): string => `"${revision}"`;

/** @returns the check of an If-Match header against the record's revision; weak tags never match (RFC 9110, 13.1.1) */
function matching(ifMatch: string): Precondition {
  const tags = ifMatch.split(",").map((tag) => tag.trim());
  return (revision) => {
    if (tags.includes("*") || tags.includes(etagOf(revision))) return;
    throw new ChangedMeanwhileError(ifMatch, revision);
  };
}

function requiredMatch(ifMatch: string | undefined): Precondition {
  if (ifMatch) return matching(ifMatch);
  const message = 'Say which revision you change: send its ETag as If-Match, for example If-Match: "3".';
  throw new Refusal(428, "if-match-required", message);
}

/** @throws {Refusal} 422 where fields of a record, each allowed by itself, can't be true together */
function requireConsistent(name: CollectionName, data: Data): Data {
  const fields = contradictionsWithin(name, data as DataOf<typeof name>);
  if (fields.length === 0) return data;
  const [first] = fields;
  throw new Refusal(422, "contradiction", `${first.path}: ${first.message}`, fields);
}

const recordAnswer = (status: number, record: Stored<Data>, headers = {}): Answer => ({
  status,
  body: record,
  headers: { ETag: etagOf(record.revision), ...headers },
});

/** Marks an answer that was given before, to the same request under the same key. */
const REPEATED = "Idempotency-Replayed";

const repeatedMark = ({ isRepeated }: Written): Readonly<Record<string, string>> =>
  isRepeated ? { [REPEATED]: "true" } : {};

const writtenAnswer = (status: number, written: Written, headers = {}): Answer =>
  recordAnswer(status, written.record, { ...headers, ...repeatedMark(written) });

interface Context {
  readonly collection: Collection;
  readonly base: string;
  readonly now: () => string;
  /** how the book stands, as {@link Store.written} */
  readonly written: () => string;
}

/** A key is a quoted string, or the same without quotes. */
const KEY = /^"?([\x21\x23-\x5b\x5d-\x7e]{1,200})"?$/;

/** @throws {Refusal} 400 on a key that is none */
function keyOf(header: string | undefined): string | null {
  if (header === undefined) return null;
  const [, key] = KEY.exec(header) ?? [];
  if (key !== undefined) return key;
  const message =
    "The Idempotency-Key can't be read; allowed: 1 to 200 letters, digits and signs, for example a UUID.";
  throw new Refusal(400, "invalid", message, [{ path: "Idempotency-Key", message }]);
}

const ETAG = { ETag: "the record's revision" };
const MARK = { [REPEATED]: "true where the same request came before under its Idempotency-Key" };

function readRoutes(name: CollectionName, { collection, base, written }: Context): Route[] {
  const schema = COLLECTIONS[name];
  const history = z.strictObject({ items: z.array(stored(schema)) });
  return [
    route({
      method: "get",
      path: base,
      tag: name,
      summary: `List the ${name}, page by page`,
      query: listSchema(name),
      responses: {
        200: { description: "one page", schema: page(schema), headers: { ...LINK, ...STANDING } },
      },
      refusals: [503],
      answer: ({ query }) => {
        // Asked first: what another process writes in between is then in the list, and not behind its mark.
        const standing = written();
        const { items, next } = collection.list(listQuery(name, query));
        const json = listBytes('{"items":[', [items], `],"next":${JSON.stringify(next)}}`);
        return { status: 200, json, headers: { ...nextLink(base, query, next), [WRITTEN]: standing } };
      },
    }),
    route({
      method: "get",
      path: `${base}/:id`,
      tag: name,
      summary: `Read one of the ${name}`,
      responses: { 200: { description: "the record", schema: stored(schema), headers: ETAG } },
      refusals: [404, 503],
      answer: ({ id }) => {
        const { revision, json } = collection.read(id);
        return { status: 200, json, headers: { ETag: etagOf(revision) } };
      },
    }),
    route({
      method: "get",
      path: `${base}/:id/revisions`,
      tag: name,
      summary: "Read what a record said, from its first state to the present one",
      responses: { 200: { description: "every state, the oldest first", schema: history } },
      refusals: [404, 503],
      answer: ({ id }) => ({
        status: 200,
        json: listBytes('{"items":[', collection.revisions(id), "]}"),
      }),
    }),
  ];
}

interface Kind extends Context {
  readonly name: CollectionName;
  /** what is sent */
  readonly body: z.ZodType<Data>;
  /** what is answered */
  readonly record: z.ZodType;
}

const addRoute = ({ name, base, body, record, collection, now }: Kind): Route =>
  route({
    method: "post",
    path: base,
    tag: name,
    summary: `Add one to the ${name}`,
    takesKey: true,
    body,
    responses: {
      201: { description: "added", schema: record, headers: { ...ETAG, ...MARK, Location: "its address" } },
    },
    refusals: [422, 503, 507],
    answer: (asked) => {
      const data = requireConsistent(name, asked.body);
      const key = keyOf(asked.idempotencyKey);
      const created = collection.create(data, now(), { key });
      return writtenAnswer(201, created, { Location: `/api/v1${base}/${created.record.id}` });
    },
  });

const correctRoute = ({ name, base, body, record, collection, now }: Kind): Route =>
  route({
    method: "put",
    path: `${base}/:id`,
    tag: name,
    summary: "Correct a record; what it said before is kept",
    ifMatch: "required",
    takesKey: true,
    body,
    responses: { 200: { description: "corrected", schema: record, headers: { ...ETAG, ...MARK } } },
    refusals: [404, 412, 422, 428, 503, 507],
    answer: (asked) => {
      const precondition = requiredMatch(asked.ifMatch);
      const data = requireConsistent(name, asked.body);
      const key = keyOf(asked.idempotencyKey);
      return writtenAnswer(200, collection.replace(asked.id, data, now(), precondition, { key }));
    },
  });

const removeRoute = ({ name, base, collection, now }: Kind): Route =>
  route({
    method: "delete",
    path: `${base}/:id`,
    tag: name,
    summary: "Remove a record; what it said is kept among its revisions",
    ifMatch: "optional",
    takesKey: true,
    responses: { 204: { description: "removed", headers: MARK } },
    refusals: [404, 409, 412, 422, 503, 507],
    answer: ({ id, ifMatch, idempotencyKey }) => {
      const precondition = ifMatch ? matching(ifMatch) : undefined;
      const removed = collection.remove(id, now(), precondition, { key: keyOf(idempotencyKey) });
      return { status: 204, headers: repeatedMark(removed) };
    },
  });

const restoreRoute = ({ name, base, record, collection, now }: Kind): Route =>
  route({
    method: "post",
    path: `${base}/:id/restore`,
    tag: name,
    summary: "Bring a deleted record back as it was",
    takesKey: true,
    responses: {
      200: { description: "it is back, one revision later", schema: record, headers: { ...ETAG, ...MARK } },
    },
    refusals: [404, 409, 422, 503, 507],
    answer: ({ id, idempotencyKey }) =>
      writtenAnswer(200, collection.restore(id, now(), { key: keyOf(idempotencyKey) })),
  });

function writeRoutes(name: CollectionName, context: Context): Route[] {
  const kind: Kind = { name, body: COLLECTIONS[name], record: stored(COLLECTIONS[name]), ...context };
  return [addRoute, correctRoute, removeRoute, restoreRoute].map((of) => of(kind));
}

/** The same verbs for every collection of the book. */
export function collectionRoutes({ store, clock }: Service): Route[] {
  const now = () => clock().toISOString();
  return COLLECTION_NAMES.flatMap((name) => {
    const written = () => store.written();
    const context = { collection: store.collections[name], base: `/${name}`, now, written };
    return [...readRoutes(name, context), ...writeRoutes(name, context)];
  });
}
