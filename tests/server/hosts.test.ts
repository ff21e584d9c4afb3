import { once } from "node:events";
import type { AddressInfo } from "node:net";
import { platform } from "node:os";
import supertest from "supertest";
import { describe, expect, it, onTestFinished } from "vitest";
import { createApp } from "#server/app.ts";
import { errorResponse } from "#shared/model/api/errors.ts";
import { freshStore, steppingClock } from "./support/book.ts";

const served = (names: readonly string[] = []) =>
  createApp({ store: freshStore(), clock: steppingClock(), names });
const BENCH = "/api/v1/bench";
const EMPTY = "/api/v1/bench/empty";

describe("a request, by the host that it names", () => {
  it.each(["127.0.0.1", "127.0.0.1:4310", "localhost:80", "LOCALHOST", "[::1]:4310", "[::1]"])(
    "%s: this machine's own, answered",
    async (host) => {
      await supertest(served()).get(BENCH).set("Host", host).expect(200);
    },
  );

  // A page elsewhere lets its own name lead to 127.0.0.1 after it was loaded; the browser still sends that name.
  it.each([
    "rebound.example",
    "rebound.example:4310",
    "127.0.0.1.rebound.example",
    "localhost@rebound.example",
    "192.0.2.7:4310",
    "[fd00::7]",
    "",
  ])("%s: somebody else's, refused with 421, reads and screens as well", async (host) => {
    const api = supertest(served());
    for (const path of [BENCH, "/", "/api/v1/archive"]) {
      const { body } = await api.get(path).set("Host", host).expect(421);
      expect(errorResponse.parse(body).error.code).toBe("other-host");
    }
    await api.post(EMPTY).set("Host", host).expect(421);
  });

  it.each(["bench.local", "Bench.Local:4310", "[fd00::7]:4310"])(
    "%s: allowed when the server started, answered",
    async (host) => {
      const app = served(["bench.local", "fd00::7"]);
      await supertest(app).get(BENCH).set("Host", host).expect(200);
      await supertest(app).get(BENCH).set("Host", "other.local").expect(421);
    },
  );

  // Linux alone lets the whole of 127.0.0.0/8 lead to this machine without being set up.
  it.runIf(platform() === "linux")("the address on which it came in: answered, and on no other", async () => {
    const server = served().listen(0, "0.0.0.0");
    onTestFinished(() => {
      server.close();
    });
    await once(server, "listening");
    const { port } = server.address() as AddressInfo;
    await supertest(`http://127.0.0.2:${port}`).get(BENCH).expect(200);
    await supertest(`http://127.0.0.1:${port}`).get(BENCH).set("Host", "127.0.0.2").expect(421);
  });
});

describe("a write, by the page that asks for it", () => {
  it.each([
    ["of another origin", { Origin: "https://example.org" }],
    ["of another port of this machine", { Origin: "http://127.0.0.1:1" }],
    ["without an origin to name, as in a sandboxed frame", { Origin: "null" }],
    ["of another site, whose origin the browser leaves out", { "Sec-Fetch-Site": "cross-site" }],
    ["of another host of the same site", { "Sec-Fetch-Site": "same-site" }],
  ])("%s: refused with 403", async (_page, headers) => {
    const { body } = await supertest(served()).post(EMPTY).set(headers).expect(403);
    expect(errorResponse.parse(body).error.code).toBe("other-origin");
  });

  it.each([
    ["of our own", { Host: "bench.local", Origin: "http://bench.local", "Sec-Fetch-Site": "same-origin" }],
    ["none at all, asked for by hand", { "Sec-Fetch-Site": "none" }],
    ["none at all, asked for by a program", {}],
  ])("%s: taken", async (_page, headers) => {
    await supertest(served(["bench.local"]))
      .post(EMPTY)
      .set(headers)
      .expect(200);
  });

  it("of another site, reading only: the book's state goes out, for no page but our own to read", async () => {
    const { headers } = await supertest(served()).get(BENCH).set("Sec-Fetch-Site", "cross-site").expect(200);
    expect(headers["cross-origin-resource-policy"]).toBe("same-origin");
    expect(headers).not.toHaveProperty("access-control-allow-origin");
  });
});
