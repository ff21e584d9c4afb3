import { brotliCompressSync, gzipSync } from "node:zlib";
import { describe, expect, it } from "vitest";
import { errorResponse } from "#shared/model/api/errors.ts";
import { freshBook } from "./support/api.ts";
import { samples } from "./support/records.ts";

const MOTORS = "/api/v1/motors";
const nested = (depth: number) => "[".repeat(depth) + "]".repeat(depth);

/** Sends bytes as they are, with the headers of a JSON body unless others are given. */
function send(path: string, body: Buffer | string, headers: Record<string, string> = {}) {
  const { api } = freshBook();
  return api
    .post(path)
    .set({ "Content-Type": "application/json", ...headers })
    .serialize((bytes) => bytes)
    .send(Buffer.from(body));
}

async function refusedWith(status: number, answer: ReturnType<typeof send>) {
  const { body } = await answer.expect(status);
  return errorResponse.parse(body).error;
}

describe("a body, by how it is packed", () => {
  const motor = JSON.stringify(samples.motors);

  it.each([
    ["gzip", gzipSync(motor)],
    ["br", brotliCompressSync(motor)],
    ["gzip", Buffer.from("no gzip at all")],
    ["gzip", gzipSync(Buffer.alloc(100_000_000))],
    ["gzip, gzip", gzipSync(gzipSync(motor))],
    ["unheard-of", Buffer.from(motor)],
  ])("%s: 415, unopened, with what is taken", async (coding, body) => {
    const answer = send(MOTORS, body, { "Content-Encoding": coding });
    expect((await refusedWith(415, answer)).code).toBe("unsupported-encoding");
    expect((await answer).headers["accept-encoding"]).toBe("identity");
  });

  it("identity: taken as it is", async () => {
    await send(MOTORS, motor, { "Content-Encoding": "identity" }).expect(201);
  });

  it.each(["application/json; charset=latin1", 'application/json; charset="utf-16"'])(
    "written as %s: 415",
    async (type) => {
      const { message } = await refusedWith(415, send(MOTORS, motor, { "Content-Type": type }));
      expect(message).toContain("allowed: application/json, in UTF-8");
    },
  );

  it.each(["application/json; charset=utf-8", 'application/json;charset="UTF-8"'])(
    "written as %s: taken",
    async (type) => {
      await send(MOTORS, motor, { "Content-Type": type }).expect(201);
    },
  );

  it("with bytes that are no UTF-8: 400 that says so", async () => {
    const bytes = Buffer.concat([Buffer.from('{"name":"'), Buffer.from([0xff, 0xfe]), Buffer.from('"}')]);
    expect((await refusedWith(400, send(MOTORS, bytes))).message).toContain("UTF-8");
  });

  it("that begins with a byte order mark: read without it", async () => {
    await send(MOTORS, `\u{feff}${motor}`).expect(201);
  });
});

describe("a body, by how it is built", () => {
  it.each([5_000, 450_000])("of %s lists inside each other: 400", async (depth) => {
    for (const body of [nested(depth), `{"name":${nested(depth)}}`])
      expect((await refusedWith(400, send(MOTORS, body))).message).toMatch(/too deep; allowed: 32/);
  });

  it("of 5000 objects inside each other, under a known key: 400", async () => {
    const body = `{"rotor":${'{"a":'.repeat(5000)}1${"}".repeat(5001)}`;
    expect((await refusedWith(400, send("/api/v1/predict", body))).message).toContain("too deep");
  });

  it("of a million lists inside each other in an archive: 400, as anywhere", async () => {
    const body = `{"format":"gripcurve-bench","records":{"motors":[${nested(1_000_000)}]}}`;
    expect((await refusedWith(400, send("/api/v1/archive", body))).message).toContain("too deep");
  });

  it("of five million empty objects in an archive: 400 before more than a few are read", async () => {
    const many = `[${"{},".repeat(5_000_000)}{}]`;
    const around = await refusedWith(400, send("/api/v1/archive", `{"records":${many}}`));
    expect(around.message).toContain("too much outside");
    const within = await refusedWith(400, send("/api/v1/archive", `{"records":{"motors":${many}}}`));
    expect(within.fields).toHaveLength(100);
  });

  it("32 deep: read, and refused for what it says; brackets in texts don't count", async () => {
    expect((await refusedWith(400, send(MOTORS, nested(32)))).code).toBe("invalid");
    expect((await refusedWith(400, send(MOTORS, nested(33)))).code).toBe("malformed");
    const name = `${'["\\'.repeat(20)}`;
    await send(MOTORS, JSON.stringify({ ...samples.motors, name })).expect(201);
  });

  it.each(["", "5", "null", '"text"', "[]"])("that is %j: 400 that says what is allowed", async (body) => {
    const { message } = await refusedWith(400, send(MOTORS, body));
    expect(message).toMatch(/^The body: .*allowed: an object with name, kv/);
  });

  it("of 90 000 unknown keys: 400 in a few kilobytes, with the count", async () => {
    const keys = Array.from({ length: 90_000 }, (_, i) => `"k${i}":1`).join();
    const answer = send(MOTORS, `{${keys}}`);
    const { fields, message } = await refusedWith(400, answer);
    expect(fields).toHaveLength(100);
    expect(message).toMatch(/\(and 90000 more\)$/);
    expect((await answer).text.length).toBeLessThan(50_000);
  });

  it("with a text of 900 kB for a number: 400 in a few hundred bytes", async () => {
    const answer = send(MOTORS, JSON.stringify({ ...samples.motors, kv: "7".repeat(900_000) }));
    await refusedWith(400, answer);
    expect((await answer).text.length).toBeLessThan(500);
  });
});
