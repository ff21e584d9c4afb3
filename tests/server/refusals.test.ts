import supertest from "supertest";
import { describe, expect, it } from "vitest";
import { createApp } from "#server/app.ts";
import { errorResponse } from "#shared/model/api/errors.ts";
import { freshBook } from "./support/api.ts";
import { freshStore, steppingClock } from "./support/book.ts";
import { samples } from "./support/records.ts";

const motors = "/api/v1/motors";

describe("a refusal, by its status", () => {
  it("400 on malformed JSON, in the one shape", async () => {
    const { api } = freshBook();
    const { body } = await api.post(motors).type("json").send('{"name": "x", ').expect(400);
    expect(errorResponse.parse(body).error.code).toBe("malformed");
    await api.post(motors).type("json").send('{"kv": NaN}').expect(400);
    await api.post(motors).expect(400);
  });

  // RFC 9457, 3.1: type, title, status and detail; with "about:blank" the title is the status's own phrase (4.2.1).
  it("404 as problem details, with the status in words and what is wrong", async () => {
    const { body, headers } = await freshBook().api.get(`${motors}/none`).expect(404);
    expect(headers["content-type"]).toMatch(/^application\/problem\+json/);
    expect(body).toEqual({
      type: "about:blank",
      title: "Not Found",
      status: 404,
      detail: body.error.message,
      error: { code: "not-found", message: 'There is no "none" among the motors.', fields: [] },
    });
  });

  it.each([
    ["a negative size", { kv: -1 }, "kv", "Read -1; allowed: rpm/V, > 0, at most 1000000."],
    ["a text for a number", { kv: "7800" }, "kv", 'Read "7800"; allowed: rpm/V, > 0, at most 1000000.'],
    ["null for a number", { kv: null }, "kv", "Read null; allowed: rpm/V, > 0, at most 1000000."],
    [
      "an unknown key",
      { colour: 1 },
      "colour",
      expect.stringMatching(/^Unknown key "colour"; allowed: name, kv/),
    ],
    ["a missing part of it", { name: undefined }, "name", expect.stringMatching(/^Missing; allowed: /)],
    ["a prototype's key deeper down", { uncertainty: { kv: -2 } }, "uncertainty.kv", expect.any(String)],
  ])("400 on %s, the field named, nothing stored", async (_what, change, path, message) => {
    const { api, store } = freshBook();
    const { body } = await api
      .post(motors)
      .send({ ...samples.motors, ...change })
      .expect(400);
    expect(errorResponse.parse(body).error).toMatchObject({ code: "invalid", fields: [{ path, message }] });
    expect(store.isEmpty()).toBe(true);
  });

  it("400 on a number too large for JSON, which reads as infinity", async () => {
    const text = JSON.stringify(samples.motors).replace("7800", "1e999");
    const { body } = await freshBook().api.post(motors).type("json").send(text).expect(400);
    expect(body.error.fields).toEqual([
      { path: "kv", message: "Read Infinity; allowed: rpm/V, > 0, at most 1000000." },
    ]);
  });

  it("400 or harmless on prototype keys: no object anywhere learns anything", async () => {
    const { api } = freshBook();
    const own = JSON.stringify(samples.motors).slice(0, -1);
    await api.post(motors).type("json").send(`${own}, "__proto__": {"polluted": 1}}`).expect(400);
    await api
      .post(motors)
      .type("json")
      .send(`${own}, "constructor": {"prototype": {"polluted": 1}}}`)
      .expect(400);
    const inner = `${own}, "uncertainty": {"__proto__": {"polluted": 1}}}`;
    const answer = await api.post(motors).type("json").send(inner);
    expect([201, 400]).toContain(answer.status);
    expect(answer.body.data?.uncertainty ?? {}).toEqual({});
    expect(({} as { polluted?: number }).polluted).toBeUndefined();
    expect(Object.prototype).not.toHaveProperty("polluted");
  });

  it("the last of two equal keys counts, as JSON readers do", async () => {
    const own = JSON.stringify(samples.motors).slice(0, -1);
    const { body } = await freshBook().api.post(motors).type("json").send(`${own}, "kv": 9}`).expect(201);
    expect(body.data.kv).toBe(9);
  });

  it.each(["/api/v1/nothing", "/api/v2/motors", "/api", `${motors}/no-such`, `${motors}/no-such/revisions`])(
    "404 on %s, in the one shape",
    async (path) => {
      const { body } = await freshBook().api.get(path).expect(404);
      expect(errorResponse.parse(body).error.code).toBe("not-found");
    },
  );

  it("404 on a correction and a removal of what isn't there", async () => {
    const { api } = freshBook();
    await api.put(`${motors}/none`).set("If-Match", "*").send(samples.motors).expect(404);
    await api.delete(`${motors}/none`).expect(404);
  });

  it("400 on an address that can't be read", async () => {
    const { body } = await freshBook().api.get(`${motors}/%zz`).expect(400);
    expect(errorResponse.parse(body).error.code).toBe("malformed");
  });

  it("405 on another method, with what is allowed", async () => {
    const { api } = freshBook();
    const { body, headers } = await api.delete(motors).expect(405);
    expect(errorResponse.parse(body).error.code).toBe("method-not-allowed");
    expect(headers.allow).toBe("GET, POST, HEAD, OPTIONS");
    await api.patch(`${motors}/x`).expect(405);
    await api.options(motors).expect(204);
  });

  it("413 on a body over 1 MB, and none on one just below", async () => {
    const { api } = freshBook();
    const { body } = await api
      .post(motors)
      .send({ ...samples.motors, note: "x".repeat(1_000_000) })
      .expect(413);
    expect(errorResponse.parse(body).error.code).toBe("too-large");
    await api
      .post(motors)
      .send({ ...samples.motors, note: "x".repeat(990_000) })
      .expect(400);
  });

  it("415 on another content type", async () => {
    const { api } = freshBook();
    const { body } = await api.post(motors).type("form").send("name=x").expect(415);
    expect(errorResponse.parse(body).error.code).toBe("unsupported-media-type");
    await api.post(motors).type("text/plain").send(JSON.stringify(samples.motors)).expect(415);
  });

  it("500 on what nobody foresaw: logged, and nothing of the inside in the answer", async () => {
    const store = freshStore();
    const logged: unknown[] = [];
    const app = createApp({ store, clock: steppingClock(), log: (error) => logged.push(error) });
    store.collections.motors.read = () => {
      throw new Error("secret inside");
    };
    const { body, text } = await supertest(app).get(`${motors}/x`).expect(500);
    expect(errorResponse.parse(body).error.code).toBe("internal");
    expect(text).not.toContain("secret");
    expect(logged).toHaveLength(1);
  });

  it("422 where a number in the answer would not be finite: null never stands for it", async () => {
    const { app, store, api } = freshBook();
    expect(app.get("json replacer")).toBeTypeOf("function");
    const counts = store.counts();
    store.counts = () => ({ ...counts, motors: Number.NaN });
    const { body } = await api.get("/api/v1/bench").expect(422);
    expect(body.error).toMatchObject({ code: "not-finite", message: expect.stringContaining('"motors"') });
  });
});

describe("headers of every answer", () => {
  it("allow scripts and styles from here alone, none inline, and no framing", async () => {
    const { headers } = await freshBook().api.get("/api/v1/bench");
    const policy = headers["content-security-policy"];
    expect(policy).toContain("script-src 'self'");
    expect(policy).not.toMatch(/unsafe/);
    expect(policy).toContain("frame-ancestors 'none'");
    expect(headers["x-content-type-options"]).toBe("nosniff");
    expect(headers).not.toHaveProperty("x-powered-by");
  });

  it("name every kind of source: what isn't named comes from nowhere", async () => {
    const { headers } = await freshBook().api.get("/api/v1/bench");
    const directives = Object.fromEntries(
      headers["content-security-policy"].split("; ").map((each: string) => {
        const [name, ...sources] = each.split(" ");
        return [name, sources.join(" ")];
      }),
    );
    expect(directives).toEqual({
      "default-src": "'none'",
      "script-src": "'self'",
      "style-src": "'self'",
      "img-src": "'self' data: blob:",
      "font-src": "'self'",
      "connect-src": "'self'",
      "worker-src": "'self'",
      "manifest-src": "'self'",
      "base-uri": "'none'",
      "form-action": "'self'",
      "frame-ancestors": "'none'",
    });
    expect(headers).toMatchObject({
      "cross-origin-opener-policy": "same-origin",
      "cross-origin-resource-policy": "same-origin",
      "origin-agent-cluster": "?1",
      "referrer-policy": "no-referrer",
      "x-frame-options": "DENY",
      "x-permitted-cross-domain-policies": "none",
    });
    expect(headers).not.toHaveProperty("strict-transport-security");
  });
});
