import { readFileSync } from "node:fs";
import { request } from "node:http";
import { request as follow } from "node:https";
import { connect } from "node:tls";
import { describe, expect, it } from "vitest";
import { GIVEN, servedLan } from "../support/lan.ts";
import { samples } from "../support/records.ts";

const BENCH = "/api/v1/bench";
const MOTORS = "/api/v1/motors";

/** @returns the version that both sides agree on, or the error's code */
function handshake(port: number, ca: string, versions: object): Promise<string | null> {
  return new Promise((resolve) => {
    const socket = connect({ port, host: "127.0.0.1", ca, ...versions }, () => {
      resolve(socket.getProtocol());
      socket.destroy();
    });
    socket.once("error", (error: NodeJS.ErrnoException) => resolve(error.code ?? "failed"));
  });
}

/** Follows a stream. @returns what was heard so far, and when it ended */
function followed(address: string, ca: string, cookie: string) {
  let said = "";
  const ended = new Promise<void>((resolve) => {
    follow(address, { ca, headers: { cookie } }, (answer) => {
      answer.on("data", (chunk: Buffer) => {
        said += chunk;
      });
      // Broken off, which the client takes for an error.
      answer.on("error", () => undefined);
      answer.on("close", resolve);
    }).end();
  });
  return { heard: () => said, ended };
}

describe("over the local network, a stranger", () => {
  it.each(["/api/v1/bench", "/API/v1/bench", "/api/v1/archive", "/api/v1/events", "/api/v1/nothing", "/api"])(
    "asking for %s: is refused, and told where to be paired",
    async (path) => {
      const { ask } = await servedLan();
      const { body, headers } = await ask("get", path).expect(401);
      expect(body.error.code).toBe("not-paired");
      expect(body.error.message).toContain("/pair");
      expect(headers["www-authenticate"]).toBe('Pairing page="/pair"');
    },
  );

  it("writing: is refused, and nothing is written", async () => {
    const { ask, store } = await servedLan();
    await ask("post", MOTORS).send(samples.motors).expect(401);
    await ask("post", "/api/v1/bench/empty").expect(401);
    await ask("post", "/").expect(401);
    expect(store.counts().motors).toBe(0);
  });

  it.each(["/", "/match", "/docs/", "/bench/devices", "/pairs", "/assetsx"])(
    "opening %s: is led to the page that pairs it",
    async (path) => {
      const { ask } = await servedLan();
      const { headers } = await ask("get", path).expect(303);
      expect(headers.location).toBe("/pair");
    },
  );

  it("showing a secret that is none of ours: is still one", async () => {
    const { ask, pair } = await servedLan();
    const { cookie } = await pair();
    for (const wrong of ["__Host-gripcurve=", "__Host-gripcurve=x", cookie.slice(0, -1), `x${cookie}`])
      await ask("get", BENCH, wrong).expect(401);
  });
});

describe("a device, once it is paired", () => {
  it("reads and writes as this machine does, and is in the list under its name", async () => {
    const { ask, own, pair } = await servedLan();
    const { cookie, id } = await pair("Phone at the rig");
    await ask("get", BENCH, cookie).expect(200);
    await ask("get", BENCH, `theme=dark; ${cookie}`).expect(200);
    await ask("post", MOTORS, cookie).send(samples.motors).expect(201);
    const { body } = await own.get("/api/v1/devices").expect(200);
    expect(body.items).toMatchObject([{ id, name: "Phone at the rig" }]);
  });

  it("holds a secret of 256 bits that no script reads and no other site sends; the file has its hash alone", async () => {
    const { pair, store } = await servedLan();
    const { set, cookie } = await pair();
    expect(set).toMatch(
      /^__Host-gripcurve=[\w-]{43}; Path=\/; Max-Age=34560000; Secure; HttpOnly; SameSite=Strict$/,
    );
    const [, secret] = cookie.split("=");
    const copy = `${store.file}.copy`;
    await store.backup(copy);
    expect(readFileSync(copy, "latin1")).not.toContain(secret);
    expect(readFileSync(copy, "latin1")).toContain("Phone");
  });

  it("of another's name: gets a number behind it", async () => {
    const { pair } = await servedLan();
    expect([(await pair()).name, (await pair()).name, (await pair()).name]).toEqual([
      "Phone",
      "Phone 2",
      "Phone 3",
    ]);
  });

  it("neither lists, pairs nor revokes devices", async () => {
    const { ask, pair, store } = await servedLan();
    const { cookie, id } = await pair();
    for (const asked of [
      ask("get", "/api/v1/devices", cookie),
      ask("get", "/api/v1/Devices/", cookie),
      ask("post", "/api/v1/pairing/code", cookie),
      ask("delete", `/api/v1/devices/${id}`, cookie),
    ]) {
      const { body } = await asked.expect(403);
      expect(body.error.code).toBe("this-machine-only");
    }
    expect(store.devices.list()).toHaveLength(1);
  });

  it("stays paired when the bench is emptied or another book takes its place, and is in no archive", async () => {
    const { ask, own, pair } = await servedLan();
    const { cookie } = await pair("Phone at the rig");
    const { text } = await own.get("/api/v1/archive").expect(200);
    expect(text).not.toContain("Phone at the rig");
    await own.post("/api/v1/bench/empty").expect(200);
    await own.post("/api/v1/archive?replace=true").send(JSON.parse(text)).expect(201);
    await ask("get", BENCH, cookie).expect(200);
  });
});

describe("a device that is revoked", () => {
  it("is a stranger from then on, the others aren't", async () => {
    const { ask, own, pair } = await servedLan();
    const [first, second] = [await pair(), await pair()];
    await own.delete(`/api/v1/devices/${first.id}`).expect(204);
    await ask("get", BENCH, first.cookie).expect(401);
    await ask("get", BENCH, second.cookie).expect(200);
    await own.delete(`/api/v1/devices/${first.id}`).expect(404);
  });

  it("while it follows the changes: its stream ends at once", async () => {
    const { own, pair, store, origin, ca } = await servedLan();
    const { cookie, id } = await pair();
    const { heard, ended } = followed(`${origin}/api/v1/events`, ca, cookie);
    await expect.poll(heard).toContain("retry");
    await own.delete(`/api/v1/devices/${id}`).expect(204);
    await ended;
    store.announce("loaded");
    expect(heard()).not.toContain("loaded");
  });
});

describe("a code that is sent", () => {
  it("wrong: pairs nothing; after five the peer is made to wait, with the right one as well", async () => {
    const { ask, newCode, store } = await servedLan();
    const send = (code: string) => ask("post", "/api/v1/pairing").send({ code, name: "Phone" });
    for (let sent = 0; sent < 5; sent++) {
      const { body, headers } = await send("0".repeat(32)).expect(403);
      expect(body.error.code).toBe("wrong-code");
      expect(headers).not.toHaveProperty("set-cookie");
    }
    const { body, headers } = await send(await newCode()).expect(429);
    expect(body.error.code).toBe("too-many-codes");
    expect(Number(headers["retry-after"])).toBeGreaterThan(500);
    expect(store.devices.list()).toEqual([]);
  });

  it("a second time: pairs nothing more", async () => {
    const { ask, newCode } = await servedLan();
    const code = await newCode();
    await ask("post", "/api/v1/pairing").send({ code, name: "Phone" }).expect(201);
    await ask("post", "/api/v1/pairing").send({ code, name: "Another" }).expect(403);
  });

  it.each([
    ["no name", { code: "x", name: " " }],
    ["no code", { name: "Phone" }],
    ["a key that nobody knows", { code: "x", name: "Phone", admin: true }],
  ])("with %s: is refused by its fields", async (_what, body) => {
    const { ask } = await servedLan();
    await ask("post", "/api/v1/pairing").send(body).expect(400);
  });

  it("by a page of another site: is refused before it is looked at", async () => {
    const { ask, newCode } = await servedLan();
    const code = await newCode();
    await ask("post", "/api/v1/pairing")
      .set("Origin", "https://example.org")
      .send({ code, name: "Phone" })
      .expect(403);
    await ask("post", "/api/v1/pairing").send({ code, name: "Phone" }).expect(201);
  });

  it("on this machine, which needs none: isn't used up", async () => {
    const { ask, own, newCode } = await servedLan();
    const code = await newCode();
    await own.post("/api/v1/pairing").send({ code, name: "Phone" }).expect(409);
    await ask("post", "/api/v1/pairing").send({ code, name: "Phone" }).expect(201);
  });
});

describe("names, by the side on which they are asked", () => {
  it("those of the network: on the network alone, since whoever is there could claim one", async () => {
    const { ask, own, pair } = await servedLan();
    const { cookie } = await pair();
    await ask("get", BENCH, cookie).set("Host", GIVEN[0]).expect(200);
    // The client, too, would look for the name in the certificate.
    await ask("get", BENCH, cookie).disableTLSCerts().set("Host", "rebound.example").expect(421);
    await own.get(BENCH).set("Host", GIVEN[0]).expect(421);
  });
});

describe("the request log, of pairing", () => {
  it("holds neither code nor secret", async () => {
    const lines: string[] = [];
    const { ask, newCode } = await servedLan({ logRequest: (line) => lines.push(line) });
    const code = await newCode();
    const { headers } = await ask("post", "/api/v1/pairing").send({ code, name: "Phone at the rig" });
    const [cookie] = (headers["set-cookie"] as unknown as readonly string[])[0].split(";");
    await ask("get", BENCH, cookie).expect(200);
    await expect.poll(() => lines).toHaveLength(3);
    expect(lines.join("\n")).toMatch(/POST \/api\/v1\/pairing 201/);
    for (const secret of [code, cookie.split("=")[1], "Phone at the rig"])
      expect(lines.join("\n")).not.toContain(secret);
  });
});

describe("the network's port", () => {
  it("speaks TLS 1.2 and 1.3 and nothing older", async () => {
    const { port, ca } = await servedLan();
    const only = (version: string) => ({ minVersion: version, maxVersion: version });
    expect(await handshake(port, ca, only("TLSv1.3"))).toBe("TLSv1.3");
    expect(await handshake(port, ca, only("TLSv1.2"))).toBe("TLSv1.2");
    // A client that would speak 1.1 with old ciphers: it is the server that refuses.
    const old = { ...only("TLSv1.1"), ciphers: "ALL@SECLEVEL=0" };
    expect(await handshake(port, ca, old)).toBe("ERR_SSL_TLSV1_ALERT_PROTOCOL_VERSION");
  });

  it("answers nothing that comes unencrypted", async () => {
    const { port } = await servedLan();
    const outcome = await new Promise((resolve) => {
      request({ port, host: "127.0.0.1", path: BENCH }, (answer) => resolve(answer.statusCode))
        .once("error", (error: NodeJS.ErrnoException) => resolve(error.code))
        .end();
    });
    expect(outcome).toBe("ECONNRESET");
  });
});

describe("without --lan", () => {
  it("no code is made, and the list says that the network isn't served", async () => {
    const { own } = await servedLan({ lan: undefined });
    const { body } = await own.post("/api/v1/pairing/code").expect(409);
    expect(body.error.message).toContain("npm start -- --lan");
    expect((await own.get("/api/v1/devices").expect(200)).body).toEqual({ items: [], network: null });
  });
});
