import { type ChildProcess, spawn, spawnSync } from "node:child_process";
import { once } from "node:events";
import { mkdtempSync, readdirSync, rmSync } from "node:fs";
import { join } from "node:path";
import { createInterface } from "node:readline";
import { build } from "vite";

const root = new URL("../../..", import.meta.url).pathname;

/** Builds the server into a folder of its own, inside the house so that it finds its packages. @returns the bundle */
export async function buildServer(): Promise<{ folder: string; main: string }> {
  const folder = mkdtempSync(join(root, "node_modules", ".gripcurve-"));
  await build({
    configFile: join(root, "server/vite.config.ts"),
    logLevel: "silent",
    build: { outDir: folder },
  });
  return { folder, main: join(folder, "main.js") };
}

export interface RunningServer {
  readonly child: ChildProcess;
  readonly url: string;
  readonly ready: string;
  /** resolves with [code, signal] once it ended */
  readonly ended: Promise<unknown[]>;
}

type Command = readonly [string, readonly string[]];

/** Waits for the ready line of a server that is just started. */
async function running([command, args]: Command, file: string): Promise<RunningServer> {
  const env = { ...process.env, PORT: "0", HOST: "127.0.0.1", GRIPCURVE_DB: file };
  const child = spawn(command, args, { env, stdio: ["ignore", "pipe", "inherit"] });
  const ended = once(child, "exit");
  const lines = createInterface({ input: child.stdout });
  const first = await Promise.race([once(lines, "line"), ended]);
  const ready = String(first[0]);
  const url = /http:\/\/\S+/.exec(ready)?.[0];
  if (url === undefined) throw new Error(`the server did not start: ${ready}`);
  return { child, url, ready, ended };
}

/** Starts a server of its own on a free port, and waits for its ready line. */
export const startServer = (main: string, file: string): Promise<RunningServer> =>
  running([process.execPath, [main]], file);

/** In a namespace of its own, a program may mount what only it sees. */
const ALONE = ["-rm", "sh", "-c"];

/** @returns whether this system lets a program have a small disk of its own */
export const hasSmallDisks = (): boolean =>
  process.platform === "linux" && spawnSync("unshare", [...ALONE, "mount -t tmpfs tmpfs /mnt"]).status === 0;

/** Starts a server behind everything else, without the right to come forward again, as a service of its own user may be. */
export const startBehind = (main: string, file: string): Promise<RunningServer> =>
  running(["unshare", ["-r", "nice", "-n", "12", process.execPath, main]], file);

/**
 * Starts a server whose data file lies on a disk that is all but full.
 *
 * @param folder - where the disk is put
 * @returns the server, and what frees some room
 */
export async function startOnSmallDisk(main: string, folder: string) {
  const script = `mount -t tmpfs -o size=4m tmpfs "$0" && head -c 600000 /dev/zero > "$0/ballast" && exec "$1" "$2"`;
  const command: Command = ["unshare", [...ALONE, script, folder, process.execPath, main]];
  const server = await running(command, `${folder}/book.db`);
  const seen = `/proc/${server.child.pid}/root${folder}`;
  return {
    server,
    makeRoom: () => rmSync(`${seen}/ballast`),
    files: () => readdirSync(seen).sort(),
  };
}
