import { setImmediate } from "node:timers/promises";
import { z } from "zod";
import { errorResponse, PROBLEM } from "../shared/model/api/errors.ts";
import { DocumentSchemas, type Json } from "./openapiSchemas.ts";
import type { Documented, Route } from "./routes/route.ts";
import { version } from "./version.ts";

const BASE = "/api/v1";

/** What each tag holds. */
const TAGS: Readonly<Record<string, string>> = {
  bench: "the book's state, the demo, the stream of changes, this description",
  archive: "the book as a whole, in and out",
  devices: "who may ask over the local network",
  compute: "answered from the body alone, in SI units; nothing is kept",
  choose: "a search over motors, rotor sizes, packs, throttles, skirts and gaps",
};

/** What each status of a refusal means, wherever it is given. */
const REFUSALS: Readonly<Record<number, string>> = {
  304: "the same as the reader has already, by If-None-Match",
  400: "malformed JSON, a value of a wrong type, size or unit, an unknown key; each field is named",
  401: "asked over the local network by a device that isn't paired",
  403: "asked for by a web page of another origin or another site, by a device where this machine alone may ask, or with a code that isn't good",
  404: "there is no such record",
  405: "another method than those on this address; Allow names them",
  409: "in conflict with what the book holds (the records in the way are named), or with how the server was started",
  412: "the record was changed since If-Match",
  413: "the body is too large",
  415: "the body is not application/json",
  421: "the request names a host that this server is not",
  422: "well formed, but without an answer: not enough data, a contradiction, an unknown part",
  428: "If-Match is missing",
  429: "too many requests that take long wait already, or too many wrong codes came; Retry-After says how long to wait then [s]",
  503: "the data file can't be used just now: another program holds it, or it is read-only; nothing was stored",
  507: "the disk is full; nothing was stored",
};

function responseOf(documentedAnswer: Documented, schemas: DocumentSchemas): Json {
  const { description, schema, contentType = "application/json", headers = {} } = documentedAnswer;
  const hasContent = schema !== undefined || contentType !== "application/json";
  const content = { [contentType]: schema ? { schema: schemas.of(schema, "output") } : {} };
  const documented = Object.entries(headers).map(([name, text]) => [
    name,
    { description: text, schema: { type: "string" } },
  ]);
  return {
    description,
    ...(hasContent ? { content } : {}),
    ...(documented.length > 0 ? { headers: Object.fromEntries(documented) } : {}),
  };
}

/** Refusals are stated once, by status; every operation refers to them. */
const refusalName = (status: number): string => `Refusal${status}`;

function refusalsStated(schemas: DocumentSchemas): Json {
  const schema = schemas.of(errorResponse, "output");
  const stated = Object.entries(REFUSALS).map(([status, description]) => [
    refusalName(Number(status)),
    Number(status) < 400 ? { description } : { description, content: { [PROBLEM]: { schema } } },
  ]);
  return Object.fromEntries(stated);
}

/** Whether the answer bears an ETag that a reader can come back with. */
const isTagged = ({ method, responses, streams = false }: Route): boolean =>
  method === "get" && !streams && responses[200]?.contentType === undefined;

/** The statuses with which a route may refuse: its own, those that its body, its query and a key bring, those of any request. */
export function refusalsOf(route: Route): number[] {
  const { method, body, query, takesKey = false, thisMachineOnly = false, refusals = [] } = route;
  const ofBody = body ? [400, 413, 415] : [];
  const ofQuery = query || takesKey ? [400] : [];
  const ofAny = method === "get" && !thisMachineOnly ? [401, 405, 421] : [401, 403, 405, 421];
  const all = [...ofBody, ...ofQuery, ...ofAny, ...refusals, ...(isTagged(route) ? [304] : [])];
  return [...new Set(all)].sort((a, b) => a - b);
}

function queryParameters(query: z.ZodType | undefined): Json[] {
  if (!query) return [];
  const { properties = {} } = z.toJSONSchema(query, { io: "output", unrepresentable: "any" });
  return Object.entries(properties).map(([name, schema]) => ({
    name,
    in: "query",
    required: false,
    schema,
  }));
}

/** Headers that a request may, or must, carry. */
function headersOf(route: Route): Json[] {
  const header = (name: string, required: boolean, description: string) => ({
    name,
    in: "header",
    required,
    description,
    schema: { type: "string" },
  });
  const { ifMatch, takesKey = false } = route;
  const key =
    "of the sender's choice: the same request sent again under it within a week writes nothing and gets the same answer";
  return [
    ...(takesKey ? [header("Idempotency-Key", false, key)] : []),
    ...(ifMatch ? [header("If-Match", ifMatch === "required", "ETag of the revision that is changed")] : []),
    ...(isTagged(route) ? [header("If-None-Match", false, "ETag of the answer that the reader has")] : []),
  ];
}

function parametersOf(route: Route): Json[] {
  const { path, query } = route;
  const inPath = [...path.matchAll(/:(\w+)/g)].map(([, name]) => ({
    name,
    in: "path",
    required: true,
    schema: { type: "string" },
  }));
  return [...inPath, ...queryParameters(query), ...headersOf(route)];
}

/** @returns a name for the operation that no other route has, such as "putRotorsById" */
function operationId({ method, path }: Route): string {
  const words = path.split(/[/:.-]+/).filter(Boolean);
  const named = words.map((word) => (word === "id" ? "ById" : word[0].toUpperCase() + word.slice(1)));
  return method + named.join("");
}

function operationOf(route: Route, schemas: DocumentSchemas): Json {
  const responses = [
    ...Object.entries(route.responses).map(([status, documented]) => [
      status,
      responseOf(documented, schemas),
    ]),
    ...refusalsOf(route).map((status) => [
      String(status),
      { $ref: `#/components/responses/${refusalName(status)}` },
    ]),
  ];
  const requestBody = route.body && {
    required: true,
    content: { "application/json": { schema: schemas.of(route.body, "input") } },
  };
  return {
    operationId: operationId(route),
    tags: [route.tag],
    summary: route.summary,
    parameters: parametersOf(route),
    ...(requestBody ? { requestBody } : {}),
    responses: Object.fromEntries(responses),
  };
}

/** @returns the path as OpenAPI writes it, "/rotors/{id}" */
export const documentedPath = (path: string): string => path.replace(/:(\w+)/g, "{$1}");

/** Operation by operation, with a pause after each: all of them take longer than others should wait. */
async function pathsOf(routes: readonly Route[], schemas: DocumentSchemas): Promise<Json> {
  const paths = new Map<string, Record<string, Json>>();
  for (const route of routes) {
    await setImmediate();
    const path = documentedPath(route.path);
    paths.set(path, { ...paths.get(path), [route.method]: operationOf(route, schemas) });
  }
  return Object.fromEntries(paths);
}

/** @returns the OpenAPI 3.1 document of the routes, from the same schemas that validate */
export async function openApiDocument(routes: readonly Route[]): Promise<Json> {
  const schemas = new DocumentSchemas();
  const paths = await pathsOf(routes, schemas);
  const responses = refusalsStated(schemas);
  return {
    openapi: "3.1.0",
    info: {
      title: "Gripcurve",
      version,
      description: "The bench book, its fits and its predictions. SI units throughout.",
    },
    servers: [{ url: BASE }],
    // This machine may ask as it is; a device of the local network shows the cookie that it was paired with.
    security: [],
    tags: [...new Set(routes.map(({ tag }) => tag))].map((name) => ({
      name,
      description: TAGS[name] ?? `the book's ${name}`,
    })),
    paths,
    components: { schemas: schemas.components, responses },
  };
}
