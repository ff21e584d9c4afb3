import { once } from "node:events";
import { readFileSync } from "node:fs";
import type { AddressInfo } from "node:net";
import supertest, { type Test } from "supertest";
import { onTestFinished } from "vitest";
import { type AppOptions, createApp } from "#server/app.ts";
import { certificateFile } from "#server/lan/certificate.ts";
import { lanServer } from "#server/lan/serveLan.ts";
import { freshStore, steppingClock } from "./book.ts";

type Method = "get" | "post" | "delete" | "head" | "put";

/** Names that the certificate of {@link servedLan} holds besides the machine's own. */
export const GIVEN = ["bench.example"];

/** A server of an empty book on the local network's side (TLS) and on this machine's (plain), both reached by 127.0.0.1. */
export async function servedLan(options: Partial<AppOptions> = {}) {
  const store = options.store ?? freshStore();
  const clock = steppingClock();
  const { lan, server } = await lanServer(store.file, GIVEN, new Date());
  const app = createApp({ store, clock, lan, ...options });
  server.on("request", app).listen(0, "127.0.0.1");
  await once(server, "listening");
  onTestFinished(() => {
    server.closeAllConnections();
    server.close();
  });
  const { port } = server.address() as AddressInfo;
  const ca = readFileSync(certificateFile(store.file), "utf8");
  const origin = `https://127.0.0.1:${port}`;
  /** Asks over TLS, and takes no other certificate than the one beside the data file. */
  const ask = (method: Method, path: string, cookie?: string): Test => {
    const test = supertest(origin)[method](path).ca(ca);
    return cookie === undefined ? test : test.set("Cookie", cookie);
  };
  const own = supertest(app);
  const newCode = async (): Promise<string> => (await own.post("/api/v1/pairing/code").expect(201)).body.code;
  const pair = async (name = "Phone") => {
    const code = await newCode();
    const { body, headers } = await ask("post", "/api/v1/pairing").send({ code, name }).expect(201);
    const [set] = headers["set-cookie"] as unknown as readonly string[];
    return { id: String(body.id), name: String(body.name), set, cookie: set.split(";")[0] };
  };
  return { store, app, lan, port, ca, origin, ask, own, newCode, pair };
}
