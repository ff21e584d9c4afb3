import { afterEach, beforeEach, describe, expect, it, vi } from "vitest";
import { api, PATIENCE } from "#client/state/api.ts";

/** A server that takes requests and never answers, as a browser shows it to a page. */
const silent = (_url: string, { signal }: RequestInit) =>
  new Promise<Response>((_resolve, reject) => {
    signal?.addEventListener("abort", () => reject(signal.reason));
  });

/** A server whose answer begins and never ends. */
const stalled = (url: string, init: RequestInit) =>
  Promise.resolve({ ok: true, status: 200, text: () => silent(url, init) });

const answer = (body: string, init: ResponseInit) => () => Promise.resolve(new Response(body, init));

beforeEach(() => {
  vi.useFakeTimers();
});
afterEach(() => {
  vi.useRealTimers();
  vi.unstubAllGlobals();
});

describe("a request to the server", () => {
  it.each([
    ["never answers", silent],
    ["never ends its answer", stalled],
  ])("that %s is given up in time, and says so", async (_case, server) => {
    vi.stubGlobal("fetch", server);
    const asked = expect(api.get("/bench")).rejects.toMatchObject({
      status: 0,
      code: "timeout",
      message: "The server has not answered for 20 s.",
    });
    await vi.advanceTimersByTimeAsync(PATIENCE);
    await asked;
  });

  it("waits as long as it is told to", async () => {
    vi.stubGlobal("fetch", silent);
    const settled = vi.fn();
    api.get("/bench", { patience: 3 * PATIENCE }).catch(settled);
    await vi.advanceTimersByTimeAsync(3 * PATIENCE - 1);
    expect(settled).not.toHaveBeenCalled();
    await vi.advanceTimersByTimeAsync(1);
    expect(settled).toHaveBeenCalledTimes(1);
  });

  it.each(["before", "after"])("that is given up %s it is sent ends at once", async (when) => {
    vi.stubGlobal("fetch", async (url: string, init: RequestInit) => {
      init.signal?.throwIfAborted();
      return silent(url, init);
    });
    const asking = new AbortController();
    if (when === "before") asking.abort();
    const asked = expect(api.get("/bench", { signal: asking.signal })).rejects.toMatchObject({
      status: 0,
      code: "aborted",
    });
    asking.abort();
    await asked;
  });

  it("to a server that is gone says that it does not answer", async () => {
    vi.stubGlobal("fetch", () => Promise.reject(new TypeError("Failed to fetch")));
    await expect(api.get("/bench")).rejects.toMatchObject({ status: 0, code: "unreachable" });
  });
});

describe("an answer that is no JSON", () => {
  it.each(["<!doctype html><p>Sign in", '{"items": [', ""])(
    "with status 200, %j, is refused in words",
    async (body) => {
      vi.stubGlobal("fetch", answer(body, { status: 200 }));
      await expect(api.get("/bench")).rejects.toMatchObject({
        status: 200,
        code: "unexpected",
        message: "The answer is no JSON. Does another program answer at this address?",
      });
    },
  );

  it.each(["<p>Bad gateway", '{"error": ', "{}"])(
    "with status 502, %j, is told by its status",
    async (body) => {
      vi.stubGlobal("fetch", answer(body, { status: 502 }));
      await expect(api.get("/bench")).rejects.toMatchObject({
        status: 502,
        message: "The server answered 502.",
      });
    },
  );
});
