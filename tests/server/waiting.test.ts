import { once } from "node:events";
import type { AddressInfo } from "node:net";
import { describe, expect, it, onTestFinished, vi } from "vitest";
import { createApp } from "#server/app.ts";
import { loadDemo } from "#server/demo.ts";
import type { Threads } from "#server/threads/threads.ts";
import { errorResponse } from "#shared/model/api/errors.ts";
import { freshStore, steppingClock } from "./support/book.ts";

/** A listening server whose threads never end a task; what they were asked, and by whom it was given up. */
async function neverDone() {
  const signals: AbortSignal[] = [];
  const logged: unknown[] = [];
  const threads: Threads = {
    count: 1,
    run: (_name, _input, { signal } = {}) =>
      new Promise((_resolve, reject) => {
        if (!signal) return;
        signals.push(signal);
        signal.addEventListener("abort", () => reject(new Error("given up")));
      }),
    close: () => Promise.resolve(),
  };
  const store = freshStore();
  loadDemo(store, new Date("2026-03-01T08:00:00Z"));
  const app = createApp({ store, clock: steppingClock(), threads, log: (error) => logged.push(error) });
  const server = app.listen(0, "127.0.0.1");
  onTestFinished(() => {
    server.closeAllConnections();
    server.close();
  });
  await once(server, "listening");
  const { port } = server.address() as AddressInfo;
  return { signals, logged, api: `http://127.0.0.1:${port}/api/v1` };
}

const LONG = [
  ["/builds/pane-crawler/print-series", undefined],
  ["/builds/pane-crawler/verdict", undefined],
  ["/calibrate", {}],
  ["/rundown", {}],
] as const;

describe("long work, asked for", () => {
  it.each(LONG)("at %s by somebody who leaves: is given up, and nothing is logged", async (path, body) => {
    const { signals, logged, api } = await neverDone();
    const leave = new AbortController();
    const filler = body && JSON.stringify({ ...body, unknown: "x".repeat(5000) });
    const asked = fetch(api + path, {
      signal: leave.signal,
      ...(filler ? { method: "POST", body: filler, headers: { "Content-Type": "application/json" } } : {}),
    });
    await vi.waitFor(() => expect(signals).toHaveLength(1), { timeout: 10_000 });
    expect(signals[0].aborted).toBe(false);
    leave.abort();
    await expect(asked).rejects.toThrow();
    await vi.waitFor(() => expect(signals[0].aborted).toBe(true), { timeout: 10_000 });
    expect(logged).toEqual([]);
  });

  it("while it is under way: the book's state is answered", async () => {
    const { signals, api } = await neverDone();
    const leave = new AbortController();
    const asked = fetch(`${api}/builds/pane-crawler/verdict`, { signal: leave.signal });
    await vi.waitFor(() => expect(signals).toHaveLength(1), { timeout: 10_000 });
    expect((await fetch(`${api}/bench`)).status).toBe(200);
    leave.abort();
    await expect(asked).rejects.toThrow();
  });

  it("with a query that is refused: is refused before a thread is asked", async () => {
    const { signals, api } = await neverDone();
    const answer = await fetch(`${api}/builds/pane-crawler/next-tests?angle=200`);
    expect(answer.status).toBe(400);
    expect(errorResponse.parse(await answer.json()).error.fields[0].path).toBe("angle");
    expect(signals).toEqual([]);
  });
});
