import { describe, expect, it } from "vitest";
import { z } from "zod";
import { Jobs } from "#server/jobs/jobs.ts";
import { documentedPath } from "#server/openapi.ts";
import { apiRoutes } from "#server/routes/index.ts";
import { mount } from "#server/routes/mount.ts";
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
const operation = z.strictObject({
  operationId: z.string().regex(/^[a-zA-Z]+$/),
  tags: z.array(z.string()),
  summary: z.string().min(1),
  parameters: z.array(
    z.strictObject({
      name: z.string(),
      in: z.enum(["path", "query", "header"]),
      required: z.boolean(),
      schema: schemaObject,
    }),
  ),
  requestBody: z.strictObject({ required: z.literal(true), content }).optional(),
  responses: z.record(z.string().regex(/^[1-5]\d\d$/), response),
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
  tags: z.array(z.strictObject({ name: z.string() })),
  paths: z.record(z.string().startsWith("/"), methods),
  components: z.strictObject({ schemas: z.record(z.string(), schemaObject) }),
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
    const router = mount(apiRoutes({ store: freshStore(), clock, threads, jobs }), threads);
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
    const { paths } = await readDocument();
    for (const [path, byMethod] of Object.entries(paths)) {
      for (const [method, { requestBody, responses }] of Object.entries(byMethod)) {
        if (requestBody) {
          const { schema } = requestBody.content["application/json"];
          expect(schema, `${method} ${path}`).toSatisfy(
            (body: object) => "$ref" in body || "properties" in body || "oneOf" in body || "anyOf" in body,
          );
          expect(Object.keys(responses)).toEqual(expect.arrayContaining(["400", "413", "415"]));
        }
        const refusals = Object.entries(responses).filter(([status]) => Number(status) >= 400);
        for (const [, refusal] of refusals) {
          expect(refusal.content?.["application/json"].schema).toEqual({
            $ref: "#/components/schemas/Error",
          });
        }
      }
    }
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
