import { rmSync } from "node:fs";
import { join } from "node:path";
import SQLite from "better-sqlite3";
import { afterAll, beforeAll, describe, expect, it, onTestFinished } from "vitest";
import { freshFolder } from "#tests/server/support/book.ts";
import { samples } from "#tests/server/support/records.ts";
import { buildServer, type RunningServer, startServer } from "./support/server.ts";

let bundle: Awaited<ReturnType<typeof buildServer>>;

beforeAll(async () => {
  bundle = await buildServer();
});
afterAll(() => rmSync(bundle.folder, { recursive: true, force: true }));

async function start(file: string): Promise<RunningServer> {
  const server = await startServer(bundle.main, file);
  onTestFinished(() => {
    server.child.kill("SIGKILL");
  });
  return server;
}

const send = (url: string, body: object, method = "POST", headers = {}) =>
  fetch(url, {
    method,
    headers: { "Content-Type": "application/json", ...headers },
    body: JSON.stringify(body),
  });

interface Acknowledged {
  readonly id: string;
  readonly revision: number;
}

/** Adds and corrects without a pause until the server is gone. @returns what it acknowledged */
async function writeUntilGone(url: string, onAcknowledged: (count: number) => void): Promise<Acknowledged[]> {
  const acknowledged: Acknowledged[] = [];
  try {
    for (;;) {
      const created = await send(`${url}/api/v1/motors`, samples.motors);
      const { id } = (await created.json()) as Acknowledged;
      acknowledged.push({ id, revision: 1 });
      const match = { "If-Match": '"1"' };
      const corrected = await send(`${url}/api/v1/motors/${id}`, samples.motors, "PUT", match);
      acknowledged.push((await corrected.json()) as Acknowledged);
      onAcknowledged(acknowledged.length);
    }
  } catch (error) {
    if (!(error instanceof TypeError || error instanceof SyntaxError)) throw error;
    return acknowledged;
  }
}

describe("a server killed in the middle of writes", () => {
  it("leaves a whole database in which every acknowledged write stands, revisions included", async () => {
    const file = join(freshFolder(), "book.db");
    const server = await start(file);
    let kill = false;
    const lanes = Array.from({ length: 4 }, () =>
      writeUntilGone(server.url, (count) => {
        if (count < 60 || kill) return;
        kill = true;
        server.child.kill("SIGKILL");
      }),
    );
    const acknowledged = (await Promise.all(lanes)).flat();
    expect((await server.ended)[1]).toBe("SIGKILL");
    expect(acknowledged.length).toBeGreaterThan(60);

    const database = new SQLite(file);
    onTestFinished(() => {
      database.close();
    });
    expect(database.pragma("integrity_check", { simple: true })).toBe("ok");
    expect(database.pragma("foreign_key_check")).toEqual([]);
    const present = database
      .prepare("SELECT revision FROM records WHERE collection = 'motors' AND id = ?")
      .pluck();
    const earlier = database
      .prepare("SELECT count(*) FROM revisions WHERE collection = 'motors' AND id = ?")
      .pluck();
    for (const { id, revision } of acknowledged) {
      expect(present.get(id), id).toBeGreaterThanOrEqual(revision);
      expect(earlier.get(id), id).toBe(Number(present.get(id)) - 1);
    }

    const again = await start(file);
    const { id } = acknowledged[0];
    expect((await fetch(`${again.url}/api/v1/motors/${id}`)).status).toBe(200);
  });
});

describe("two servers on the same file", () => {
  it("both write, none loses or refuses anything, and each reads what the other wrote", async () => {
    const file = join(freshFolder(), "book.db");
    const [one, two] = await Promise.all([start(file), start(file)]);
    const add = async ({ url }: RunningServer) => {
      const response = await send(`${url}/api/v1/surfaces`, { ...samples.surfaces, name: "of two" });
      expect(response.status).toBe(201);
      return ((await response.json()) as Acknowledged).id;
    };
    const ids = await Promise.all(Array.from({ length: 60 }, (_, i) => add(i % 2 === 0 ? one : two)));
    for (const { url } of [one, two]) {
      const page = await fetch(`${url}/api/v1/surfaces?limit=500&q=of%20two`);
      const { items } = (await page.json()) as { items: Acknowledged[] };
      expect(items.map(({ id }) => id).sort()).toEqual([...ids].sort());
    }
  });
});

describe("a server told to stop", () => {
  it.each(["SIGTERM", "SIGINT"] as const)(
    "by %s: ends cleanly, an open event stream or not",
    async (signal) => {
      const file = join(freshFolder(), "book.db");
      const server = await start(file);
      expect(server.ready).toMatch(/^Gripcurve is ready at http:\/\/127\.0\.0\.1:\d+$/);
      const events = await fetch(`${server.url}/api/v1/events`);
      server.child.kill(signal);
      await events.text();
      expect(await server.ended).toEqual([0, null]);
      const database = new SQLite(file, { readonly: true });
      expect(database.pragma("integrity_check", { simple: true })).toBe("ok");
      database.close();
    },
  );
});
