import { type ChildProcess, spawn } from "node:child_process";
import { once } from "node:events";
import { mkdtempSync } from "node:fs";
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

/** Starts a server of its own on a free port, and waits for its ready line. */
export async function startServer(main: string, file: string): Promise<RunningServer> {
  const env = { ...process.env, PORT: "0", HOST: "127.0.0.1", GRIPCURVE_DB: file };
  const child = spawn(process.execPath, [main], { env, stdio: ["ignore", "pipe", "inherit"] });
  const ended = once(child, "exit");
  const lines = createInterface({ input: child.stdout });
  const first = await Promise.race([once(lines, "line"), ended]);
  const ready = String(first[0]);
  const url = /http:\/\/\S+/.exec(ready)?.[0];
  if (url === undefined) throw new Error(`the server did not start: ${ready}`);
  return { child, url, ready, ended };
}
