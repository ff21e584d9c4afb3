import { rmSync } from "node:fs";
import { join } from "node:path";
import SQLite from "better-sqlite3";
import { afterAll, beforeAll, describe, expect, it, onTestFinished } from "vitest";
import { freshFolder } from "#tests/server/support/book.ts";
import { samples } from "#tests/server/support/records.ts";
import { KilledBook, killedMigration } from "./support/killing.ts";
import { MOMENTS, type Moment } from "./support/moments.ts";
import {
  buildServer,
  hasSmallDisks,
  type RunningServer,
  startBehind,
  startOnSmallDisk,
  startServer,
} from "./support/server.ts";

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

/** A few in every run; `npm run endurance` asks for a hundred. */
const KILLS = Number(process.env.ENDURANCE_KILLS ?? 4);
const KILL_TAKES = 60_000;

describe("a server killed in the middle of whatever it does", () => {
  it(
    `${KILLS} times: leaves a whole file, and every acknowledged write in it or in the copies that it kept`,
    async () => {
      const book = new KilledBook(freshFolder(), bundle.main);
      const begun = performance.now();
      const kills = new Map<Moment, number>();
      for (let i = 0; i < KILLS; i++) {
        const moment = MOMENTS[i % MOMENTS.length];
        kills.set(moment, (kills.get(moment) ?? 0) + 1);
        if (moment === "migration") expect(await killedMigration(bundle.main)).toBeNull();
        else expect(await book.kill(moment), moment).toEqual([]);
      }
      expect(book.acknowledged).toBeGreaterThan(KILLS);
      const seconds = Math.round((performance.now() - begun) / 1000);
      const at = [...kills].map(([moment, count]) => `${moment} ${count}`).join(", ");
      console.log(
        `${KILLS} kills (${at}) in ${seconds} s: ${book.acknowledged} acknowledged writes, ${book.changes} changes of the whole, ${book.copies} copies checked, none lost`,
      );
    },
    KILLS * KILL_TAKES,
  );
});

describe("a disk that is really full", () => {
  it.runIf(hasSmallDisks())(
    "refuses writes and an emptying in words, keeps what was acknowledged, leaves no half copy, and goes on once there is room",
    async () => {
      const { server, makeRoom, files } = await startOnSmallDisk(bundle.main, freshFolder());
      onTestFinished(() => {
        server.child.kill("SIGKILL");
      });
      const surfaces = `${server.url}/api/v1/surfaces`;
      const large = { ...samples.surfaces, note: "n".repeat(3900) };
      const stored: string[] = [];
      let refused = await send(surfaces, large);
      for (let i = 0; refused.status === 201 && i < 2000; i++) {
        stored.push(((await refused.json()) as { id: string }).id);
        refused = await send(surfaces, large);
      }
      expect(stored.length).toBeGreaterThan(20);
      for (const answer of [refused, await send(`${server.url}/api/v1/bench/empty`, {})]) {
        expect(answer.status).toBe(507);
        expect(((await answer.json()) as { detail: string }).detail).toMatch(
          /disk is full: nothing was stored/,
        );
      }
      for (const id of stored) expect((await fetch(`${surfaces}/${id}`)).status).toBe(200);
      expect(files()).toEqual(["ballast", "book.db", "book.db-shm", "book.db-wal"]);
      makeRoom();
      expect((await send(surfaces, large)).status).toBe(201);
    },
  );
});

describe("a server started at a low priority", () => {
  it.runIf(hasSmallDisks())("does long work on its threads, though they can't be given more", async () => {
    const server = await startBehind(bundle.main, join(freshFolder(), "book.db"));
    onTestFinished(() => {
      server.child.kill("SIGKILL");
    });
    const emptied = await send(`${server.url}/api/v1/bench/empty`, {});
    expect([emptied.status, await emptied.text()]).toEqual([200, expect.anything()]);
  });
});

describe("two servers on the same file", () => {
  it("both write, none loses or refuses anything, and each reads what the other wrote", async () => {
    const file = join(freshFolder(), "book.db");
    const [one, two] = await Promise.all([start(file), start(file)]);
    const add = async ({ url }: RunningServer) => {
      const response = await send(`${url}/api/v1/surfaces`, { ...samples.surfaces, name: "of two" });
      expect(response.status).toBe(201);
      return ((await response.json()) as { id: string }).id;
    };
    const ids = await Promise.all(Array.from({ length: 60 }, (_, i) => add(i % 2 === 0 ? one : two)));
    for (const { url } of [one, two]) {
      const page = await fetch(`${url}/api/v1/surfaces?limit=500&q=of%20two`);
      const { items } = (await page.json()) as { items: { id: string }[] };
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
