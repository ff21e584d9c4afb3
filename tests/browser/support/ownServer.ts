import { type ChildProcess, spawn } from "node:child_process";
import { once } from "node:events";
import { mkdtempSync, rmSync } from "node:fs";
import { createServer } from "node:net";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { afterAll, beforeAll } from "vitest";
import { PATIENCE } from "./eventually.ts";

const root = new URL("../../..", import.meta.url).pathname;
const PROGRAM = join(root, ".build", "browser-tests", "server", "main.js");

/** A server of a test file's own, with the demo in a data file of its own: it may be written to and started anew. */
export interface OwnServer {
  readonly address: string;
  /** of its side to the local network; none where that isn't served */
  readonly lanAddress: string | null;
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

interface Started {
  readonly port: number;
  /** of the local network, where it is served */
  readonly lanPort: number | null;
  readonly file: string;
}

async function start({ port, lanPort, file }: Started): Promise<ChildProcess> {
  const ports = { PORT: String(port), GRIPCURVE_LAN_PORT: String(lanPort ?? "") };
  const server = spawn(process.execPath, [PROGRAM, ...(lanPort === null ? [] : ["--lan"])], {
    cwd: root,
    env: { ...process.env, ...ports, HOST: "127.0.0.1", GRIPCURVE_DB: file },
    stdio: ["ignore", "pipe", "inherit"],
  });
  await new Promise<void>((resolve, reject) => {
    const late = setTimeout(
      () => reject(new Error("The server said no ready line within two minutes.")),
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
async function startOwnServer(servesLan: boolean): Promise<OwnServer> {
  const folder = mkdtempSync(join(tmpdir(), "gripcurve-bench-"));
  const file = join(folder, "bench.db");
  const started = { port: await freePort(), lanPort: servesLan ? await freePort() : null, file };
  const { port, lanPort } = started;
  let server = await start(started);
  const without = async (work: () => Promise<void>) => {
    await end(server);
    try {
      await work();
    } finally {
      server = await start(started);
    }
  };
  return {
    address: `http://127.0.0.1:${port}`,
    lanAddress: lanPort === null ? null : `https://127.0.0.1:${lanPort}`,
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
 * @param servesLan - whether it serves the local network as well
 * @returns the server; its addresses are known once the tests run
 */
export function useOwnServer({ servesLan = false } = {}): Omit<OwnServer, "stop"> {
  let server: OwnServer | null = null;
  const running = (): OwnServer => {
    if (!server) throw new Error("The server runs while tests do.");
    return server;
  };
  beforeAll(async () => {
    server = await startOwnServer(servesLan);
  });
  afterAll(() => server?.stop());
  return {
    get address() {
      return running().address;
    },
    get lanAddress() {
      return running().lanAddress;
    },
    restart: () => running().restart(),
    without: (work) => running().without(work),
  };
}
