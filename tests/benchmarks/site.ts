import { type ChildProcess, spawn } from "node:child_process";
import { once } from "node:events";
import { mkdtempSync, rmSync } from "node:fs";
import { tmpdir } from "node:os";
import { join, resolve } from "node:path";
import { build } from "vite";

/** Apart from the build that a person may be running. */
const OUT = resolve(".build", "bench-site");
const READY = /is ready at (http:\S+)/;
const PATIENCE = 60_000;
const MILLISECONDS = 1000;
const BYTES_PER_MEGABYTE = 1e6;

/** Added to the server, not to its threads: at any message it collects what is no longer used and answers what is left [byte]. */
const HELD = `if (process.channel) process.on("message", () => {
  for (let i = 0; i < 3; i++) gc();
  const { heapUsed, external } = process.memoryUsage();
  process.send(heapUsed + external);
});
process.channel?.unref();`;
const WITH_HELD = ["--expose-gc", "--import", `data:text/javascript,${encodeURIComponent(HELD)}`];

export const SERVER_PROGRAM = join(OUT, "server", "main.js");
export const WORKER_PROGRAM = join(OUT, "server", "worker.js");

/** Builds client and server as they are shipped. */
export async function buildSite(): Promise<void> {
  for (const half of ["client", "server"])
    await build({
      configFile: resolve(half, "vite.config.ts"),
      logLevel: "error",
      build: { outDir: join(OUT, half) },
    });
}

export interface Running {
  readonly address: string;
  /** of its process */
  readonly pid: number;
  /** from the start of the process to its ready line [s] */
  readonly readyAfter: number;
  /** memory in use once what isn't is collected [MB] */
  readonly held: () => Promise<number>;
  readonly stop: () => Promise<void>;
}

function ready(server: ChildProcess): Promise<string> {
  return new Promise((fulfil, reject) => {
    const late = setTimeout(() => reject(new Error("The server said no ready line in a minute.")), PATIENCE);
    server.once("exit", (code) => reject(new Error(`The server ended with ${code} before it was ready.`)));
    server.stdout?.on("data", (chunk: Buffer) => {
      const line = READY.exec(chunk.toString());
      if (!line) return;
      clearTimeout(late);
      fulfil(line[1]);
    });
  });
}

/** Starts the built server on a free port. @param file - its data file, made with the demo where missing */
export async function startServer(file: string): Promise<Running> {
  const start = performance.now();
  const server = spawn(process.execPath, [...WITH_HELD, SERVER_PROGRAM], {
    env: { ...process.env, PORT: "0", HOST: "127.0.0.1", GRIPCURVE_DB: file },
    stdio: ["ignore", "pipe", "inherit", "ipc"],
  });
  const address = await ready(server);
  const readyAfter = (performance.now() - start) / MILLISECONDS;
  const stop = async () => {
    const ended = once(server, "exit");
    server.kill("SIGTERM");
    await ended;
  };
  const held = async () => {
    const answered = once(server, "message");
    server.send("held");
    return Number((await answered)[0]) / BYTES_PER_MEGABYTE;
  };
  return { address, pid: server.pid ?? 0, readyAfter, held, stop };
}

/** Runs something with a folder of its own, gone afterwards. */
export async function inFolder<T>(work: (folder: string) => Promise<T>): Promise<T> {
  const folder = mkdtempSync(join(tmpdir(), "gripcurve-bench-"));
  try {
    return await work(folder);
  } finally {
    rmSync(folder, { recursive: true, force: true });
  }
}

/** Runs something against a built server with the demo in a data file of its own. */
export async function withServer<T>(work: (running: Running) => Promise<T>): Promise<T> {
  return inFolder(async (folder) => {
    const running = await startServer(join(folder, "bench.db"));
    try {
      return await work(running);
    } finally {
      await running.stop();
    }
  });
}
