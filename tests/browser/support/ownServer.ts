import { type ChildProcess, spawn } from "node:child_process";
import { once } from "node:events";
import { mkdtempSync, rmSync } from "node:fs";
import { createServer } from "node:net";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { afterAll, beforeAll } from "vitest";

const root = new URL("../../..", import.meta.url).pathname;
const PROGRAM = join(root, ".build", "browser-tests", "server", "main.js");
const PATIENCE = 60_000;

/** A server of a test file's own, with the demo in a data file of its own: it may be written to and started anew. */
export interface OwnServer {
  readonly address: string;
  /** Ends the process and starts another on the same data file and port. */
  readonly restart: () => Promise<void>;
  /** Ends the process, does something while there is none, and starts another as {@link restart} does. */
  readonly without: (work: () => Promise<void>) => Promise<void>;
  readonly stop: () => Promise<void>;
}

async function freePort(): Promise<number> {
  const probe = createServer().listen(0, "127.0.0.1");
  await once(probe, "listening");
  const address = probe.address();
  probe.close();
  await once(probe, "close");
  if (address === null || typeof address === "string") throw new Error("No port is free.");
  return address.port;
}

async function start(port: number, file: string): Promise<ChildProcess> {
  const server = spawn(process.execPath, [PROGRAM], {
    cwd: root,
    env: { ...process.env, PORT: String(port), HOST: "127.0.0.1", GRIPCURVE_DB: file },
    stdio: ["ignore", "pipe", "inherit"],
  });
  await new Promise<void>((resolve, reject) => {
    const late = setTimeout(
      () => reject(new Error("The server said no ready line within a minute.")),
      PATIENCE,
    );
    server.once("exit", (code) => reject(new Error(`The server ended with ${code} before it was ready.`)));
    server.stdout?.on("data", (chunk: Buffer) => {
      if (!chunk.toString().includes("is ready at")) return;
      clearTimeout(late);
      resolve();
    });
  });
  return server;
}

async function end(server: ChildProcess): Promise<void> {
  const ended = once(server, "exit");
  server.kill("SIGTERM");
  await ended;
}

/** Starts the built server, as the global set-up built it. */
async function startOwnServer(): Promise<OwnServer> {
  const folder = mkdtempSync(join(tmpdir(), "gripcurve-bench-"));
  const file = join(folder, "bench.db");
  const port = await freePort();
  let server = await start(port, file);
  const without = async (work: () => Promise<void>) => {
    await end(server);
    try {
      await work();
    } finally {
      server = await start(port, file);
    }
  };
  return {
    address: `http://127.0.0.1:${port}`,
    restart: () => without(() => Promise.resolve()),
    without,
    stop: async () => {
      await end(server);
      rmSync(folder, { recursive: true, force: true });
    },
  };
}

/**
 * A server for the tests of one file, for those that write: other files run beside it and read the demo.
 *
 * @returns the server; its address is known once the tests run
 */
export function useOwnServer(): Pick<OwnServer, "address" | "restart" | "without"> {
  let server: OwnServer | null = null;
  const running = (): OwnServer => {
    if (!server) throw new Error("The server runs while tests do.");
    return server;
  };
  beforeAll(async () => {
    server = await startOwnServer();
  });
  afterAll(() => server?.stop());
  return {
    get address() {
      return running().address;
    },
    restart: () => running().restart(),
    without: (work) => running().without(work),
  };
}
