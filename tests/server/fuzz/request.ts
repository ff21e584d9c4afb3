import fc from "fast-check";
import { type Named, type Schema, Valid } from "./arbitrary.ts";
import { hostileText, hostileWord, nearly } from "./hostile.ts";

interface Parameter {
  readonly name: string;
  readonly in: "path" | "query" | "header";
  readonly schema: Schema;
}

/** One operation of the API's description. */
export interface Operation {
  readonly method: string;
  readonly path: string;
  readonly parameters: readonly Parameter[];
  readonly body: Schema | null;
}

interface Described {
  readonly parameters: readonly Parameter[];
  readonly requestBody?: { readonly content: { readonly "application/json": { readonly schema: Schema } } };
}

/** The description, as far as requests are made from it. */
export interface Description {
  readonly paths: Readonly<Record<string, Readonly<Record<string, Described>>>>;
  readonly components: { readonly schemas: Named };
}

export function operationsOf({ paths }: Description): Operation[] {
  return Object.entries(paths).flatMap(([path, byMethod]) =>
    Object.entries(byMethod).map(([method, { parameters, requestBody }]) => ({
      method: method.toUpperCase(),
      path,
      parameters,
      body: requestBody?.content["application/json"].schema ?? null,
    })),
  );
}

/** A request before the book's own ids are filled in. */
export interface Asked {
  readonly operation: Operation;
  /** "@" stands for an id that the book has */
  readonly id: string;
  readonly query: Readonly<Record<string, string>>;
  readonly headers: Readonly<Record<string, string>>;
  readonly body: string | null;
}

const KNOWN = "@";

/** JSON of a value; a number that JSON can't say, as a text that reads as one. */
const textOf = (value: unknown): string => JSON.stringify(value) ?? "null";

function bodyOf(schema: Schema | null, valid: Valid): fc.Arbitrary<string | null> {
  if (!schema) return fc.constant(null);
  const right = valid.of(schema);
  return fc.oneof(
    { weight: 5, arbitrary: right.map(textOf) },
    { weight: 4, arbitrary: nearly(right).map(textOf) },
    { weight: 1, arbitrary: hostileText },
  );
}

function queryOf(parameters: readonly Parameter[], valid: Valid): fc.Arbitrary<Record<string, string>> {
  const inQuery = parameters.filter((each) => each.in === "query");
  if (inQuery.length === 0) return fc.constant({});
  const right = fc.record(
    Object.fromEntries(inQuery.map(({ name, schema }) => [name, valid.of(schema).map(String)])),
    { requiredKeys: [] },
  );
  const wrong = fc.dictionary(fc.constantFrom(...inQuery.map(({ name }) => name), "x"), hostileWord, {
    maxKeys: 2,
  });
  return fc.oneof(
    { weight: 3, arbitrary: fc.constant({}) },
    { weight: 4, arbitrary: right },
    wrong,
  ) as fc.Arbitrary<Record<string, string>>;
}

function headersOf(parameters: readonly Parameter[]): fc.Arbitrary<Record<string, string>> {
  const tag = fc.constantFrom('"1"', "*", 'W/"1"', '"99"', "1", ",", '"', "x".repeat(300));
  const names = parameters.flatMap((each) => (each.in === "header" ? [each.name] : []));
  const some = fc.record(Object.fromEntries(names.map((name) => [name, tag])), { requiredKeys: [] });
  return some as fc.Arbitrary<Record<string, string>>;
}

/** @returns requests of one operation: right ones, nearly right ones and hostile ones */
function requestOf(operation: Operation, valid: Valid): fc.Arbitrary<Asked> {
  const { parameters, body } = operation;
  return fc.record({
    operation: fc.constant(operation),
    id: fc.oneof({ weight: 3, arbitrary: fc.constant(KNOWN) }, hostileWord),
    query: queryOf(parameters, valid),
    headers: headersOf(parameters),
    body: bodyOf(body, valid),
  });
}

/** @returns requests of every operation alike */
export function requestsOf(description: Description): fc.Arbitrary<Asked> {
  const valid = new Valid(description.components.schemas);
  return fc.oneof(...operationsOf(description).map((each) => requestOf(each, valid)));
}

/** Ids that the book has, by collection, the newest last; of searches under "choose". */
export type KnownIds = ReadonlyMap<string, readonly string[]>;

const lastOf = (ids: KnownIds, collection: string): string => ids.get(collection)?.at(-1) ?? "none";

/** @returns what is sent: address and body with the book's own ids in them */
export function filled({ operation, id, query, body }: Asked, ids: KnownIds) {
  const collection = operation.path.split("/")[1];
  // Without an id the address is the one of the list.
  const own = id === KNOWN ? lastOf(ids, collection) : encodeURIComponent(id) || "none";
  const search = new URLSearchParams(query).toString();
  const path = operation.path.replace("{id}", own) + (search === "" ? "" : `?${search}`);
  const text = body?.replace(/"@(\w+)"/g, (_, name: string) => JSON.stringify(lastOf(ids, name))) ?? null;
  return { path, body: text };
}
