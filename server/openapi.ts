import { setImmediate } from "node:timers/promises";
import { z } from "zod";
import { errorResponse } from "../shared/model/api/errors.ts";
import { DocumentSchemas, type Json } from "./openapiSchemas.ts";
import type { Documented, Route } from "./routes/route.ts";

const BASE = "/api/v1";

/** What each status of a refusal means, wherever it is given. */
const REFUSALS: Readonly<Record<number, string>> = {
  400: "malformed JSON, a value of a wrong type, size or unit, an unknown key; each field is named",
  404: "there is no such record",
  409: "in conflict with what the book holds; the records in the way are named",
  412: "the record was changed since If-Match",
  413: "the body is too large",
  415: "the body is not application/json",
  422: "well formed, but without an answer: not enough data, a contradiction, an unknown part",
  428: "If-Match is missing",
  429: "too many requests that take long wait already",
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

const refusalOf = (status: number, schemas: DocumentSchemas): Json => ({
  description: REFUSALS[status],
  content: { "application/json": { schema: schemas.of(errorResponse, "output") } },
});

/** The statuses with which a route may refuse: its own, and those that its body and its query bring. */
export function refusalsOf({ body, query, refusals = [] }: Route): number[] {
  const ofBody = body ? [400, 413, 415] : [];
  const ofQuery = query ? [400] : [];
  return [...new Set([...ofBody, ...ofQuery, ...refusals])].sort((a, b) => a - b);
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

function parametersOf({ path, query, needsIfMatch }: Route): Json[] {
  const inPath = [...path.matchAll(/:(\w+)/g)].map(([, name]) => ({
    name,
    in: "path",
    required: true,
    schema: { type: "string" },
  }));
  const ifMatch = { name: "If-Match", in: "header", required: true, schema: { type: "string" } };
  return [...inPath, ...queryParameters(query), ...(needsIfMatch ? [ifMatch] : [])];
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
    ...refusalsOf(route).map((status) => [String(status), refusalOf(status, schemas)]),
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
  return {
    openapi: "3.1.0",
    info: {
      title: "Gripcurve",
      version: "1.0.0",
      description: "The bench book, its fits and its predictions. SI units throughout.",
    },
    servers: [{ url: BASE }],
    tags: [...new Set(routes.map(({ tag }) => tag))].map((name) => ({ name })),
    paths,
    components: { schemas: schemas.components },
  };
}
