import { mkdirSync, writeFileSync } from "node:fs";
import { join } from "node:path";
import supertest from "supertest";
import { describe, expect, it } from "vitest";
import { createApp } from "#server/app.ts";
import { loadDemo } from "#server/demo.ts";
import { freshBook } from "./support/api.ts";
import { freshFolder, freshStore, steppingClock } from "./support/book.ts";
import { samples } from "./support/records.ts";

function demoServer() {
  const book = freshBook();
  loadDemo(book.store, new Date("2026-03-01T08:00:00Z"));
  return book.api;
}

describe("an answer to somebody who reads packed ones", () => {
  it.each(["gzip", "br"])("a list, read as %s: is packed and says the same", async (coding) => {
    const api = demoServer();
    const plain = await api.get("/api/v1/tests").set("Accept-Encoding", "identity").expect(200);
    const packed = await api.get("/api/v1/tests").set("Accept-Encoding", coding).expect(200);
    expect(plain.headers).not.toHaveProperty("content-encoding");
    expect(packed.headers["content-encoding"]).toBe(coding);
    expect(packed.headers.vary).toContain("Accept-Encoding");
    if (coding === "gzip") expect(packed.body).toEqual(plain.body);
  });

  it("an archive, sent piece by piece: is packed and says the same", async () => {
    const api = demoServer();
    const packed = await api.get("/api/v1/archive").set("Accept-Encoding", "gzip").expect(200);
    expect(packed.headers["content-encoding"]).toBe("gzip");
    expect(packed.body.records.tests.length).toBeGreaterThan(10);
  });

  it("a script of the screens: is packed", async () => {
    const client = freshFolder();
    mkdirSync(join(client, "assets"));
    writeFileSync(join(client, "assets", "index-a1b2.js"), "export const word = 'suction';\n".repeat(500));
    const api = supertest(createApp({ store: freshStore(), clock: steppingClock(), client }));
    const { headers, text } = await api.get("/assets/index-a1b2.js").set("Accept-Encoding", "gzip");
    expect(headers["content-encoding"]).toBe("gzip");
    expect(text).toMatch(/^export const word/);
  });

  it("one record, whose strong ETag names its very bytes: goes out as it is", async () => {
    const { api } = freshBook();
    const long = { ...samples.motors, note: "n".repeat(3000) };
    const { headers } = await api.post("/api/v1/motors").set("Accept-Encoding", "gzip").send(long);
    expect(headers.etag).toBe('"1"');
    expect(headers).not.toHaveProperty("content-encoding");
  });

  it("an event stream: goes out as it is, each event at once", async () => {
    const { headers } = await freshBook().api.head("/api/v1/events").set("Accept-Encoding", "gzip");
    expect(headers).not.toHaveProperty("content-encoding");
    expect(headers["cache-control"]).toContain("no-transform");
  });

  it("a short answer: goes out as it is", async () => {
    const { headers } = await freshBook().api.get("/api/v1/bench").set("Accept-Encoding", "gzip");
    expect(headers).not.toHaveProperty("content-encoding");
  });
});
