import { type ChildProcess, spawn } from "node:child_process";
import { once } from "node:events";
import { mkdtempSync, rmSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { build } from "vite";
import type { TestProject } from "vitest/node";
import { findChromium } from "./support/chromium.ts";

declare module "vitest" {
  export interface ProvidedContext {
    /** of the server that serves the demo: "http://127.0.0.1:43211" */
    readonly address: string;
    /** program of the browser */
    readonly chromium: string;
  }
}

const root = new URL("../..", import.meta.url).pathname;
/** Apart from the build that a person may be running. */
const OUT = join(root, ".build", "browser-tests");
const READY = /is ready at (http:\S+)/;
const PATIENCE = 60_000;

async function buildBoth(): Promise<void> {
  const halves = ["client", "server"].map((half) =>
    build({
      configFile: join(root, half, "vite.config.ts"),
      logLevel: "error",
      build: { outDir: join(OUT, half) },
    }),
  );
  await Promise.all(halves);
}

/** Starts the built server on a free port and a fresh data file. */
async function start(file: string): Promise<{ server: ChildProcess; address: string }> {
  const server = spawn(process.execPath, [join(OUT, "server", "main.js")], {
    cwd: root,
    env: { ...process.env, PORT: "0", HOST: "127.0.0.1", GRIPCURVE_DB: file },
    stdio: ["ignore", "pipe", "inherit"],
  });
  const address = await new Promise<string>((resolve, reject) => {
    const late = setTimeout(
      () => reject(new Error("The server said no ready line within a minute.")),
      PATIENCE,
    );
    server.once("exit", (code) => reject(new Error(`The server ended with ${code} before it was ready.`)));
    server.stdout?.on("data", (chunk: Buffer) => {
      const ready = READY.exec(chunk.toString());
      if (!ready) return;
      clearTimeout(late);
      resolve(ready[1]);
    });
  });
  return { server, address };
}

/** Builds client and server, serves the demo, and hands address and browser to the tests. */
export default async function setup(project: TestProject): Promise<() => Promise<void>> {
  project.provide("chromium", findChromium());
  await buildBoth();
  const folder = mkdtempSync(join(tmpdir(), "gripcurve-browser-"));
  const { server, address } = await start(join(folder, "bench.db"));
  project.provide("address", address);
  return async () => {
    const ended = once(server, "exit");
    server.kill("SIGTERM");
    await ended;
    rmSync(folder, { recursive: true, force: true });
  };
}
