import { mkdirSync, writeFileSync } from "node:fs";
import { createServer } from "node:net";
import { join } from "node:path";
import SQLite from "better-sqlite3";
import { describe, expect, it, onTestFinished } from "vitest";
import { configFrom } from "#server/config.ts";
import { wordsOf } from "#server/startError.ts";
import { openStore } from "#server/store/store.ts";
import { freshFolder } from "./support/book.ts";

const at = new Date("2026-03-01T08:00:00Z");

/** @returns what the system says when that address is listened to */
function listeningError(port: number, host: string): Promise<unknown> {
  const server = createServer();
  onTestFinished(() => {
    server.close();
  });
  return new Promise((resolve) => {
    server.once("error", resolve);
    server.listen(port, host, () => resolve(null));
  });
}

describe("why the server didn't start", () => {
  it("on a port that is taken: names it, and another one", async () => {
    const first = createServer();
    onTestFinished(() => {
      first.close();
    });
    const port = await new Promise<number>((resolve) =>
      first.listen(0, "127.0.0.1", () => {
        const address = first.address();
        resolve(typeof address === "object" && address ? address.port : 0);
      }),
    );
    const error = await listeningError(port, "127.0.0.1");
    const words = wordsOf(error, configFrom({ PORT: String(port) }));
    expect(words).toBe(
      `Port ${port} of 127.0.0.1 is taken, perhaps by a Gripcurve that already runs. End that one, or take another port: PORT=${port + 1}.`,
    );
  });

  it("on a port of the local network that is taken: names the setting of that one", () => {
    const error = Object.assign(new Error("x"), { code: "EADDRINUSE", syscall: "listen", port: 5000 });
    const words = (args: readonly string[]) =>
      wordsOf(error, configFrom({ PORT: "5000", GRIPCURVE_LAN_PORT: "5000" }, args));
    expect(words(["--lan"])).toMatch(/^Port 5000, on which --lan serves .*GRIPCURVE_LAN_PORT=5001\.$/);
    expect(words([])).toMatch(/take another port: PORT=5001\.$/);
  });

  // 203.0.113.0/24 is kept for documentation (RFC 5737): no machine has an address of it.
  it("on a HOST that isn't this machine's: names it, and what to do", async () => {
    const error = await listeningError(0, "203.0.113.9");
    expect(wordsOf(error, configFrom({ HOST: "203.0.113.9" }))).toMatch(
      /HOST is 203\.0\.113\.9, which is no address of this machine\. Leave it unset/,
    );
  });

  const openingWords = (file: string): string => {
    try {
      openStore(file, at).close();
      return "it was opened";
    } catch (error) {
      return wordsOf(error, configFrom({ GRIPCURVE_DB: file }));
    }
  };

  it("on a data file under a file: names it", () => {
    const folder = freshFolder();
    writeFileSync(join(folder, "notes"), "");
    const file = join(folder, "notes", "book.db");
    expect(openingWords(file)).toBe(
      `The data file ${file} can't lie there: a part of its path is a file, no folder. Name another with GRIPCURVE_DB.`,
    );
  });

  it("on a damaged data file: names it, and leaves it as it is", () => {
    const file = join(freshFolder(), "book.db");
    openStore(file, at).close();
    const damaged = new SQLite(file);
    damaged.unsafeMode();
    damaged.exec(
      "PRAGMA writable_schema = ON; UPDATE sqlite_schema SET sql = 'CREATE TABLE x (' WHERE name = 'meta'",
    );
    damaged.close();
    expect(openingWords(file)).toMatch(
      /book\.db is damaged\. It was left as it is: put a backup in its place/,
    );
  });

  it("on a data file that another program holds: names it", () => {
    const error = new SQLite.SqliteError("database is locked", "SQLITE_BUSY");
    expect(wordsOf(error, configFrom({ GRIPCURVE_DB: "/srv/book.db" }))).toBe(
      "The data file /srv/book.db is held by another program. Close that one, then start again.",
    );
  });

  it("on a file of a later schema: names it", () => {
    const file = join(freshFolder(), "book.db");
    openStore(file, at).close();
    const later = new SQLite(file);
    later.pragma("user_version = 900");
    later.close();
    expect(openingWords(file)).toContain(`The bench book ${file} has schema 900`);
  });

  it("on anything else: says what the system says", () => {
    mkdirSync(join(freshFolder(), "x"));
    expect(wordsOf(new Error("something else"), configFrom({}))).toBe("something else");
    expect(wordsOf(new RangeError('PORT is "x"; allowed: …'))).toBe('PORT is "x"; allowed: …');
  });
});
