import { readFileSync } from "node:fs";
import { Validator } from "@seriousme/openapi-schema-validator";
import { describe, expect, it } from "vitest";
import { z } from "zod";
import { Foretelling } from "#server/foretelling.ts";
import { Jobs } from "#server/jobs/jobs.ts";
import { Visitors } from "#server/lan/visitors.ts";
import { documentedPath } from "#server/openapi.ts";
import { BookAnswers } from "#server/routes/bookAnswers.ts";
import { apiRoutes } from "#server/routes/index.ts";
import { served } from "#server/routes/mount.ts";
import { ownThread } from "#server/threads/ownThread.ts";
import { COLLECTION_NAMES } from "#shared/model/collections.ts";
import { freshBook } from "./support/api.ts";
import { freshStore } from "./support/book.ts";

/** The parts of OpenAPI 3.1 that the document uses, strictly (OpenAPI Specification 3.1.0, sections 4.8.1 to 4.8.17). */
const schemaObject = z.record(z.string(), z.unknown());
const content = z.record(z.string(), z.strictObject({ schema: schemaObject.optional() }));
const response = z.strictObject({
  description: z.string().min(1),
  content: content.optional(),
  headers: z.record(z.string(), z.strictObject({ description: z.string(), schema: schemaObject })).optional(),
});
const reference = z.strictObject({ $ref: z.string().startsWith("#/components/responses/") });
const operation = z.strictObject({
  operationId: z.string().regex(/^[a-zA-Z]+$/),
  tags: z.array(z.string()),
  summary: z.string().min(1),
  parameters: z.array(
    z.strictObject({
      name: z.string(),
      in: z.enum(["path", "query", "header"]),
      required: z.boolean(),
      description: z.string().optional(),
      schema: schemaObject,
    }),
  ),
  requestBody: z.strictObject({ required: z.literal(true), content }).optional(),
  responses: z.record(z.string().regex(/^[1-5]\d\d$/), z.union([reference, response])),
});
const methods = z.strictObject({
  get: operation.optional(),
  post: operation.optional(),
  put: operation.optional(),
  delete: operation.optional(),
});
const openApi = z.strictObject({
  openapi: z.literal("3.1.0"),
  info: z.strictObject({ title: z.string(), version: z.string(), description: z.string() }),
  servers: z.array(z.strictObject({ url: z.string() })),
  security: z.tuple([]),
  tags: z.array(z.strictObject({ name: z.string(), description: z.string() })),
  paths: z.record(z.string().startsWith("/"), methods),
  components: z.strictObject({
    schemas: z.record(z.string(), schemaObject),
    responses: z.record(z.string(), response),
  }),
});

async function readDocument() {
  const { body } = await freshBook().api.get("/api/v1/openapi.json").expect(200);
  return openApi.parse(body);
}

function everyReference(value: unknown): string[] {
  if (typeof value !== "object" || value === null) return [];
  return Object.entries(value).flatMap(([key, inner]) =>
    key === "$ref" && typeof inner === "string" ? [inner] : everyReference(inner),
  );
}

describe("the OpenAPI document", () => {
  it("is well formed, each operation has a name of its own and its path's parameters", async () => {
    const { paths } = await readDocument();
    const operations = Object.entries(paths).flatMap(([path, byMethod]) =>
      Object.values(byMethod).map((one) => ({ path, ...one })),
    );
    expect(new Set(operations.map(({ operationId }) => operationId)).size).toBe(operations.length);
    for (const { path, parameters } of operations) {
      const inPath = parameters.filter((parameter) => parameter.in === "path").map(({ name }) => `{${name}}`);
      expect(path.match(/\{\w+\}/g) ?? []).toEqual(inPath);
    }
  });

  it("holds every registered route with its methods, and no other", async () => {
    const { paths } = await readDocument();
    const documented = Object.entries(paths).flatMap(([path, byMethod]) =>
      Object.keys(byMethod).map((method) => `${method} ${path}`),
    );
    const clock = () => new Date(0);
    const threads = ownThread();
    const jobs = new Jobs(threads, clock, console.error);
    const store = freshStore();
    const foretelling = new Foretelling(store, threads, console.error);
    const visitors = new Visitors(store.devices, clock);
    const answers = new BookAnswers(store);
    const service = { store, clock, threads, jobs, answers, foretelling, visitors, lan: null };
    const router = served(apiRoutes(service), threads);
    const registered = router.stack.flatMap(({ route }) =>
      (route?.stack ?? []).flatMap(({ method }) =>
        method ? [`${method} ${documentedPath(route?.path ?? "")}`] : [],
      ),
    );
    const once = [...new Set(registered)];
    expect(documented.sort()).toEqual(once.sort());
    expect(registered).toContain("post /predict");
    for (const name of COLLECTION_NAMES) expect(registered).toContain(`put /${name}/{id}`);
  });

  it("says of each body what it must be, and of each refusal that it has the one shape", async () => {
    const { paths, components } = await readDocument();
    for (const [path, byMethod] of Object.entries(paths)) {
      for (const [method, { requestBody, responses }] of Object.entries(byMethod)) {
        if (requestBody) {
          const { schema } = requestBody.content["application/json"];
          expect(schema, `${method} ${path}`).toSatisfy(
            (body: object) => "$ref" in body || "properties" in body || "oneOf" in body || "anyOf" in body,
          );
          expect(Object.keys(responses)).toEqual(expect.arrayContaining(["400", "413", "415"]));
        }
        for (const [status, stated] of Object.entries(responses)) {
          if (Number(status) < 300) continue;
          expect(stated, `${method} ${path}`).toEqual({ $ref: `#/components/responses/Refusal${status}` });
        }
      }
    }
    for (const [name, { content: said }] of Object.entries(components.responses)) {
      if (name === "Refusal304") continue;
      expect(said, name).toEqual({
        "application/problem+json": { schema: { $ref: "#/components/schemas/Error" } },
      });
    }
  });

  it("says of every operation that strangers, other methods, other hosts and other pages are refused", async () => {
    const { paths } = await readDocument();
    for (const [path, byMethod] of Object.entries(paths)) {
      for (const [method, { responses }] of Object.entries(byMethod)) {
        expect(Object.keys(responses), `${method} ${path}`).toEqual(
          expect.arrayContaining(["401", "405", "421"]),
        );
        // What this machine alone may read is refused to a device as well.
        expect("403" in responses, `${method} ${path}`).toBe(method !== "get" || path === "/devices");
      }
    }
  });

  it("says where a revision must or may be named, and where an answer need not be sent again", async () => {
    const { paths } = await readDocument();
    const headers = (path: string, method: "get" | "put" | "delete") =>
      (paths[path][method]?.parameters ?? []).flatMap((each) =>
        each.in === "header" ? [`${each.name}${each.required ? "!" : ""}`] : [],
      );
    expect(headers("/motors/{id}", "put")).toEqual(["Idempotency-Key", "If-Match!"]);
    expect(headers("/motors/{id}", "delete")).toEqual(["Idempotency-Key", "If-Match"]);
    expect(headers("/motors/{id}", "get")).toEqual(["If-None-Match"]);
    expect(paths["/motors/{id}"].get?.responses).toHaveProperty("304");
    expect(paths["/events"].get?.responses).not.toHaveProperty("304");
  });

  it("has the version of the package, and no fault that the specification's own schema finds", async () => {
    const document = await readDocument();
    const { version } = JSON.parse(readFileSync(new URL("../../package.json", import.meta.url), "utf8"));
    expect(document.info.version).toBe(version);
    // The JSON schema of OpenAPI 3.1 as its authors publish it, and that every reference leads somewhere.
    const { valid, errors } = await new Validator().validate(structuredClone(document));
    expect(errors ?? []).toEqual([]);
    expect(valid).toBe(true);
  });

  it("refuses unknown keys in its schemas as the server does, and keeps units in the descriptions", async () => {
    const { paths, components } = await readDocument();
    const body = paths["/motors"].post?.requestBody?.content["application/json"].schema;
    expect(body).toEqual({ $ref: "#/components/schemas/MotorInput" });
    expect(components.schemas.MotorInput).toMatchObject({
      type: "object",
      additionalProperties: false,
      properties: { kv: { type: "number", exclusiveMinimum: 0, description: "rpm/V, > 0" } },
      required: ["name"],
    });
  });

  it("has no reference that leads nowhere", async () => {
    const document = await readDocument();
    for (const reference of new Set(everyReference(document))) {
      const place = reference
        .slice(2)
        .split("/")
        .reduce<unknown>((value, key) => (value as Record<string, unknown> | undefined)?.[key], document);
      expect(place, reference).toBeDefined();
    }
  });
});
