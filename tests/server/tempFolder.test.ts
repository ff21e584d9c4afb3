import { type ChildProcess, spawn } from "node:child_process";
import { once } from "node:events";
import { existsSync, mkdirSync, readdirSync, rmSync, writeFileSync } from "node:fs";
import { request } from "node:http";
import { basename, join } from "node:path";
import { setTimeout } from "node:timers/promises";
import { afterAll, beforeAll, describe, expect, it, onTestFinished, vi } from "vitest";
import { removeLeftFolders, tempFolder } from "#server/tempFolder.ts";
import { buildServer, startServer } from "#tests/durability/support/server.ts";
import { freshFolder } from "./support/book.ts";

/** @returns the number of a process that does nothing, and what ends it */
function idling(): ChildProcess {
  const child = spawn(process.execPath, ["-e", "setInterval(() => {}, 1000)"], { stdio: "ignore" });
  onTestFinished(() => {
    child.kill("SIGKILL");
  });
  return child;
}

/** @returns what a folder of this process would be called if another one had made it */
const asOf = (folder: string, pid: number | undefined): string =>
  basename(folder).replace(`-${process.pid}-`, `-${pid}-`);

describe("folders for what passes through, at the start of a server", () => {
  it("of a process that has ended: go, with what lies in them; of one that lives: stay", async () => {
    const within = freshFolder();
    const [ended, living] = [idling(), idling()];
    ended.kill("SIGKILL");
    await once(ended, "exit");
    const own = tempFolder("body", within);
    for (const { pid } of [ended, living]) {
      mkdirSync(join(within, asOf(own, pid)));
      writeFileSync(join(within, asOf(own, pid), "body"), "{");
    }
    rmSync(own, { recursive: true });
    removeLeftFolders(within);
    expect(readdirSync(within)).toEqual([asOf(own, living.pid)]);
  });

  it("of an earlier process that had this one's number: go", () => {
    const within = freshFolder();
    for (const kind of ["body", "backup", "look", "restore"] as const) tempFolder(kind, within);
    removeLeftFolders(within);
    expect(readdirSync(within)).toEqual([]);
  });

  it("of another machine, and whatever else lies there: stay", () => {
    const within = freshFolder();
    const names = [
      `gripcurve-body-another.machine-${process.pid}-abc123`,
      `gripcurve-bench-${process.pid}-abc123`,
      "gripcurve-body-abc123",
      "gripcurve-body",
      "else",
    ];
    for (const name of names) mkdirSync(join(within, name));
    removeLeftFolders(within);
    expect(readdirSync(within).sort()).toEqual([...names].sort());
  });

  it("where there is no such place: nothing to do", () => {
    expect(() => removeLeftFolders(join(freshFolder(), "missing"))).not.toThrow();
  });
});

describe("a server that is killed while an archive comes in", () => {
  let built: Awaited<ReturnType<typeof buildServer>>;
  beforeAll(async () => {
    built = await buildServer();
  });
  afterAll(() => rmSync(built.folder, { recursive: true, force: true }));

  it("leaves what had come; the next one removes it", async () => {
    const folder = freshFolder();
    const within = join(folder, "passing");
    mkdirSync(within);
    vi.stubEnv("TMPDIR", within);
    onTestFinished(() => {
      vi.unstubAllEnvs();
    });
    const file = join(folder, "book.db");
    const first = await startServer(built.main, file);
    const headers = { "Content-Type": "application/json" };
    const sending = request(`${first.url}/api/v1/archive`, { method: "POST", headers });
    sending.on("error", () => {});
    sending.write('{"format":');
    const isThere = () => readdirSync(within).some((name) => existsSync(join(within, name, "body")));
    while (!isThere()) await setTimeout(10);
    first.child.kill("SIGKILL");
    await first.ended;
    expect(isThere()).toBe(true);
    const next = await startServer(built.main, file);
    expect(readdirSync(within)).toEqual([]);
    next.child.kill("SIGTERM");
    await next.ended;
  });
});
