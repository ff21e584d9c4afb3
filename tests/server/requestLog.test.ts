import supertest from "supertest";
import { describe, expect, it } from "vitest";
import { createApp } from "#server/app.ts";
import { freshStore, steppingClock } from "./support/book.ts";
import { samples } from "./support/records.ts";

function logged() {
  const lines: string[] = [];
  const logRequest = (line: string) => lines.push(line);
  const app = createApp({ store: freshStore(), clock: steppingClock(), logRequest });
  return { lines, api: supertest(app) };
}

describe("the request log", () => {
  it("of each request: one line with time, method, path, status and how long it took", async () => {
    const { lines, api } = logged();
    await api.get("/api/v1/bench");
    await api.get("/api/v1/motors/none");
    expect(lines).toHaveLength(2);
    expect(lines[0]).toMatch(/^2026-03-01T08:00:\d\d\.000Z GET \/api\/v1\/bench 200 \d+\.\d ms$/);
    expect(lines[1]).toMatch(/ GET \/api\/v1\/motors\/none 404 /);
  });

  it("of requests that are refused before they are looked at: says so as well", async () => {
    const { lines, api } = logged();
    await api.get("/api/v1/bench").set("Host", "rebound.example");
    expect(lines[0]).toContain(" 421 ");
  });

  it("holds nothing that the user wrote: no query, no header, no body", async () => {
    const { lines, api } = logged();
    await api
      .post("/api/v1/motors?word=inquery")
      .set("Authorization", "inheader")
      .send({ ...samples.motors, name: "inbody" });
    await api.get("/api/v1/motors?q=inquery").set("Cookie", "inheader");
    expect(lines).toHaveLength(2);
    expect(lines.join()).not.toMatch(/inquery|inheader|inbody/);
  });

  it("is not written unless it is asked for", async () => {
    const api = supertest(createApp({ store: freshStore(), clock: steppingClock() }));
    await api.get("/api/v1/bench").expect(200);
  });
});
